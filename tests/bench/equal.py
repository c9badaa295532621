"""Whether two PDFs say and show the same: the words inside the margins, and the pictures in their tags."""

from __future__ import annotations

import re
from collections import Counter
from dataclasses import dataclass
from pathlib import Path

import pikepdf
import pypdfium2

from booklet.bind.geometry import Sheet

MM = 72 / 25.4
BLANK = ["Your", "notes"]   # what stands on a page that is left blank
_BULLET = "•"


@dataclass(frozen=True)
class Said:
    """Words and page numbers inside the margins, pictures by their text alternative, and pages."""

    words: Counter[str]
    numbers: Counter[str]
    pictures: Counter[str]
    pages: int


def said(path: Path, sheet: Sheet) -> Said:
    """What a PDF says. Words that are broken at a hyphen are made whole, and signs of lists are left out."""
    document, texts = pypdfium2.PdfDocument(path), []
    for number, page in enumerate(document, 1):
        covers = number in (1, len(document))   # they have no page number, and words may stand low
        inner = {} if covers else {"bottom": (sheet.bottom - 2) * MM, "top": (sheet.height - sheet.top + 2) * MM}
        text = page.get_textpage().get_text_bounded(**inner)
        texts.append("" if text.split() == BLANK else text)
    words = Counter(re.sub(r"(?<=\w)[-\ufffe\x02]\s*\n\s*", "-", "\n".join(texts)).replace(_BULLET, " ").casefold().split())
    numbers = Counter({word: count for word, count in words.items() if re.fullmatch(r"\d+[;,]?", word)})
    return Said(words - numbers, numbers, _pictures(path), len(texts))


def _pictures(path: Path) -> Counter[str]:
    """Text alternatives of figures. A browser makes another figure, which has none, of the element round a picture."""
    with pikepdf.open(path) as pdf:
        tagged = [held for held in pdf.objects if isinstance(held, pikepdf.Dictionary) and held.get("/S") == "/Figure" and "/Alt" in held]
        return Counter(" ".join(str(held.Alt).split()) for held in tagged)


def differences(one: Said, other: Said, folios: int) -> list[str]:
    """What the second says otherwise than the first; at most so many numbers may differ, because books have their own page numbers."""
    found = [f"words of the first alone: {sorted((one.words - other.words).elements())[:20]}" if one.words - other.words else "",
             f"words of the second alone: {sorted((other.words - one.words).elements())[:20]}" if other.words - one.words else "",
             f"pictures: {sum(one.pictures.values())} and {sum(other.pictures.values())}" if one.pictures != other.pictures else ""]
    strange = one.numbers - other.numbers
    if sum(strange.values()) > folios or sum(one.numbers.values()) != sum(other.numbers.values()):
        found.append(f"numbers: {sum(one.numbers.values())} and {sum(other.numbers.values())}, of which {sum(strange.values())} differ")
    return [line for line in found if line]
