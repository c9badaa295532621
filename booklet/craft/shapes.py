"""Outlines to start a design from: the rows of a body in brick stitch, and the lengths of a fringe.

An outline is a list of moves from row to row, from the bottom up: a row goes out (+1, one stitch more) or comes in (-1, one
stitch fewer) on both of its edges, by half a stitch each.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from math import cos, pi

from msgspec import Struct

OUT, IN = 1, -1
LEAST_STRAND = 6       # beads, end beads counted
SHORTEST_SHARE = 0.4   # of the longest strand, that the shortest one has about
MOST_STEP = 4          # beads from one strand to the next; more would leave gaps in the hem


class ImpossibleShape(ValueError):
    """Numbers that give no such shape: what is wrong, and numbers that would do."""

    def __init__(self, what: str, cure: str) -> None:
        super().__init__(what)
        self.what, self.cure = what, cure


class Outline(Struct, frozen=True):
    """The rows of a shape, bottom up, each as (position of its first stitch, stitches), and the index of the base row among them."""

    rows: tuple[tuple[int, int], ...]
    base: int = 0

    @property
    def widest(self) -> int:
        """Stitches of the widest row."""
        return max(count for _, count in self.rows)


class Shape(Struct, frozen=True):
    """How an outline comes from a base row and a number of rows."""

    about: str                                   # in a few words
    base: int                                    # stitches of the base row, if nothing else is asked for
    least: int                                   # the fewest
    rows: Callable[[int], int]                   # rows for a base, if nothing else is asked for
    moves: Callable[[int, int], list[int]]       # moves for base and rows; raises ImpossibleShape
    from_middle: bool = False                    # the base row is the widest, and rows are worked to both sides of it


def outline(name: str, base: int, rows: int | None = None) -> Outline:
    """The outline of a shape with `base` stitches in row 1. Raises ImpossibleShape."""
    shape = SHAPES[name]
    if base < shape.least:
        raise ImpossibleShape(f"a {name} needs a base row of {shape.least} stitches or more; found {base}", f"take --base {shape.least}")
    rows = shape.rows(base) if rows is None else rows
    moves = shape.moves(base, rows)
    index = moves.index(IN) if shape.from_middle else 0
    count, at, found = base - sum(moves[:index]), 0, []
    for move in (*moves, 0):
        found.append((at, count))
        at, count = at - move, count + move
    left = min(at for at, _ in found)
    return Outline(tuple((at - left, count) for at, count in found), index)


def _triangle(base: int, rows: int) -> list[int]:
    least, most = max(2, base - 2), base
    if rows > most:
        raise ImpossibleShape(f"a triangle on {base} stitches has {most} rows at most, the last of one stitch; found {rows}",
                              f"take --rows {most}, or --base {rows}")
    if rows < least:
        raise ImpossibleShape(f"a triangle on {base} stitches has {least} to {most} rows; found {rows}",
                              f"take --rows {least}, or --shape trapezoid for a broad top")
    return [IN] * (rows - 1)


def _trapezoid(base: int, rows: int) -> list[int]:
    if not 2 <= rows <= base - 1:
        raise ImpossibleShape(f"a trapezoid on {base} stitches has {_to(2, base - 1)} rows, so that two stitches or more are left at the top; found {rows}",
                              f"take --rows {_nearest(rows, 2, base - 1)}")
    return [IN] * (rows - 1)


def _diamond(base: int, rows: int) -> list[int]:
    most = 2 * base - 1
    if not 3 <= rows <= most:
        raise ImpossibleShape(f"a diamond of {base} stitches across has {_to(3, most)} rows; found {rows}", f"take --rows {_nearest(rows, 3, most)}")
    return [OUT] * (rows // 2) + [IN] * ((rows - 1) // 2)   # an even number has its odd row below, where no hanger needs the room


def _hexagon(base: int, rows: int) -> list[int]:
    if rows < 3 or rows % 2 == 0:
        raise ImpossibleShape(f"a hexagon has an odd number of rows, 3 or more, so that it closes as it opens; found {rows}",
                              f"take --rows {max(3, rows + 1)}")
    return [OUT] * (rows // 2) + [IN] * (rows // 2)


def _rectangle(base: int, rows: int) -> list[int]:
    if rows < 2:
        raise ImpossibleShape(f"a rectangle has 2 rows or more; found {rows}", "take --rows 2")
    return [IN if row % 2 else OUT for row in range(1, rows)]


def _teardrop(base: int, rows: int) -> list[int]:
    """Out, a few rows straight, then in to a top of two stitches, or of three where the rows do not come out for two."""
    if rows < base + 1:
        raise ImpossibleShape(f"a teardrop on {base} stitches has {base + 1} rows or more, to widen and to narrow again; found {rows}",
                              f"take --rows {base + 1}")
    top = 2 if (rows - base) % 2 else 3
    turns = (rows - base - 1 + top) // 2
    straight = turns // 4
    out = turns - straight
    return [OUT] * out + [IN, OUT] * straight + [IN] * (base + out - top)


SHAPES: Mapping[str, Shape] = {
    "triangle": Shape("narrows by one stitch a row to its top", 11, 2, lambda base: max(2, base - 1), _triangle),
    "diamond": Shape("is worked from its widest row up, and then down", 11, 2, lambda base: max(3, 2 * base - 2), _diamond, from_middle=True),
    "trapezoid": Shape("narrows as a triangle does, with a broad top", 13, 3, lambda base: max(2, base // 2), _trapezoid),
    "hexagon": Shape("widens, then narrows as it widened", 7, 2, lambda base: 2 * base - 1, _hexagon),
    "rectangle": Shape("has straight edges: its rows come in and go out by turns", 9, 3, lambda base: (base + base // 2) | 1, _rectangle),
    "teardrop": Shape("widens, then narrows to its top", 7, 3, lambda base: base - 1 + 2 * max(2, (base + 1) // 2), _teardrop),
}


def _to(least: int, most: int) -> str:
    return f"{least}" if least == most else f"{least} to {most}"


def _nearest(number: int, least: int, most: int) -> int:
    return min(max(number, least), most)


FRINGES: Mapping[str, str] = {
    "none": "no fringe",
    "straight": "all strands of one length",
    "v": "longest in the middle, in even steps",
    "slant": "longest at the left, in even steps to the right",
    "curve": "longest in the middle, in a round hem",
}


def strand_lengths(fringe: str, strands: int, longest: int) -> tuple[int, ...]:
    """Beads of each strand from left to right, end beads counted. Raises ImpossibleShape."""
    if longest < LEAST_STRAND:
        raise ImpossibleShape(f"the longest strand needs {LEAST_STRAND} beads or more; found {longest}", f"take --longest {LEAST_STRAND}")
    if fringe == "straight":
        return (longest,) * strands
    steps = [index if fringe == "slant" else max(strands - 1 - 2 * index, 2 * index - strands + 1) // 2 for index in range(strands)]
    if fringe == "curve":
        return tuple(max(LEAST_STRAND, _on_curve(longest, step, max(steps))) for step in steps)
    step = _even_step(fringe, max(steps), strands, longest)
    return tuple(longest - step * k for k in steps)


def _on_curve(longest: int, step: int, last: int) -> int:
    share = cos(step / last * pi / 2) if last else 1
    return round(longest * (SHORTEST_SHARE + (1 - SHORTEST_SHARE) * share))


def _even_step(fringe: str, last: int, strands: int, longest: int) -> int:
    """Beads from strand to strand, so that the shortest has about its share, and never fewer than the least."""
    if last == 0:
        return 0
    if longest - last < LEAST_STRAND:
        raise ImpossibleShape(
            f"a {fringe} fringe of {strands} strands needs {last + LEAST_STRAND} beads or more in the longest; found {longest}",
            f"take --longest {last + LEAST_STRAND}, or --fringe curve")
    return _nearest(round(longest * (1 - SHORTEST_SHARE) / last), 1, min(MOST_STEP, (longest - LEAST_STRAND) // last))
