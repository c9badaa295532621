"""A tagged PDF as a screen reader meets it: its elements in reading order, each with its text."""

import ctypes
import io
import re
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import NamedTuple

import pikepdf
import pypdfium2
from pypdfium2 import raw


@dataclass
class Element:
    """One element of the tag tree. `text` is all text in it, `page` the index of the first page on which it has text, -1 for none, and `top` how
    far up that begins, in points."""

    tag: str
    held: dict      # its alternative text, language and attributes
    children: list["Element"] = field(default_factory=list)
    text: str = ""
    page: int = -1
    top: float = 0.0

    def walk(self) -> Iterator["Element"]:
        yield self
        for child in self.children:
            yield from child.walk()

    def all(self, *tags: str) -> list["Element"]:
        return [element for element in self.walk() if element.tag in tags]

    @property
    def alt(self) -> str:
        """Its alternative text; empty where there is none."""
        return self.held.get("Alt", "")


def read(content: bytes) -> Element:
    """The whole tree of a PDF."""
    texts = _texts(content)
    with pikepdf.open(io.BytesIO(content)) as pdf:
        pages = {page.objgen: number for number, page in enumerate(pdf.pages)}
        return _element(pdf.Root.StructTreeRoot, texts, pages, -1)


def _element(held, texts, pages, page) -> Element:
    made = Element(str(held.get("/S", "/Root"))[1:], {name: held[f"/{name}"] for name in ("Alt", "A", "Lang") if f"/{name}" in held})
    page = pages[held.Pg.objgen] if "/Pg" in held else page
    kids = held.get("/K", [])
    parts = []
    for kid in kids if isinstance(kids, pikepdf.Array) else [kids]:
        if isinstance(kid, int) or kid.get("/Type") == "/MCR":
            at = page if isinstance(kid, int) or "/Pg" not in kid else pages[kid.Pg.objgen]
            parts.append((*texts.get((at, int(kid if isinstance(kid, int) else kid.MCID)), ("", 0.0)), at))
        elif "/S" in kid:
            child = _element(kid, texts, pages, page)
            made.children.append(child)
            parts.append((child.text, child.top, child.page))
    parts = [part for part in parts if part[0].strip()]
    made.text = re.sub(r" (?=[,;:.)])", "", " ".join(" ".join(text for text, _, _ in parts).split()))
    if parts:
        _, made.top, made.page = parts[0]
    made.held = {name: str(value) if isinstance(value, pikepdf.String) else {str(key)[1:]: str(inner).lstrip("/") for key, inner in value.items()} for name, value in made.held.items() if not isinstance(value, pikepdf.Array)}
    return made


def _texts(content: bytes) -> dict[tuple[int, int], tuple[str, float]]:
    """Text, and how far its upper edge is from the foot of the page in points, by page and number of its mark."""
    found: dict[tuple[int, int], tuple[str, float]] = {}
    for number, words, shown in _shown(content):
        mark = raw.FPDFPageObj_GetMarkedContentID(shown.raw)
        if mark >= 0:
            before, top = found.get((number, mark), ("", shown.get_bounds()[3]))
            found[number, mark] = f"{before} {_text(shown, words)}", top
    return found


class Type(NamedTuple):
    """How text is set: the name of the face without the letters of its subset, its size in points, and whether the file holds its font."""

    face: str
    size: float
    is_embedded: bool


def types(content: bytes) -> Counter[Type]:
    """All type of a PDF, with the number of times that it is used."""
    found: Counter[Type] = Counter()
    matrix, name = raw.FS_MATRIX(), ctypes.create_string_buffer(200)
    for _, _, shown in _shown(content):
        raw.FPDFPageObj_GetMatrix(shown.raw, matrix)
        size = ctypes.c_float()
        raw.FPDFTextObj_GetFontSize(shown.raw, size)
        font = raw.FPDFTextObj_GetFont(shown.raw)
        raw.FPDFFont_GetBaseFontName(font, name, len(name))
        found[Type(name.value.decode().split("+")[-1], round(size.value * (matrix.c ** 2 + matrix.d ** 2) ** 0.5, 1), bool(raw.FPDFFont_GetIsEmbedded(font)))] += 1
    return found


def _shown(content: bytes) -> Iterator:
    """Every run of text: the index of its page, the words of that page, the run."""
    document = pypdfium2.PdfDocument(content)
    try:
        for number, page in enumerate(document):
            words = page.get_textpage()
            for shown in page.get_objects(filter=[raw.FPDF_PAGEOBJ_TEXT], max_depth=5):
                yield number, words, shown
    finally:
        document.close()


def _text(shown, words) -> str:
    size = raw.FPDFTextObj_GetText(shown.raw, words.raw, None, 0)
    buffer = ctypes.create_string_buffer(size)
    raw.FPDFTextObj_GetText(shown.raw, words.raw, ctypes.cast(buffer, ctypes.POINTER(raw.FPDF_WCHAR)), size)
    return buffer.raw[:size - 2].decode("utf-16-le")
