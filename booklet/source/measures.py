"""Measures as written ("1.4 m", "5 g", "10 %", "148 x 210 mm") to numbers."""

from __future__ import annotations

import re

MM_PER_INCH = 25.4   # exactly, by the definition of the inch
MM = {"mm": 1.0, "cm": 10.0, "m": 1000.0, "in": MM_PER_INCH, "ft": 12 * MM_PER_INCH}

# Width and height in mm: ISO 216, and sizes of the trade, which are whole or half inches.
PAGE_SIZES = {
    "A3": (297.0, 420.0), "A4": (210.0, 297.0), "A5": (148.0, 210.0), "A6": (105.0, 148.0),
    "B4": (250.0, 353.0), "B5": (176.0, 250.0), "B6": (125.0, 176.0),
    **{name: (width * MM_PER_INCH, height * MM_PER_INCH) for name, width, height in (
        ("Letter", 8.5, 11), ("half letter", 5.5, 8.5), ("5x8", 5, 8), ("6x9", 6, 9), ("7x10", 7, 10), ("8x10", 8, 10), ("8.5x8.5", 8.5, 8.5))},
}

NUMBER = r"[0-9]{1,6}(?:\.[0-9]{1,6})?"
LENGTH = rf"({NUMBER}) ?(mm|cm|m|in|ft)"
_SIZES = rf"(?P<numbers>{NUMBER}(?: ?[x×] ?{NUMBER})*) ?(?P<unit>mm|cm|in)\b"
AREA = rf"({NUMBER}) ?[x×] ?({NUMBER}) ?(mm|cm|in)"


def length(text: str) -> float | None:
    """Millimetres; None if the text is no length with a unit."""
    match = re.fullmatch(LENGTH, text)
    return _mm(match[1], match[2]) if match else None


def millimetres(text: str) -> float | None:
    """The largest length in a free text such as "18 x 10 mm"; None if there is none."""
    found = [_mm(number, match["unit"]) for match in re.finditer(_SIZES, text) for number in re.findall(NUMBER, match["numbers"])]
    return max(found, default=None)


def amount(text: str, unit: str) -> float | None:
    """The number before a unit such as "g" or "%"; None if the text is something else."""
    match = re.fullmatch(rf"({NUMBER}) ?{re.escape(unit)}", text)
    return float(match[1]) if match else None


def page_size(text: str) -> tuple[float, float] | None:
    """Width and height in mm of a named size or of "width x height unit"."""
    for name, size in PAGE_SIZES.items():
        if name.casefold() == text.casefold():
            return size
    match = re.fullmatch(AREA, text)
    return (_mm(match[1], match[3]), _mm(match[2], match[3])) if match else None


def _mm(number: str, unit: str) -> float:
    return round(float(number) * MM[unit], 6)   # 1.1 m is 1100 mm, not 1100.0000000000002
