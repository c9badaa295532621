"""A part with its place in a book: its objects have their final numbers, and are bytes as the PDF holds them.

That is most of the work of a join, and depends on nothing but the part and on where its numbers begin, so it is an order like others.
"""

from __future__ import annotations

import json
import re
import zlib
from collections.abc import Iterable, Sequence
from dataclasses import asdict, dataclass

from .fragment import Fragment, unpacked
from .orders import Held

_MARKS = re.compile(rb"\xff([a-zA-Z])(\d*);")
LEVEL = 6       # of compression
STEP = 256      # a part begins at a multiple of so many objects, and
KEYS = 32       # of so many keys of the parent tree, so that those behind a changed one mostly keep their numbers
(CATALOG, PAGES, INFORMATION, METADATA, ROOT, DOCUMENT, OWNERS, PLACES, OUTLINE, SAVE, RESTORE, FONTS) = range(1, 13)


@dataclass(frozen=True)
class Extent:
    """How many objects and keys a part takes."""

    objects: int
    keys: int


@dataclass(frozen=True)
class Linked:
    """See above. Texts are PDF; numbers are those of objects in the book."""

    base: int
    count: int                         # objects, which follow each other from `base` on; then come the numbers of its pages, and the pack
    keys: int                          # where its keys of the parent tree begin
    streams: list[tuple[int, int]]     # number and offset in `data` of each object that is a stream
    pack: int                          # offset of the stream that holds all others
    pages: list[int]
    tops: list[str]
    owners: list[str]
    names: dict[str, str]
    outline: list                      # level, title, place, closed
    catalog: dict[str, str]
    data: bytes

    def packed(self) -> bytes:
        """It as bytes."""
        head = json.dumps({name: value for name, value in asdict(self).items() if name != "data"}, sort_keys=True, separators=(",", ":")).encode()
        return b"%d\n%s%s" % (len(head), head, self.data)

    @property
    def plain(self) -> list[int]:
        """The numbers of the objects that are no streams."""
        streams = {number for number, _ in self.streams}
        return [number for number in range(self.base, self.base + self.count) if number not in streams]

    @property
    def stamps(self) -> range:
        """The numbers of what is laid over each of its pages."""
        return range(self.base + self.count, self.base + self.count + len(self.pages))

    @property
    def packed_as(self) -> int:
        """The number of the pack."""
        return self.stamps.stop


def unpacked_link(content: bytes) -> Linked:
    """What `packed` has made."""
    length, _, rest = content.partition(b"\n")
    return Linked(**json.loads(rest[:int(length)]), data=rest[int(length):])


@dataclass(frozen=True)
class LinkOrder:
    """The objects of a packed fragment from the number `base` on, with keys of the parent tree from `keys` on."""

    part: bytes | Held
    base: int
    keys: int

    def fill(self) -> bytes:
        return linked(unpacked(self.part), self.base, self.keys).packed()


def extent(part: Fragment) -> Extent:
    """The room that a part takes, in whole steps."""
    return Extent(_whole(len(part.objects) + len(part.pages) + 1, STEP), _whole(len(part.owners), KEYS))


def _whole(count: int, step: int) -> int:
    return -(-count // step) * step


def linked(part: Fragment, base: int, keys: int) -> Linked:
    """A part whose objects are numbered from `base` on."""
    numbers = [base + page["object"] for page in part.pages]
    texts = filled(b"\xfe".join(part.objects), base, keys).split(b"\xfe")
    for at, page in enumerate(part.pages):
        own = page["object"]
        texts[own] = re.sub(rb"/Contents (\d+ 0 R)", b"/Contents [%d 0 R \\1 %d 0 R %d 0 R]" % (SAVE, RESTORE, base + len(texts) + at), texts[own], count=1)
    data, streams, length = [], [], 0
    for at, content in sorted(part.streams.items()):
        streams.append((base + at, length))
        data.append(stream_text(base + at, texts[at], content))
        length += len(data[-1])
    data.append(pack_text(base + len(texts) + len(numbers), [(base + at, text) for at, text in enumerate(texts) if at not in part.streams]))
    return Linked(base, len(texts), keys, streams, length, numbers, [f"{base + top} 0 R" for top in part.tops],
                  [filled(owner, base, keys).decode("latin-1") for owner in part.owners],
                  {name: _place(numbers[int(page)], x, y) for name, (page, x, y) in part.names.items()},
                  [(level, title, _place(numbers[page], x, y), closed) for level, title, page, x, y, closed in part.outline],
                  {key: filled(value.encode("latin-1"), base, keys).decode("latin-1") for key, value in part.catalog.items()}, b"".join(data))


def filled(text: bytes, base: int, keys: int) -> bytes:
    """A text of a fragment, with numbers for its marks."""
    fixed = {b"G": b"%d 0 R" % PAGES, b"D": b"%d 0 R" % DOCUMENT, b"F": b"%d 0 R" % FONTS, b"N": b"%d" % base}

    def fill(match: re.Match) -> bytes:
        if match[1] == b"o":
            return b"%d 0 R" % (base + int(match[2]))
        return b"%d" % (keys + int(match[2])) if match[1] == b"k" else fixed[match[1]]

    return _MARKS.sub(fill, text)


def stream_text(number: int, dictionary: bytes, data: bytes) -> bytes:
    """A stream as the file has it; `dictionary` holds its length."""
    return b"%d 0 obj\n%s\nstream\n%s\nendstream\nendobj\n" % (number, dictionary, data)


def pack_text(number: int, objects: Sequence[tuple[int, bytes]]) -> bytes:
    """Objects that are no streams, in one stream which is object `number`."""
    head = b" ".join(_offsets(objects)) + b"\n"
    data = zlib.compress(head + b"\n".join(text for _, text in objects), LEVEL)
    return stream_text(number, b"<</Type /ObjStm/N %d/First %d/Filter /FlateDecode/Length %d>>" % (len(objects), len(head), len(data)), data)


def _offsets(objects: Iterable[tuple[int, bytes]]) -> Iterable[bytes]:
    at = 0
    for number, text in objects:
        yield b"%d %d" % (number, at)
        at += len(text) + 1


def _place(page: int, x: float, y: float) -> str:
    return f"[{page} 0 R /XYZ {_number(x)} {_number(y)} 0]"


def _number(value: float) -> str:
    return f"{value:.6f}".rstrip("0").rstrip(".") if value % 1 else f"{value:.0f}"
