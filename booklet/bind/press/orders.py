"""Orders: what a worker is asked to make. An order holds everything that its result depends on, and so is its own key.

A result can be kept under the digest of its order and be taken from there as long as nothing of it has changed.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, fields
from functools import lru_cache
from hashlib import sha256
from typing import Any

from ...source.records import Form
from .versions import engine_versions


@dataclass(frozen=True)
class Setting:
    """What holds for every page of a document: its style sheets, and how the PDF is to be made."""

    style: str
    language: str = "en"
    body: str = "<body>"     # the opening tag, whose classes the style sheet may ask for
    options: tuple[tuple[str, Any], ...] = (("pdf_variant", "pdf/ua-1"), ("dpi", 300))
    faces: str = ""          # digest of the font files
    files: tuple[tuple[str, bytes], ...] = ()   # what the style sheet names, by address


@dataclass(frozen=True)
class SidesOrder:
    """On which side each kind of part must begin: "left", "right" or "" if either will do."""

    setting: Setting
    openings: tuple[str, ...]   # opening tags

    def fill(self) -> bytes:
        from .typeset import set_sides

        return set_sides(self)


@dataclass(frozen=True)
class PartOrder:
    """The pages of one part."""

    setting: Setting
    html: str
    side: str      # of its first page
    next: str      # side on which the part after it must begin; a blank page is added if it has to be
    files: Mapping[str, bytes] = field(default_factory=dict)   # pictures by their address

    def fill(self) -> bytes:
        from .typeset import set_part

        return set_part(self)


@dataclass(frozen=True)
class FoliosOrder:
    """Page numbers for pages of these types, counted from `first`."""

    setting: Setting
    first: int
    total: int
    pages: tuple[tuple[str, str, bool], ...]   # side, name, blank

    def fill(self) -> bytes:
        from .typeset import set_folios

        return set_folios(self)


@dataclass(frozen=True)
class FontsOrder:
    """Fonts that hold these glyphs: name, family, weight, italic, (glyph, text, width) each."""

    setting: Setting
    faces: tuple[tuple[str, str, int, bool, tuple[tuple[int, str, float], ...]], ...]

    def fill(self) -> bytes:
        from .typeset import set_fonts

        return set_fonts(self)



@lru_cache(maxsize=64)
def _setting_digest(setting: Setting) -> str:
    return digest(tuple(getattr(setting, one.name) for one in fields(setting)), engine_versions())


def key_of(order: Any) -> str:
    """The digest of an order."""
    parts = [_setting_digest(value) if isinstance(value, Setting) else value for value in (getattr(order, one.name) for one in fields(order))]
    return digest(type(order).__name__, *parts)


def digest(*values: Any) -> str:
    """A digest of plain values and groups of them. Raises TypeError for a value that has no one way to be written."""
    made = sha256()
    for value in values:
        _feed(made, value)
    return made.hexdigest()


def _feed(made, value: Any) -> None:
    if isinstance(value, bytes):
        parts = [b"b", value]
    elif value is None or isinstance(value, (bool, int, float)):
        parts = [b"n", repr(value).encode()]
    elif isinstance(value, str):
        parts = [b"s", str(value).encode()]
    elif isinstance(value, (tuple, list)):
        parts = [b"t", *map(_of, value)]
    elif isinstance(value, (set, frozenset)):
        parts = [b"f", *sorted(map(_of, value))]
    elif isinstance(value, Mapping):
        parts = [b"m", *(part for item in value.items() for part in map(_of, item))]
    elif isinstance(value, Form):
        parts = [b"d", type(value).__name__.encode(), *(_of(getattr(value, name)) for name in value.fields)]
    elif hasattr(value, "__dataclass_fields__"):
        parts = [b"d", type(value).__name__.encode(), *(_of(getattr(value, one.name)) for one in fields(value))]
    else:
        raise TypeError(f"{type(value).__name__} cannot be part of a key")
    for part in parts:
        made.update(len(part).to_bytes(8, "big"))
        made.update(part)


def _of(value: Any) -> bytes:
    made = sha256()
    _feed(made, value)
    return made.digest()
