"""From the typesetter's own PDF objects to a fragment, without writing a PDF."""

from __future__ import annotations

import zlib
from typing import Any

from .fragment import MARK, Face, Fragment
from .inks import in_black

_OWN_ENTRIES = {"ID", "Headers", "StructParents", "StructParent"}   # of which a fragment has its own
_NOT_KEPT = {"Type", "Pages", "Outlines", "Names", "StructTreeRoot", "Metadata", "Lang", "MarkInfo", "ViewerPreferences"}
SCALE = 0.75   # points in a CSS pixel
LEVEL = 6      # of compression: higher ones take twice as long for one byte in a hundred


def mark(letter: str, number: int | str = "") -> bytes:
    """A place that the join fills in."""
    return MARK + f"{letter}{number};".encode()


class Captured(Exception):
    """Raised to leave the typesetter once the fragment has been taken."""

    def __init__(self, fragment: Fragment) -> None:
        super().__init__("captured")
        self.fragment = fragment


def capture(document, pdf, first: int, count: int, black: bool = False) -> Fragment:
    """The pages from `first` on, `count` of them, with all that belongs to them; neutral colours as greys if they shall be black ink."""
    return _Taker(document, pdf, range(first, first + count), black).taken()


class _Taker:
    """Renumbers the objects that can be reached from the pages and from the tags of these pages."""

    def __init__(self, document, pdf, pages: range, black: bool = False) -> None:
        import pydyf

        self.document, self.pdf, self.pages, self.black = document, pdf, pages, black
        self._plain = pydyf._to_bytes          # of what is neither a group nor a reference
        self.painted: set[int] = set()         # numbers of what is painted on pages
        self.fragment = Fragment()
        self.numbers: dict[int, int] = {}      # the typesetter's object number to ours
        self.todo: list[int] = []
        self.known = {pdf.pages.number: mark("G")}
        self.keys: dict[int, int] = {}

    def taken(self) -> Fragment:
        references = [int(self.pdf.page_references[page].split()[0]) for page in self.pages]
        self.painted = {int(self.pdf.objects[number]["Contents"].split()[0]) for number in references}
        tops, owners = self._tags(set(references))
        self._fonts(references)
        self._catalog()
        for number, page in zip(references, self.pages):
            kind = self.document.pages[page]._page_box.page_type
            self.fragment.pages.append({"object": self._own(number), "side": kind.side, "name": kind.name or "", "blank": kind.blank})
        self.fragment.tops = [self._own(number) for number in tops]
        self.fragment.owners = [self._written(owner) for owner in owners]
        while self.todo:
            self._take(self.todo.pop(0))
        self._places()
        return self.fragment

    def _tags(self, pages: set[int]) -> tuple[list[int], list[Any]]:
        """The topmost elements of these pages, and who owns the marks of each page and annotation."""
        if "StructTreeRoot" not in self.pdf.catalog:
            return [], []
        root = self._object(self.pdf.catalog["StructTreeRoot"])
        top = int(root["K"][0].split()[0])
        self.known[top] = mark("D")
        nums = self._object(root["ParentTree"])["Nums"]
        owner_of, owners = dict(zip(nums[::2], nums[1::2])), []
        for number in sorted(pages):
            page = self.pdf.objects[number]
            annotations = [self._object(one) for one in page.get("Annots", ())]
            for key in (page["StructParents"], *(one["StructParent"] for one in annotations if "StructParent" in one)):
                self.keys[key] = len(owners)
                owners.append(owner_of[key])
        kept = [int(one.split()[0]) for one in self.pdf.objects[top]["K"]]
        return [number for number in kept if int(self.pdf.objects[number]["Pg"].split()[0]) in pages], owners

    def _fonts(self, pages: list[int]) -> None:
        """Fonts are shared by the whole book: only what the fragment uses of each is kept."""
        resources = self._object(self.pdf.objects[pages[0]]["Resources"])
        self.known[int(resources["Font"].split()[0])] = mark("F")
        states = resources["ExtGState"]
        states |= {name: states.get(name, {key: 1.0}) for name, key in (("a1", "ca"), ("A1", "CA"), ("a1.0", "ca"), ("A1.0", "CA"))}   # for page numbers
        for font in self.document.fonts.values():
            before = self.fragment.faces.get(font.hash)
            self.fragment.faces[font.hash] = Face(font.family, font.weight, bool(font.style), {**(before.glyphs if before else {}), **font.to_unicode},
                                                  {**(before.widths if before else {}), **font.widths})

    def _catalog(self) -> None:
        self.fragment.catalog = {key: self._written(value).decode("latin-1") for key, value in self.pdf.catalog.items() if key not in _NOT_KEPT}

    def _places(self) -> None:
        """Destinations and bookmarks, in points on their pages."""
        from weasyprint.matrix import Matrix

        for at, number in enumerate(self.pages):
            page = self.document.pages[number]
            matrix = Matrix(a=SCALE, d=-SCALE, f=page.height * SCALE)
            for name, (x, y, *_) in page.anchors.items():
                self.fragment.names.setdefault(name, [at, *matrix.transform_point(x, y)])
            self.fragment.outline += [[level, label, at, *matrix.transform_point(*point), state == "closed"] for level, label, point, state in page.bookmarks]

    def _object(self, reference: bytes):
        return self.pdf.objects[int(reference.split()[0])]

    def _own(self, number: int) -> int:
        if number not in self.numbers:
            self.numbers[number] = len(self.numbers)
            self.fragment.objects.append(b"")
            self.todo.append(number)
        return self.numbers[number]

    def _take(self, number: int) -> None:
        import pydyf

        item, at = self.pdf.objects[number], self.numbers[number]
        if isinstance(item, pydyf.Stream):
            data, extra = b"\n".join(map(pydyf._to_bytes, item.stream)), dict(item.extra)
            if self.black and (number in self.painted or extra.get("Subtype") == "/Form"):
                data = in_black(data)
            if item.compress and data:
                data = zlib.compress(data, LEVEL)
                extra["Filter"] = "/FlateDecode"
            self.fragment.objects[at] = self._written(pydyf.Dictionary(extra | {"Length": len(data)}))
            self.fragment.streams[at] = data
        else:
            self.fragment.objects[at] = self._written(item)

    def _marked(self, number: int) -> bytes:
        return self.known.get(number) or b"%so%d;" % (MARK, self._own(number))

    def _written(self, value: Any) -> bytes:
        """A value with marks in the place of references."""
        if isinstance(value, bytes):
            return self._marked(int(value[:-4])) if value[-4:] == b" 0 R" and value[:-4].isdigit() else value
        if isinstance(value, dict):
            return b"<<%s>>" % b"".join([b"/%s %s" % (key.encode(), self._entry(key, one) if key in _OWN_ENTRIES else self._written(one)) for key, one in value.items()])
        if isinstance(value, (list, tuple)):
            return b"[%s]" % b" ".join([self._written(one) for one in value])
        return self._plain(value)

    def _entry(self, key: str, value: Any) -> bytes:
        if key == "ID":   # of a table header: made from object numbers, so only its own fragment knows it
            return _owned(value)
        if key == "Headers":
            return b"[" + b" ".join(map(_owned, value)) + b"]"
        return mark("k", self.keys[value])


def _owned(name) -> bytes:
    return b"(" + mark("N") + b"-" + name.string.encode() + b")"


def take_one(pdf, value: bytes | Any) -> Fragment:
    """A fragment without pages: object 0 is this value, and the rest is what it leads to."""
    taker = _Taker(None, pdf, range(0))
    pdf.add_object(value)
    taker._own(value.number)
    while taker.todo:
        taker._take(taker.todo.pop(0))
    return taker.fragment
