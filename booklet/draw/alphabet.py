"""Our own stroke alphabet: the letters and figures of charts, drawn with one line width and round corners.

It has few segments a letter, which keeps charts with a thousand letters quick, and shapes that cannot be taken
for each other: zero as a bead's letter has a bar, capital I has feet, small l a tail. Each glyph is a list of lines on a grid; a point is
two digits, x then y, with the baseline at y = 2, small letters up to 6, capitals and figures up to 8.
"""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache

from .numbers import num

BASELINE, SMALL, CAPITAL = 2, 6, 8
CAP_UNITS = CAPITAL - BASELINE  # grid units
STROKE = 0.85    # line width in grid units
WIDEST_CORNER = 2  # grid units
SPACE = 1.8      # between the letters of a word or number, grid units

GLYPHS = {name: tuple(tuple((int(point[0]), int(point[1])) for point in line.split()) for line in lines.split("/"))
          for name, lines in {
    "A": "02 28 42 / 14 34", "B": "02 32 43 44 35 05 / 02 08 28 37 36 35", "C": "43 32 12 03 07 18 38 47",
    "D": "02 08 28 46 44 22 02", "E": "42 02 08 48 / 05 35", "F": "02 08 48 / 05 35",
    "G": "25 45 42 12 03 07 18 38 47", "H": "02 08 / 42 48 / 05 45", "I": "02 22 / 12 18 / 08 28",
    "J": "03 12 32 43 48", "K": "02 08 / 48 05 42", "L": "08 02 42", "M": "02 08 34 68 62", "N": "02 08 42 48",
    "O": "12 03 07 18 38 47 43 32 12", "P": "02 08 38 47 45 34 04", "Q": "12 03 07 18 38 47 43 32 12 / 24 51",
    "R": "02 08 38 47 46 35 05 / 25 42", "S": "03 12 32 43 44 35 15 06 07 18 38 47", "T": "22 28 / 08 48",
    "U": "08 03 12 32 43 48", "V": "08 22 48", "W": "08 12 37 52 68", "X": "02 48 / 08 42",
    "Y": "22 25 08 / 25 48", "Z": "08 48 02 42",
    "a": "16 36 45 42 / 44 14 03 12 32 43", "b": "08 02 32 43 45 36 06", "c": "43 32 12 03 05 16 36 45",
    "d": "48 42 12 03 05 16 46", "e": "04 44 45 36 16 05 03 12 42", "f": "12 17 28 48 / 06 36",
    "g": "45 36 16 05 03 12 42 / 46 41 30 00", "h": "02 08 / 06 36 45 42", "i": "22 26 06 / 28 28",
    "j": "36 31 20 00 / 38 38", "k": "02 08 / 46 04 42", "l": "08 28 23 32 42", "m": "02 06 26 35 32 / 26 56 65 62",
    "n": "02 06 36 45 42", "o": "12 03 05 16 36 45 43 32 12", "p": "00 06 36 45 43 32 02",
    "q": "40 46 16 05 03 12 42", "r": "02 06 / 05 16 36", "s": "02 32 43 34 14 05 16 46", "t": "18 13 22 42 / 06 46",
    "u": "06 03 12 42 / 46 42", "v": "06 22 46", "w": "06 12 35 52 66", "x": "02 46 / 06 42",
    "y": "06 22 / 46 10 00", "z": "06 46 02 42",
    "0": "12 03 07 18 38 47 43 32 12 / 14 36", "1": "07 28 22 / 02 42", "2": "07 18 38 47 45 02 42",
    "3": "07 18 38 47 46 35 44 43 32 12 03 / 15 35", "4": "32 38 04 44", "5": "48 08 05 35 44 43 32 12 03",
    "6": "47 38 18 07 03 12 32 43 44 35 05", "7": "08 48 12",
    "8": "15 06 07 18 38 47 46 35 15 04 03 12 32 43 44 35", "9": "03 12 32 43 47 38 18 07 06 15 45",
}.items()}


def _ends(lines: Iterable[Iterable[tuple[int, int]]]) -> tuple[int, int, int, int]:
    """Left, right, lowest and highest of a glyph."""
    xs, ys = zip(*(point for line in lines for point in line))
    return min(xs), max(xs), min(ys), max(ys)


ENDS = {char: _ends(lines) for char, lines in GLYPHS.items()}


@lru_cache(maxsize=1024)
def extent(text: str) -> float:
    """Width of a word or number in grid units, without the line width."""
    return sum(ENDS[char][1] - ENDS[char][0] for char in text) + SPACE * (len(text) - 1)


def width(text: str, cap: float) -> float:
    """Width in mm of a word or number with capitals `cap` mm high."""
    return extent(text) * cap / CAP_UNITS


def letter(char: str, x: float, y: float, cap: float) -> str:
    """Path of one letter in the middle of a bead at (x, y), y down, with capitals `cap` mm high."""
    unit, (left, right, low, high) = cap / CAP_UNITS, ENDS[char]
    return _placed(char, x - (left + right) / 2 * unit, y + (low + high) / 2 * unit, unit)


def word(text: str, x: float, y: float, cap: float, anchor: str = "start") -> str:
    """Path of a word or number whose capitals are centred on y. `anchor` tells what x is: start, middle or end."""
    unit = cap / CAP_UNITS
    x -= {"start": 0, "middle": 0.5, "end": 1}[anchor] * width(text, cap)
    baseline, parts = y + (CAPITAL + BASELINE) / 2 * unit, []
    for char in text.replace("0", "O"):  # among other figures a zero needs no bar
        left, right, *_ = ENDS[char]
        parts.append(_placed(char, x - left * unit, baseline, unit))
        x += (right - left + SPACE) * unit
    return "".join(parts)


def _placed(char: str, x: float, y: float, unit: float) -> str:
    """A glyph whose grid origin (0, 0) stands at (x, y)."""
    return "".join(f"M{num(x + start[0] * unit)} {num(y - start[1] * unit)}{rest}" for start, rest in _lines(char, unit))


@lru_cache(maxsize=4096)
def _lines(char: str, unit: float) -> tuple[tuple[tuple[int, int], str], ...]:
    return tuple((line[0], _relative(line, unit)) for line in GLYPHS[char])


def _relative(line: tuple[tuple[int, int], ...], unit: float) -> str:
    """Path data from the first point on. A short slant of equal sides is a corner, and is rounded."""
    parts = []
    for index, ((x, y), (next_x, next_y)) in enumerate(zip(line, line[1:])):
        across, down = num((next_x - x) * unit), num((y - next_y) * unit)
        if next_y == y:
            parts.append(f"h{across}")  # also a dot: a line of no length with round ends
        elif next_x == x:
            parts.append(f"v{down}")
        elif len(line) > 2 and abs(next_x - x) == abs(next_y - y) <= WIDEST_CORNER:
            flat = (index and line[index - 1][1] == y) or (index + 2 < len(line) and line[index + 2][0] == next_x)
            parts.append(f"q{across if flat else 0} {0 if flat else down} {across} {down}")
        else:
            parts.append(f"l{across} {down}")
    return "".join(parts)
