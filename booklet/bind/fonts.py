"""The two type families of every page: where their files are, and the style sheet that names them.

Both come as installed packages and are licensed under the SIL Open Font License 1.1. The licence lets a PDF
embed them freely; where font files are handed on (web pages), changed ones must bear another name (web/faces.py), and the
files of `licences()` must travel with them.
Pages call the families by names of our own: a page then never falls back, unseen,
to a font of the computer that has the same name.

Facts that style sheets rely on, each held by a test:
- the figures of both families are lining and tabular as they stand; the serif has `tnum` as well;
- every face has × ½ ° – — ′ ″ and the accented letters of western Europe;
- the italics of the serif have no arrows, ballot boxes, triangles or check mark: set those upright, or in
  the sans, whose italics have them; no face has ○ ● □ or scissors.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import lru_cache
from importlib.util import find_spec
from pathlib import Path

from ..errors import UnreadableInput

SERIF = "Booklet Serif"
SANS = "Booklet Sans"

_PACKAGES = {SERIF: ("font_source_serif_pro", "SourceSerifPro"), SANS: ("font_source_sans_pro", "SourceSansPro")}
_WEIGHTS = {400: ("Regular", "It"), 600: ("Semibold", "SemiboldIt"), 700: ("Bold", "BoldIt")}
_LICENCE = "LICENSE.txt"


@dataclass(frozen=True)
class Face:
    """One font file: the name of its family on our pages, its weight (400, 600, 700) and its slant."""

    family: str
    weight: int
    italic: bool
    path: Path

    @property
    def css(self) -> str:
        """The family's part of an @font-face rule, without its source."""
        style = "italic" if self.italic else "normal"
        return f'font-family: "{self.family}"; font-weight: {self.weight}; font-style: {style};'


@lru_cache(maxsize=None)
def faces() -> tuple[Face, ...]:
    """Every face that pages may use, family by family, from light to bold, upright first."""
    return tuple(_faces())


@lru_cache(maxsize=None)
def signs() -> frozenset[str]:
    """Every character that one of the faces has."""
    import uharfbuzz as harfbuzz

    return frozenset(chr(code) for face in faces() for code in harfbuzz.Face(harfbuzz.Blob.from_file_path(str(face.path))).unicodes)


def _faces() -> Iterator[Face]:
    for family, (package, name) in _PACKAGES.items():
        folder = _folder(package)
        for weight, styles in _WEIGHTS.items():
            for italic, style in enumerate(styles):
                yield Face(family, weight, bool(italic), _present(folder / f"{name}-{style}.otf"))


def licences() -> dict[str, Path]:
    """The licence file of each family, by the name that it gets beside the copied fonts."""
    return {f"{name}-{_LICENCE}": _present(_folder(package) / _LICENCE) for package, name in _PACKAGES.values()}


def _folder(package: str) -> Path:
    """The folder of a font package's files, found without running the package."""
    spec = find_spec(package)
    places = list(spec.submodule_search_locations or ()) if spec else []
    if not places:
        raise UnreadableInput(f"the font package {package.replace('_', '-')} is not installed",
                              "install booklet again with pip")
    return Path(places[0]) / "files"


def _present(path: Path) -> Path:
    if not path.is_file():
        raise UnreadableInput(f"the font file {path.name} is missing", "install booklet again with pip")
    return path


def font_face_css(url: Callable[[Face], str]) -> str:
    """The @font-face rules for all faces; `url` says where a page finds each face's file."""
    rules = (f'@font-face {{ {face.css} src: url("{url(face)}") format("opentype"); }}\n' for face in faces())
    return "".join(rules)


def css_for_pdf() -> str:
    """@font-face rules that name the installed files themselves (file: URLs)."""
    return font_face_css(lambda face: face.path.as_uri())
