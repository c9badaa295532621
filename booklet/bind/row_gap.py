"""How far the rows of words stand apart: as far as is easy to read, or closer where that keeps them on one page less."""

from __future__ import annotations

from collections.abc import Iterable
from math import ceil

from .geometry import Sheet

USUAL, LEAST = 0.26, 0.1     # rem over and under the words of a row
SIZE, LEADING = 0.97, 1.4     # of the words, as print.css says: rem, sizes of the type
HEAD = 3.2                    # lines that the heading takes, and the line about rows below the base row
BEFORE = 3                    # rem that tick box and indent take of a line, and what a line may be short of its measure
FIVE = 0.1                    # rem that the rule after a fifth row takes
_NARROW, _WIDE = frozenset(" ,.:;()[]|'"), frozenset("→←×mwMW☐")


def row_gap(sheet: Sheet, rows: Iterable[str]) -> float:
    """rem over and under each of these rows, so that they take as few pages as they can, and stand as far apart as that leaves."""
    rem = sheet.type * 25.4 / 72
    measure = sheet.measure / rem - BEFORE
    lines = [ceil(width(row) * SIZE / measure) for row in rows]
    room = sheet.depth / rem - HEAD * LEADING
    used, count = sum(lines) * SIZE * LEADING + FIVE * len(lines), len(lines)
    if not count:
        return USUAL
    pages = ceil((used + 2 * LEAST * count) / room)
    return round(min(USUAL, max(LEAST, (pages * room - used) / count / 2)), 3)


def width(text: str) -> float:
    """About how wide a text is in our sans, in sizes of the type."""
    return sum(0.24 if sign in _NARROW else 0.85 if sign in _WIDE else 0.57 if sign.isupper() else 0.5 for sign in text)
