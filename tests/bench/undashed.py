"""Pictures for a browser: every dash a line of its own.

We draw a row of beads as one dashed line, which our typesetter writes as such. A browser works the outline of every dash out and writes that, in many times
the time and size, so nobody who prints from a browser would draw so. A dash along straight lines begins where the one before has ended, round corners too.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from math import hypot

_DASHED = re.compile(r'<path[^>]*\bstroke-dasharray="([^"]*)"[^>]*>')
_DATA = re.compile(r'(?<= d=")[^"]*')
_STEP = re.compile(r"([A-Za-z])([^A-Za-z]*)")
Point = tuple[float, float]


def undashed(html: str) -> str:
    """The same pictures without dashes. Curved lines keep theirs."""
    return _DASHED.sub(_solid, html)


def _solid(match: re.Match) -> str:
    lengths = [float(length) for length in match[1].split()]
    data = _DATA.search(match[0])[0]
    if any(length < 0 for length in lengths):   # no dashes at all
        said = data
    elif set(re.findall("[A-Za-z]", data)) <= set("MmLlhvz"):
        said = "".join(f"M{x:.3f} {y:.3f}L{to_x:.3f} {to_y:.3f}" for line in _lines(data) for (x, y), (to_x, to_y) in _dashes(line, lengths))
    else:
        return match[0]
    return match[0].replace(f' stroke-dasharray="{match[1]}"', "").replace(f'"{data}"', f'"{said}"')


def _lines(data: str) -> Iterator[list[Point]]:
    """The points of each line that is drawn without a break."""
    line: list[Point] = []
    x = y = 0.0
    for command, rest in _STEP.findall(data):
        numbers = [float(number) for number in re.findall(r"-?[0-9.]+", rest)]
        if command == "z":
            x, y = line[0]
        elif command == "h":
            x += numbers[0]
        elif command == "v":
            y += numbers[0]
        else:
            x, y = numbers if command in "ML" else (x + numbers[0], y + numbers[1])
        if command in "Mm":
            yield line
            line = []
        line.append((x, y))
    yield line


def _dashes(line: list[Point], lengths: list[float]) -> Iterator[tuple[Point, Point]]:
    at, left = 0, lengths[0]   # the dash or gap that is under way, and what is left of it
    for (x, y), (to_x, to_y) in zip(line, line[1:]):
        whole, done = hypot(to_x - x, to_y - y), 0.0
        while whole - done > 1e-6:
            step = min(left, whole - done)
            if at % 2 == 0:
                yield ((x + (to_x - x) * done / whole, y + (to_y - y) * done / whole),
                       (x + (to_x - x) * (done + step) / whole, y + (to_y - y) * (done + step) / whole))
            done, left = done + step, left - step
            if left < 1e-6:
                at = (at + 1) % len(lengths)
                left = lengths[at]
