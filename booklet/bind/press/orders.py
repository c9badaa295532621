"""Orders: what a worker is asked to make. An order holds everything that its result depends on, and so is its own key.

A result can be kept under the digest of its order and be taken from there as long as nothing of it has changed.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, fields, is_dataclass, replace
from functools import lru_cache
from hashlib import sha256
from typing import Any, NamedTuple

from msgspec import Struct

from ...craft.piece import Piece
from ...source.records import Form
from ..passages import Passage
from .versions import engine_versions

MOST_PIECES = 2000   # whose digests are kept
UNKEYED = {"keyed": False}   # metadata of a field that eases the work and does not change its result


@dataclass(frozen=True)
class Held:
    """What is large and lies elsewhere: an order can be asked for its key without it. `key` says all that it depends on."""

    key: tuple
    load: Callable[[], Any]


@dataclass(frozen=True)
class Setting:
    """What holds for every page of a document: its style sheets, and how the PDF is to be made."""

    style: str
    language: str = "en"
    body: str = "<body>"     # the opening tag, whose classes the style sheet may ask for
    options: tuple[tuple[str, Any], ...] = (("pdf_variant", "pdf/ua-1"), ("dpi", 300))
    faces: str = ""          # digest of the font files
    files: tuple[tuple[str, bytes], ...] = ()   # what the style sheet names, by address
    bleed: float = 0.0       # mm
    black: bool = False      # neutral colours are greys of the one black ink


@dataclass(frozen=True)
class SidesOrder:
    """On which side each kind of part must begin: "left", "right" or "" if either will do."""

    typesets = True
    setting: Setting
    openings: tuple[str, ...]   # opening tags

    def fill(self) -> bytes:
        from .typeset import set_sides

        return set_sides(self)


@dataclass(frozen=True)
class PartOrder:
    """The pages of one part."""

    typesets = True
    setting: Setting
    html: str | Held
    side: str      # of its first page
    next: str      # side on which the part after it must begin; a blank page is added if it has to be
    files: Mapping[str, bytes] = field(default_factory=dict)   # pictures by their address

    def fill(self) -> bytes:
        from .typeset import set_part

        return set_part(self)


class NumberedPage(NamedTuple):
    """A page number, and the type of its page."""

    number: int
    side: str
    name: str
    blank: bool


@dataclass(frozen=True)
class FoliosOrder:
    """Page numbers for pages that lie left and right by turns; `total` is the number of pages of the book, where it is printed."""

    typesets = True
    setting: Setting
    total: int
    pages: tuple[NumberedPage, ...]

    def fill(self) -> bytes:
        from .typeset import set_folios

        return set_folios(self)


@dataclass(frozen=True)
class FontsOrder:
    """Fonts that hold these glyphs: name, family, weight, italic, (glyph, text, width) each."""

    typesets = True
    setting: Setting
    faces: tuple[tuple[str, str, int, bool, tuple[tuple[int, str, float], ...]], ...]

    def fill(self) -> bytes:
        from .typeset import set_fonts

        return set_fonts(self)


@lru_cache(maxsize=64)
def _setting_digest(setting: Setting) -> str:
    return digest(tuple(getattr(setting, one.name) for one in fields(setting)))


@lru_cache(maxsize=None)
def _versions_digest() -> str:
    return digest(engine_versions())


def key_of(order: Any) -> str:
    """The digest of an order: of its kind, of all its fields but those marked UNKEYED, and of whatever has a hand in filling it."""
    values = (getattr(order, one.name) for one in fields(order) if one.metadata.get("keyed", True))
    return digest(type(order).__name__, _versions_digest(), *(_setting_digest(value) if isinstance(value, Setting) else value for value in values))


def ready(order: Any) -> Any:
    """An order to be handed out, with everything that it holds elsewhere."""
    found = {one.name: getattr(order, one.name).load() for one in fields(order) if isinstance(getattr(order, one.name), Held)}
    return replace(order, **found) if found else order


def digest(*values: Any) -> str:
    """A digest of plain values and groups of them. Raises TypeError for a value that has no one way to be written."""
    return sha256(b"".join(map(_written, values))).hexdigest()


def _written(value: Any) -> bytes:
    """A value as bytes that no other value has."""
    write = _WRITERS.get(type(value))
    return write(value) if write else _joined(*_any(value))


def _text(value: str) -> bytes:
    content = value.encode()
    return b"s1:%d:%s" % (len(content), content)


def _number(value: bool | int | float | None) -> bytes:
    content = repr(value).encode()
    return b"n1:%d:%s" % (len(content), content)


def _several(value: tuple | list) -> bytes:
    return _joined(b"t", [_written(one) for one in value])


_WRITERS: dict[type, Callable[[Any], bytes]] = {str: _text, int: _number, float: _number, bool: _number, type(None): _number, tuple: _several, list: _several}   # of what a piece has thousands


def _any(value: Any) -> tuple[bytes, list[bytes]]:
    """The sign of a value's kind, and its parts."""
    if isinstance(value, Struct):
        return (b"p", [_piece_digest(value)]) if isinstance(value, Piece) else _group(value)
    if isinstance(value, bytes):
        return b"b", [value]
    if isinstance(value, (int, float)):
        return b"n", [repr(value).encode()]
    if isinstance(value, str):
        return b"s", [str(value).encode(), *([value.lang.encode()] if isinstance(value, Passage) else [])]
    if isinstance(value, Held):
        return b"h", [_written(value.key)]
    if isinstance(value, (tuple, list)):
        return b"t", [*map(_written, value)]
    if isinstance(value, (set, frozenset)):
        return b"f", sorted(map(_written, value))
    if isinstance(value, Mapping):
        return b"m", [_written(part) for item in value.items() for part in item]
    return _group(value)


def _joined(sign: bytes, parts: list[bytes]) -> bytes:
    return b"".join([b"%s%d:" % (sign, len(parts)), *[b"%d:%s" % (len(part), part) for part in parts]])


def _group(value: Any) -> tuple[bytes, list[bytes]]:
    return b"d", [type(value).__name__.encode(), *[_written(getattr(value, name)) for name in _names(type(value))]]


_pieces: dict[int, tuple[Piece, bytes]] = {}   # by identity, because a piece cannot be hashed


def _piece_digest(piece: Piece) -> bytes:
    """The digest of a piece, which has thousands of parts, and is asked for by several orders of every pattern."""
    known = _pieces.get(id(piece))
    if known is None or known[0] is not piece:
        if len(_pieces) > MOST_PIECES:
            _pieces.clear()
        known = _pieces[id(piece)] = piece, sha256(_joined(*_group(piece))).digest()
    return known[1]


@lru_cache(maxsize=None)
def _names(kind: type) -> tuple[str, ...]:
    """The names of the fields of a group of values."""
    if issubclass(kind, Form):
        return tuple(kind.fields)
    if issubclass(kind, Struct):
        return kind.__struct_fields__
    if is_dataclass(kind):
        return tuple(one.name for one in fields(kind))
    raise TypeError(f"{kind.__name__} cannot be part of a key")
