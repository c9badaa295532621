"""How the needle gets from one stitch to another through worked stitches, so that no thread lies on the face.

It passes through a stitch and then steps over to one beside it: from a top to the top of a neighbour or into the
stitch above, from an underside to the underside of a neighbour or into the stitch below. Top and underside are
those of the piece as it hangs.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import cached_property
from heapq import heappop, heappush
from typing import NamedTuple

from .events import Pass, Section, stitch_places
from .piece import Piece, Row

STEP = 0.1        # what a step between two stitches costs, if a pass through a stitch costs 1
ON_EDGE = 3.0     # a step along the lower edge, where thread could be seen
OVER = 50.0       # a second step without a pass between: only where there is no other way


class Stop(NamedTuple):
    """One end of a stitch."""

    row: int        # number
    index: int
    top: bool


class Ways:
    """The ways through the body of one piece."""

    def __init__(self, piece: Piece) -> None:
        self.piece = piece

    @cached_property
    def _rows(self) -> dict[int, Row]:
        return {row.level: row for row in self.piece.rows}

    @cached_property
    def _indexes(self) -> dict[int, dict[int, int]]:
        """Stitch index by position, by level."""
        return {level: {stitch.at: index for index, stitch in enumerate(row.stitches)} for level, row in self._rows.items()}

    def passes(self, start: Stop, goal: Stop, section: Section, stepped: bool = False) -> list[Pass]:
        """The passes that lead from one end of a stitch to another, the last one through the goal's own stitch.

        `stepped`: the needle has come to the start from outside, and so may pass through its stitch at once. Raises
        ValueError where the two are not joined.
        """
        queue: list[tuple[float, Stop, bool]] = [(0.0, start, stepped)]
        best, before = {(start, stepped): 0.0}, {}
        while queue:
            cost, stop, has_stepped = heappop(queue)
            if (stop, has_stepped) == (goal, False) and cost:
                return self._told((stop, False), before, section)
            if cost > best[stop, has_stepped]:
                continue
            for further, then, price in self._moves(stop, has_stepped):
                if cost + price < best.get((further, then), float("inf")):
                    best[further, then] = cost + price
                    before[further, then] = (stop, has_stepped)
                    heappush(queue, (cost + price, further, then))
        raise ValueError(f"no way through the stitches from row {start.row} to row {goal.row}")

    def _moves(self, stop: Stop, stepped: bool) -> Iterator[tuple[Stop, bool, float]]:
        if stepped:
            yield stop._replace(top=not stop.top), False, 1.0
        for other, price in self._beside(stop):
            yield other, True, price + (OVER if stepped else 0.0)

    def _beside(self, stop: Stop) -> Iterator[tuple[Stop, float]]:
        row = self.piece.rows[stop.row - 1]
        at, step = row.stitches[stop.index].at, 1 if stop.top else -1
        beyond, touched = self._rows.get(row.level + step), self._indexes.get(row.level + step, {})
        for side in (-2, 2):
            index = self._indexes[row.level].get(at + side)
            if index is not None:
                hidden = stop.top or at + side // 2 in touched
                yield Stop(row.number, index, stop.top), STEP if hidden else ON_EDGE
        for side in (-1, 0, 1):
            if at + side in touched:
                yield Stop(beyond.number, touched[at + side], not stop.top), STEP

    def _told(self, state: tuple[Stop, bool], before: dict, section: Section) -> list[Pass]:
        passes = []
        while state in before:
            stop, stepped = state
            if not stepped:
                passes.append(passed(self.piece.rows[stop.row - 1], stop.index, not stop.top, section))
            state = before[state]
        return passes[::-1]


def passed(row: Row, index: int, down: bool, section: Section) -> Pass:
    """A pass through one stitch, downward or upward as the piece hangs."""
    up = down == (row.level < 0)   # up is away from the base row
    return Pass(section, stitch_places(row, index, up), up)
