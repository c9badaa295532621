"""What a page depends on besides its own text: our code, the typesetter, and the libraries that shape its type."""

from __future__ import annotations

import os
import sys
from functools import lru_cache
from hashlib import sha256
from pathlib import Path

from ..fonts import faces

PACKAGES = ("weasyprint", "pydyf", "tinyhtml5", "tinycss2", "cssselect2", "fonttools", "Pyphen", "pillow", "markdown", "nh3", "jinja2", "segno", "svgwrite", "resvg-py")
_INFO = ".dist-info"
_LIBRARIES = {"pango": ("libpango-1.0.so.0", "libpango-1.0.dylib", "libpango-1.0-0.dll"),
              "harfbuzz": ("libharfbuzz.so.0", "libharfbuzz.0.dylib", "libharfbuzz-0.dll"),
              "fontconfig": ("libfontconfig.so.1", "libfontconfig.1.dylib", "libfontconfig-1.dll")}


@lru_cache(maxsize=None)
def engine_versions() -> tuple[tuple[str, str], ...]:
    """Names and versions of everything that has a hand in setting a page."""
    return (*((name, _installed(name)) for name in PACKAGES), *_libraries(), ("booklet", code_digest()))


def _installed(name: str) -> str:
    """The version of a package by the name of its folder, which tells it in a tenth of the time; empty where it is not there."""
    for folder in sys.path:
        for entry in _listed(folder or "."):
            if entry.startswith(f"{name.lower()}-") and entry[len(name) + 1].isdigit():
                return entry[len(name) + 1:-len(_INFO)]
    from importlib.metadata import PackageNotFoundError, version

    try:
        return version(name)
    except PackageNotFoundError:
        return ""


@lru_cache(maxsize=None)
def _listed(folder: str) -> tuple[str, ...]:
    """Names of the folders in which installed packages say what they are."""
    try:
        return tuple(sorted(name.lower().replace("_", "-") for name in os.listdir(folder) if name.endswith(_INFO)))
    except OSError:
        return ()


@lru_cache(maxsize=None)
def faces_digest() -> str:
    """A digest of the font files of every page."""
    made = sha256()
    for face in faces():
        made.update(face.css.encode() + sha256(face.path.read_bytes()).digest())
    return made.hexdigest()


def _libraries() -> tuple[tuple[str, str], ...]:
    """Versions of the shared libraries, asked of themselves; empty where they have another name."""
    import ctypes

    found = []
    for name, files in _LIBRARIES.items():
        said = ""
        for file in files:
            try:
                library = ctypes.CDLL(file)
            except OSError:
                continue
            ask = {"pango": "pango_version", "fontconfig": "FcGetVersion", "harfbuzz": "hb_version_string"}[name]
            function = getattr(library, ask)
            if name == "harfbuzz":
                function.restype = ctypes.c_char_p
            said = str(function())
            break
        found.append((name, said))
    return tuple(found)


@lru_cache(maxsize=None)
def code_digest() -> str:
    """A digest of booklet's own code and data: a page made by other code is another page."""
    made, package = sha256(), Path(__file__).resolve().parents[2]
    for path in sorted(package.rglob("*")):
        if path.suffix in (".py", ".yaml", ".json", ".po") and path.is_file():
            content = path.read_bytes()
            made.update(f"{path.relative_to(package).as_posix()} {len(content)}\n".encode() + content)
    return made.hexdigest()
