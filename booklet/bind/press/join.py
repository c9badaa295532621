"""The join: linked parts, page numbers and fonts to one PDF.

Places and bookmarks are put together, and the tags of all parts hung under one root. What comes out depends on nothing but the
parts and their order.
"""

from __future__ import annotations

import sys
import zlib
from array import array
from collections.abc import Sequence
from dataclasses import replace
from hashlib import sha256
from typing import BinaryIO

from .fragment import Fragment
from .link import (
    CATALOG, DOCUMENT, FONTS, INFORMATION, LEVEL, METADATA, OUTLINE, OWNERS, PAGES, PLACES, RESTORE, ROOT, SAVE, STEP, Linked, filled, linked, pack_text, stream_text,
)
from .metadata import About, information, packet
from .outline import Bookmark, Outline
from .pdf_text import name_of, text_of

HEADER = b"%PDF-1.7\n%\xf0\x9f\x93\xbf\n"
FIRST_OBJECT, FIRST_KEY = STEP, 0   # of the first part
ROWS = 1 << 16   # of the table of objects that are made at a time


class Writer:
    """Puts objects into a file and knows where they are."""

    def __init__(self, file: BinaryIO) -> None:
        self.file, self.length, self.digest = file, 0, sha256()
        # By object: its kind, and its offset, or its pack and the index in that. Large books have millions of objects.
        self.kinds, self.ones, self.others = array("B"), array("Q"), array("I")
        self._put(HEADER)

    def stream(self, number: int, dictionary: bytes, data: bytes) -> None:
        """One stream; `dictionary` holds its length."""
        self._place(number, 1, self.length)
        self._put(stream_text(number, dictionary, data))

    def pack(self, number: int, objects: Sequence[tuple[int, bytes]]) -> None:
        """Objects that are no streams, in one stream which is object `number`."""
        self._packed(number, self.length, [own for own, _ in objects])
        self._put(pack_text(number, objects))

    def part(self, part: Linked) -> None:
        """All objects of a part."""
        for number, offset in part.streams:
            self._place(number, 1, self.length + offset)
        self._packed(part.packed_as, self.length + part.pack, part.plain)
        self._put(part.data)

    def finish(self, number: int) -> None:
        """Write the end of the file; the table of its objects is object `number`."""
        start, size = self.length, number + 1
        self._place(number, 1, start)
        wide, table = max(1, (start.bit_length() + 7) // 8), zlib.compressobj(LEVEL)
        data = b"".join([*(table.compress(self._rows(first, wide)) for first in range(0, size, ROWS)), table.flush()])
        own_id = self.digest.hexdigest()[:32].encode()
        self._put(b"%d 0 obj\n<</Type /XRef/Size %d/W [1 %d 3]/Root %d 0 R/Info %d 0 R/ID [<%s> <%s>]/Filter /FlateDecode/Length %d>>\nstream\n%s\nendstream\nendobj\n"
                  % (number, size, wide, CATALOG, INFORMATION, own_id, own_id, len(data), data))
        self._put(b"startxref\n%d\n%%%%EOF\n" % start)

    def _rows(self, first: int, wide: int) -> bytes:
        """Rows of the table of objects, column by column: the kind, so many bytes of the offset or pack, three of the index; the highest byte comes first."""
        columns = [part for column, bytes_used in ((self.kinds, 1), (self.ones, wide), (self.others, 3)) for part in _bytes(column[first:first + ROWS], bytes_used)]
        rows = bytearray(len(columns) * len(columns[0]))
        for at, column in enumerate(columns):
            rows[at::len(columns)] = column
        return bytes(rows)

    def _packed(self, number: int, offset: int, objects: Sequence[int]) -> None:
        self._place(number, 1, offset)
        for index, own in enumerate(objects):
            self._place(own, 2, number, index)

    def _place(self, number: int, kind: int, one: int, other: int = 0) -> None:
        missing = number + 1 - len(self.kinds)
        if missing > 0:
            for column in (self.kinds, self.ones, self.others):
                column.frombytes(bytes(missing * column.itemsize))
        self.kinds[number], self.ones[number], self.others[number] = kind, one, other

    def _put(self, text: bytes) -> None:
        self.file.write(text)
        self.digest.update(text)
        self.length += len(text)


def _bytes(column: array, used: int) -> list[bytes]:
    """The lowest bytes of all numbers of a column, the highest of them first."""
    if sys.byteorder == "big":
        column.byteswap()
    stored = column.tobytes()
    return [stored[at::column.itemsize] for at in reversed(range(used))]


class Join:
    """One book, in a file. Parts go in one after the other; fonts and the rest are written at the end."""

    def __init__(self, file: BinaryIO) -> None:
        self.writer, self.free, self.key = Writer(file), FIRST_OBJECT, FIRST_KEY
        self.pages: list[int] = []
        self.tops: list[str] = []
        self.owners: list[tuple[int, str]] = []
        self.names: dict[str, str] = {}
        self.outline = Outline()
        self.catalog: dict[str, str] = {}

    def add(self, part: Linked, folios: Sequence[bytes]) -> None:
        """Add a part, with the page-number stream of each of its pages; empty for a page without a number."""
        self.writer.part(part)
        for number, data in zip(part.stamps, folios):
            self.writer.stream(number, b"<<%s/Length %d>>" % (b"/Filter /FlateDecode" if data else b"", len(data)), data)
        self.tops += part.tops
        self.owners += enumerate(part.owners, part.keys)
        for name, place in part.names.items():
            self.names.setdefault(name, place)
        for bookmark in part.outline:
            self.outline.add(*bookmark)
        self.pages += part.pages
        for key, value in part.catalog.items():
            self.catalog.setdefault(key, value)
        self.free, self.key = part.packed_as + 1, part.keys + len(part.owners)

    def finish(self, fonts: Fragment, about: About) -> None:
        """Write the fonts, and what holds all parts together."""
        writer, data = self.writer, packet(about)
        rest = linked(replace(fonts, objects=[b"null", *fonts.objects[1:]]), self.free, self.key)   # the first one has a number of its own
        writer.part(rest)
        self.free = rest.packed_as + 1
        writer.stream(METADATA, b"<</Type /Metadata/Subtype /XML/Length %d>>" % len(data), data)
        writer.stream(SAVE, b"<</Length 1>>", b"q")
        writer.stream(RESTORE, b"<</Length 1>>", b"Q")
        objects = [(FONTS, filled(fonts.objects[0], rest.base, rest.keys)),
                   (PAGES, b"<</Type /Pages/Count %d/Kids [%s]>>" % (len(self.pages), b" ".join(b"%d 0 R" % page for page in self.pages))),
                   (INFORMATION, information(about)),
                   (ROOT, b"<</Type /StructTreeRoot/K [%d 0 R]/ParentTree %d 0 R/ParentTreeNextKey %d>>" % (DOCUMENT, OWNERS, self.key)),
                   (DOCUMENT, b"<</Type /StructElem/S /Document/P %d 0 R/K [%s]>>" % (ROOT, " ".join(self.tops).encode())),
                   (OWNERS, b"<</Nums [%s]>>" % b" ".join(b"%d %s" % (key, owner.encode("latin-1")) for key, owner in self.owners)),
                   (PLACES, b"<</Names [%s]>>" % b" ".join(b"%s %s" % pair for pair in sorted((text_of(name), place.encode()) for name, place in self.names.items())))]
        objects += self._outlined()
        objects.append((CATALOG, self._catalog(about)))
        writer.pack(self.free, objects)
        writer.finish(self.free + 1)

    def _catalog(self, about: About) -> bytes:
        entries = {"Type": b"/Catalog", "Pages": b"%d 0 R" % PAGES, "Lang": text_of(about.language), "Metadata": b"%d 0 R" % METADATA,
                   "MarkInfo": b"<</Marked true>>", "StructTreeRoot": b"%d 0 R" % ROOT, "ViewerPreferences": b"<</DisplayDocTitle true>>",
                   "PageLabels": b"<</Nums [0 <</S /D>>]>>", "Names": b"<</Dests %d 0 R>>" % PLACES, **{key: value.encode("latin-1") for key, value in self.catalog.items()}}
        if self.outline.top:
            entries["Outlines"] = b"%d 0 R" % OUTLINE
        return b"<<" + b"".join(name_of(key) + b" " + value for key, value in entries.items()) + b">>"

    def _outlined(self) -> list[tuple[int, bytes]]:
        """The bookmarks as objects; the root is OUTLINE."""
        made: list[tuple[int, bytes]] = []

        def put(entries: Sequence[Bookmark], parent: int) -> tuple[int, int, int]:
            """First, last and count of the open entries below `parent`."""
            numbers = list(range(self.free, self.free + len(entries)))
            self.free += len(entries)
            shown = len(entries)
            for at, (title, place, closed, children) in enumerate(entries):
                links = b"".join(b"/%s %d 0 R" % (key, numbers[other]) for key, other in ((b"Prev", at - 1), (b"Next", at + 1)) if 0 <= other < len(numbers))
                if children:
                    first, last, below = put(children, numbers[at])
                    links += b"/First %d 0 R/Last %d 0 R/Count %d" % (first, last, -below if closed else below)
                    shown += 0 if closed else below
                made.append((numbers[at], b"<</Title %s/Parent %d 0 R/Dest %s%s>>" % (text_of(title), parent, place.encode(), links)))
            return numbers[0], numbers[-1], shown

        if self.outline.top:
            first, last, shown = put(self.outline.top, OUTLINE)
            made.append((OUTLINE, b"<</Type /Outlines/First %d 0 R/Last %d 0 R/Count %d>>" % (first, last, shown)))
        return made
