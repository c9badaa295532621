"""A fragment: the pages of one part as PDF objects that know no page number and no object number yet.

Objects are bytes in which places that the join fills in are marked: a byte that PDF text never holds, a letter, digits
and a semicolon. `o12` is the fragment's own object 12, `k3` its third key in the parent tree, and `G`, `D`, `F` and `N` are
the page tree, the root of the structure, the fonts and the fragment's own number.
"""

from __future__ import annotations

import json
from dataclasses import asdict, dataclass, field
from hashlib import sha256
from typing import Any

MARK = b"\xff"
_MAGIC = b"booklet fragment 1\n"


@dataclass(frozen=True)
class PageType:
    """What page rules of a style sheet ask for: the side, the name, and whether the page is left blank."""

    side: str
    name: str
    blank: bool


@dataclass(frozen=True)
class Face:
    """A font as pages use it; `glyphs` maps glyph ids to what they stand for, `widths` to thousandths of the type size."""

    family: str
    weight: int
    italic: bool
    glyphs: dict[int, str]
    widths: dict[int, float]


@dataclass
class Fragment:
    """See above. Objects are plain, or streams: a dictionary without its end, and the data."""

    objects: list[bytes] = field(default_factory=list)
    streams: dict[int, bytes] = field(default_factory=dict)    # data of those objects that are streams
    pages: list[dict[str, Any]] = field(default_factory=list)  # "object" and the page type
    tops: list[int] = field(default_factory=list)              # structure elements under the root
    owners: list[bytes] = field(default_factory=list)          # values of the parent tree, by the fragment's keys
    names: dict[str, list[float]] = field(default_factory=dict)   # places: page, x, y
    links: dict[str, str] = field(default_factory=dict)        # names of places that links lead to, with their titles
    outline: list = field(default_factory=list)                # title, page, x, y, closed, children
    faces: dict[str, Face] = field(default_factory=dict)
    catalog: dict[str, str] = field(default_factory=dict)      # what else the catalog of the PDF must hold

    def packed(self) -> bytes:
        """The fragment as bytes, with a digest that tells a damaged one."""
        head = asdict(self) | {"objects": [len(one) for one in self.objects], "streams": [[at, len(data)] for at, data in self.streams.items()],
                               "owners": [one.decode("latin-1") for one in self.owners]}
        text = json.dumps(head, sort_keys=True, separators=(",", ":")).encode()
        parts, digest = [len(text).to_bytes(8, "big"), text, *self.objects, *self.streams.values()], sha256()
        for part in parts:
            digest.update(part)
        return b"".join([_MAGIC, digest.digest(), *parts])


def unpacked(content: bytes) -> Fragment:
    """The fragment of these bytes. Raises ValueError where they are damaged."""
    start = len(_MAGIC) + 32
    body = content[start:]
    if not content.startswith(_MAGIC) or sha256(body).digest() != content[len(_MAGIC):start]:
        raise ValueError("a damaged fragment")
    at = 8 + int.from_bytes(body[:8], "big")
    head, parts = json.loads(body[8:at]), []
    for length in (*head["objects"], *(length for _, length in head["streams"])):
        parts.append(body[at:at + length])
        at += length
    count = len(head["objects"])
    head |= {"objects": parts[:count], "streams": {number: data for (number, _), data in zip(head["streams"], parts[count:])},
             "owners": [one.encode("latin-1") for one in head["owners"]],
             "faces": {name: _face(one) for name, one in head["faces"].items()}}
    return Fragment(**head)


def _face(said: dict) -> Face:
    numbers = {name: {int(glyph): value for glyph, value in said[name].items()} for name in ("glyphs", "widths")}
    return Face(said["family"], said["weight"], said["italic"], **numbers)
