"""The join: fragments, page numbers and fonts to one PDF.

Objects are numbered anew, places and bookmarks put together, and the tags of all parts hung under one root. What comes out depends
on nothing but the fragments and their order.
"""

from __future__ import annotations

import re
import zlib
from array import array
from collections.abc import Iterable, Sequence
from hashlib import sha256
from typing import BinaryIO

from .fragment import Fragment
from .metadata import About, information, packet
from .pdf_text import name_of, text_of

_MARKS = re.compile(rb"\xff([a-zA-Z])(\d*);")
LEVEL = 6
ROWS = 4096    # of the table of objects that are written at a time
HEADER = b"%PDF-1.7\n%\xf0\x9f\x93\xbf\n"
(CATALOG, PAGES, INFORMATION, METADATA, ROOT, DOCUMENT, OWNERS, PLACES, OUTLINE, SAVE, RESTORE, FIRST_FREE) = range(1, 13)


class Writer:
    """Puts objects into a file: streams as they are, all others packed together."""

    def __init__(self, file: BinaryIO, level: int = LEVEL) -> None:
        """`level` is that of the compression of packed objects."""
        self.file, self.level, self.length, self.digest = file, level, 0, sha256()
        # By object: its kind, and its offset, or its pack and the index in that. Large books have millions of objects.
        self.kinds, self.ones, self.others = array("B"), array("Q"), array("L")
        self._put(HEADER)

    def stream(self, number: int, dictionary: bytes, data: bytes) -> None:
        self._place(number, 1, self.length)
        self._put(b"%d 0 obj\n%s\nstream\n%s\nendstream\nendobj\n" % (number, dictionary, data))

    def pack(self, number: int, objects: Sequence[tuple[int, bytes]]) -> None:
        """Objects that are no streams, in one stream which is object `number`."""
        offsets, at = [], 0
        for index, (own, text) in enumerate(objects):
            self._place(own, 2, number, index)
            offsets.append(b"%d %d" % (own, at))
            at += len(text) + 1
        head = b" ".join(offsets) + b"\n"
        data = zlib.compress(head + b"\n".join(text for _, text in objects), self.level)
        self.stream(number, b"<</Type /ObjStm/N %d/First %d/Filter /FlateDecode/Length %d>>" % (len(objects), len(head), len(data)), data)

    def finish(self, number: int) -> None:
        """Write the end of the file; the table of its objects is object `number`."""
        start, size = self.length, number + 1
        self._place(number, 1, start)
        wide, table, data = max(1, (start.bit_length() + 7) // 8), zlib.compressobj(self.level), []
        for first in range(0, size, ROWS):
            columns = (column[first:min(first + ROWS, size)] for column in (self.kinds, self.ones, self.others))
            data.append(table.compress(b"".join([((kind << 8 * wide | one) << 24 | other).to_bytes(wide + 4, "big") for kind, one, other in zip(*columns)])))
        data = b"".join([*data, table.flush()])
        own_id = self.digest.hexdigest()[:32].encode()
        self._put(b"%d 0 obj\n<</Type /XRef/Size %d/W [1 %d 3]/Root %d 0 R/Info %d 0 R/ID [<%s> <%s>]/Filter /FlateDecode/Length %d>>\nstream\n%s\nendstream\nendobj\n"
                  % (number, size, wide, CATALOG, INFORMATION, own_id, own_id, len(data), data))
        self._put(b"startxref\n%d\n%%%%EOF\n" % start)

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


class Join:
    """One book, in a file. Parts go in one after the other; the rest is written at the end."""

    def __init__(self, fonts: Fragment, file: BinaryIO, level: int = LEVEL) -> None:
        self.writer, self.free = Writer(file, level), FIRST_FREE
        self.pages: list[int] = []
        self.tops: list[bytes] = []
        self.owners: list[bytes] = []
        self.names: dict[str, bytes] = {}
        self.outline: list = []
        self.catalog: dict[str, bytes] = {}
        self.parts = 0
        self.fonts = self.free
        self._objects(fonts)

    def add(self, part: Fragment, folios: Sequence[bytes]) -> None:
        """Add a part, with the page-number stream of each of its pages; empty for a page without a number."""
        base, keys = self.free, len(self.owners)
        numbers = [base + page["object"] for page in part.pages]
        stamps = {page["object"]: base + len(part.objects) + at for at, page in enumerate(part.pages) if folios[at]}
        self.parts += 1
        self._objects(part, stamps)
        for page, data in zip(part.pages, folios):
            if data:
                self.writer.stream(stamps[page["object"]], b"<</Filter /FlateDecode/Length %d>>" % len(data), data)
        self.tops += [b"%d 0 R" % (base + top) for top in part.tops]
        self.owners += [self._filled(owner, base, keys) for owner in part.owners]
        for name, (page, x, y) in part.names.items():
            self.names.setdefault(name, b"[%d 0 R /XYZ %s %s 0]" % (numbers[int(page)], _number(x), _number(y)))
        self.outline += _placed(part.outline, numbers)
        self.pages += numbers
        for key, value in part.catalog.items():
            self.catalog.setdefault(key, self._filled(value.encode("latin-1"), base, keys))

    def _objects(self, part: Fragment, stamps: dict[int, int] | None = None) -> None:
        base, keys, stamps = self.free, len(self.owners), stamps or {}
        whole = self._filled(b"\xfe".join(part.objects), base, keys).split(b"\xfe")
        for at, stamp in stamps.items():
            whole[at] = re.sub(rb"/Contents (\d+ 0 R)", b"/Contents [%d 0 R \\1 %d 0 R %d 0 R]" % (SAVE, RESTORE, stamp), whole[at], count=1)
        plain = []
        for at, text in enumerate(whole):
            if at in part.streams:
                self.writer.stream(base + at, text, part.streams[at])
            else:
                plain.append((base + at, text))
        self.free = base + len(part.objects) + len(part.pages)
        self.writer.pack(self.free, plain)
        self.free += 1

    def _filled(self, text: bytes, base: int, keys: int) -> bytes:
        fixed = {b"G": b"%d 0 R" % PAGES, b"D": b"%d 0 R" % DOCUMENT, b"F": b"%d 0 R" % self.fonts, b"N": b"%d" % self.parts}

        def fill(match: re.Match) -> bytes:
            if match[1] == b"o":
                return b"%d 0 R" % (base + int(match[2]))
            return b"%d" % (keys + int(match[2])) if match[1] == b"k" else fixed[match[1]]

        return _MARKS.sub(fill, text)

    def finish(self, about: About) -> None:
        """Write what holds all parts together."""
        writer = self.writer
        data = packet(about)
        writer.stream(METADATA, b"<</Type /Metadata/Subtype /XML/Length %d>>" % len(data), data)
        writer.stream(SAVE, b"<</Length 1>>", b"q")
        writer.stream(RESTORE, b"<</Length 1>>", b"Q")
        objects = [(PAGES, b"<</Type /Pages/Count %d/Kids [%s]>>" % (len(self.pages), b" ".join(b"%d 0 R" % page for page in self.pages))),
                   (INFORMATION, information(about)),
                   (ROOT, b"<</Type /StructTreeRoot/K [%d 0 R]/ParentTree %d 0 R/ParentTreeNextKey %d>>" % (DOCUMENT, OWNERS, len(self.owners))),
                   (DOCUMENT, b"<</Type /StructElem/S /Document/P %d 0 R/K [%s]>>" % (ROOT, b" ".join(self.tops))),
                   (OWNERS, b"<</Nums [%s]>>" % b" ".join(b"%d %s" % pair for pair in enumerate(self.owners))),
                   (PLACES, b"<</Names [%s]>>" % b" ".join(b"%s %s" % pair for pair in sorted((text_of(name), place) for name, place in self.names.items())))]
        objects += self._outlined()
        objects.append((CATALOG, self._catalog(about)))
        writer.pack(self.free, objects)
        writer.finish(self.free + 1)

    def _catalog(self, about: About) -> bytes:
        entries = {"Type": b"/Catalog", "Pages": b"%d 0 R" % PAGES, "Lang": text_of(about.language), "Metadata": b"%d 0 R" % METADATA,
                   "MarkInfo": b"<</Marked true>>", "StructTreeRoot": b"%d 0 R" % ROOT, "ViewerPreferences": b"<</DisplayDocTitle true>>",
                   "PageLabels": b"<</Nums [0 <</S /D>>]>>", "Names": b"<</Dests %d 0 R>>" % PLACES, **self.catalog}
        if self.outline:
            entries["Outlines"] = b"%d 0 R" % OUTLINE
        return b"<<" + b"".join(name_of(key) + b" " + value for key, value in entries.items()) + b">>"

    def _outlined(self) -> list[tuple[int, bytes]]:
        """The bookmarks as objects; the root is OUTLINE."""
        made: list[tuple[int, bytes]] = []

        def put(entries: list, parent: int) -> tuple[int, int, int]:
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
                made.append((numbers[at], b"<</Title %s/Parent %d 0 R/Dest %s%s>>" % (text_of(title), parent, place, links)))
            return numbers[0], numbers[-1], shown

        if self.outline:
            first, last, shown = put(self.outline, OUTLINE)
            made.append((OUTLINE, b"<</Type /Outlines/First %d 0 R/Last %d 0 R/Count %d>>" % (first, last, shown)))
        return made


def _placed(outline: Iterable, pages: Sequence[int]) -> list:
    return [(title, b"[%d 0 R /XYZ %s %s 0]" % (pages[page], _number(x), _number(y)), closed, _placed(children, pages))
            for title, page, x, y, closed, children in outline]


def _number(value: float) -> bytes:
    return f"{value:.6f}".rstrip("0").rstrip(".").encode() if value % 1 else b"%d" % value
