"""How far the rows of words stand apart: as far as is easy to read, or closer where that keeps them on one page less."""

from __future__ import annotations

from collections.abc import Iterable
from math import ceil

from .geometry import Sheet

USUAL, LEAST = 0.26, 0.1      # rem over and under the words of a row
SIZE, LEADING = 0.97, 1.4     # of the words, as print.css says: rem, sizes of the type
HEAD, TURN = 1.9, 3.2         # rem that the heading takes, and the line about rows below the base row
TICK, INDENT = 1.35, 1.65     # rem that the box to tick takes of the first line of a row, and the indent of the others
CHANGE = 10.0                 # rem that "Change the thread here." takes
FIVE = 0.07                   # rem that the rules under rows take, on average

# Thousandths of its size that each sign of our sans is wide; a test holds them against the font.
_WIDE = {202: " \u00a0", 241: "|", 246: "i", 247: "j", 249: "',.:;", 255: "l", 263: "I", 289: "!", 292: "f", 303: "()[]{}", 311: "-", 338: "t", 347: "r", 350: "/", 418: "*",
         419: "s", 425: "?z", 446: "x", 456: "c", 467: "vy", 476: "Y", 480: "J–", 486: "L", 494: "F", 495: "k", 496: "e", 497: "0123456789+=×", 504: "agä", 513: "X", 515: "V",
         527: "E", 534: "S", 536: "T", 539: "Z", 542: "oö", 544: "AhuÄü", 547: "n", 553: "b", 555: "dpq", 566: "P", 569: "R", 571: "C", 576: "ß", 579: "K", 588: "B", 615: "D",
         617: "G", 619: "→←", 645: "UÜ", 647: "N", 652: "H", 664: "OQÖ", 718: "w", 727: "M", 786: "W", 799: "☐", 829: "m"}
WIDTHS = {sign: wide / 1000 for wide, signs in _WIDE.items() for sign in signs}
OTHER = 0.6   # for a sign that is not there


def row_gap(sheet: Sheet, rows: Iterable[str], turned: bool = False, changes: int = 0, *, large: bool = False) -> float:
    """rem over and under each of these rows, so that they take as few pages as they can, and stand as far apart as that leaves.

    `turned`: a line tells of rows below the base row. `changes`: so many rows may say that the thread is changed after them.
    """
    size, leading, indent = (1.0, sheet.leading, 2.05) if large else (SIZE, LEADING, INDENT)
    rem = sheet.type * 25.4 / 72
    measure = sheet.measure / rem
    counts = [lines(row, (measure - TICK) / size, (measure - indent) / size) for row in rows]
    if not counts:
        return USUAL
    more = ceil(changes * CHANGE / measure)
    room = sheet.depth / rem - HEAD - (TURN if turned else 0.0)
    used = (sum(counts) + more) * size * leading + FIVE * len(counts)
    pages = ceil((used + 2 * LEAST * len(counts)) / room)
    return round(min(USUAL, max(LEAST, (pages * room - used) / len(counts) / 2)), 3)


def lines(text: str, first: float, others: float) -> int:
    """How many lines a text takes, of which the first is so wide, in sizes of the type, and the others so."""
    count, left = 1, first
    for word in text.split(" "):
        wide = width(word)
        if wide > left and left not in (first, others):
            count, left = count + 1, others
        while wide > left:   # a word that is wider than a line is broken anywhere
            count, wide, left = count + 1, wide - left, others
        left -= wide + WIDTHS[" "]
    return count


def width(text: str) -> float:
    """How wide a text is in our sans, in sizes of the type."""
    return sum(WIDTHS.get(sign, OTHER) for sign in text)
