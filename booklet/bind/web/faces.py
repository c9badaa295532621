"""The fonts of the web edition: the faces that its style sheet uses, cut down to the signs that its pages show.

Their licence (SIL Open Font License 1.1) lets anyone hand on a changed font under another name, so a cut font bears only ours;
the copyright and licence entries stay in it, and the licence files lie beside it.
"""

from __future__ import annotations

import io
from base64 import b64encode
from collections.abc import Iterable, Mapping
from functools import lru_cache
from pathlib import Path
from string import printable

from ..fonts import SANS, SERIF, Face, faces, licences

USED = ((SERIF, 400, False), (SERIF, 400, True), (SERIF, 600, False), (SANS, 400, False), (SANS, 600, False))
ALWAYS = printable + "→←↑↓×·–—’“”…½°′″✓☐µ\u00a0"
FEATURES = ("kern", "liga", "mark", "mkmk", "locl", "ccmp")
KEPT_NAMES = frozenset({0, 13, 14})   # copyright, licence, address of the licence


def used_faces() -> list[Face]:
    """The faces that pages for the web use."""
    return [face for face in faces() if (face.family, face.weight, face.italic) in USED]


def licence_files() -> dict[str, bytes]:
    """The licences of the fonts, by name in fonts/."""
    return {name: path.read_bytes() for name, path in licences().items()}


def css_linked(folder: str = "fonts") -> str:
    """@font-face rules for pages beside which the fonts lie in a folder."""
    return "".join(_rule(face, f"{folder}/{face_name(face)}.woff2") for face in used_faces())


def css_embedded(fonts: Mapping[str, bytes]) -> str:
    """@font-face rules that hold the fonts themselves, which are given by name in fonts/."""
    return "".join(_rule(face, f"data:font/woff2;base64,{b64encode(fonts[f'{face_name(face)}.woff2']).decode()}") for face in used_faces())


def _rule(face: Face, source: str) -> str:
    return f'@font-face {{ {face.css} font-display: swap; src: url("{source}") format("woff2"); }}\n'


def face_name(face: Face) -> str:
    """Its name as a file."""
    return f"{face.family.replace(' ', '')}-{face.weight}{'-italic' if face.italic else ''}"


def signs_of(texts: Iterable[str]) -> str:
    """The signs of texts, and those that any page may need."""
    return "".join(sorted(set(ALWAYS).union(*texts)))


@lru_cache(maxsize=64)
def cut(path: Path, name: str, signs: str) -> bytes:
    """A font with these signs alone and a name of ours, as WOFF2."""
    import uharfbuzz as harfbuzz
    from fontTools.ttLib import TTFont

    wanted = harfbuzz.SubsetInput()
    wanted.unicode_set.update(map(ord, signs))
    wanted.name_id_set.update(KEPT_NAMES)
    wanted.layout_feature_tag_set.clear()
    wanted.layout_feature_tag_set.update(int.from_bytes(feature.encode(), "big") for feature in FEATURES)
    wanted.flags = harfbuzz.SubsetFlags.NO_HINTING | harfbuzz.SubsetFlags.DESUBROUTINIZE
    font = TTFont(io.BytesIO(harfbuzz.subset(harfbuzz.Face(harfbuzz.Blob.from_file_path(str(path))), wanted).blob.data), recalcTimestamp=False)
    _rename(font, name)
    font.flavor, out = "woff2", io.BytesIO()
    font.save(out)
    return out.getvalue()


def _rename(font, name: str) -> None:
    table = font["name"]
    table.names = [record for record in table.names if record.nameID in KEPT_NAMES]
    for number, text in ((1, name), (2, "Regular"), (3, name), (4, name), (6, name)):
        table.setName(text, number, 3, 1, 0x409)
    if "CFF " in font:
        cff = font["CFF "].cff
        cff.fontNames = [name]
        top = cff.topDictIndex[0]
        for entry in ("FullName", "FamilyName"):
            top.rawDict.pop(entry, None)
