"""The way of the needle through stitches that are already worked, so that no thread shows.

The needle goes from an end of one stitch only to an end that touches it: to the neighbour in the same row, or to a stitch of the
row above or below that stands half a stitch to the side. Where it has to turn back it catches a thread bridge.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from heapq import heappop, heappush
from itertools import count

from msgspec import Struct

from .events import Event, Pass, Section, bridge, through
from .kept import kept
from .piece import Piece, Row, nearer_base

# Passes fill holes, turns are fiddly; a turn at the edge is the last resort.
PASS, TURN_AT_FOOT, TURN_AT_TOP, ROUND_THE_EDGE = 2, 3, 4, 6
ON_EDGE = 6   # more for a step along the lower edge, where thread could be seen


class Spot(Struct, frozen=True):
    """The needle has come out of one end of a stitch: the top is the end away from the base row."""

    row: Row
    index: int   # in this part of the row, from the left
    top: bool

    @property
    def stitch(self) -> tuple[int, int, bool]:
        return self.row.level, self.at, self.top

    @property
    def at(self) -> int:
        """Position in half stitches."""
        return self.row.stitches[self.index].at

    @property
    def lower_end(self) -> bool:
        """Whether this end is the lower one as the piece hangs."""
        return self.top == (self.row.level < 0)


def hanging(row: Row, index: int, lower_end: bool) -> Spot:
    """The lower or the upper end of a stitch as the piece hangs."""
    return Spot(row, index, lower_end == (row.level < 0))


def passed(section: Section, spot: Spot) -> Pass:
    """The pass through a stitch that comes out there."""
    return through(section, spot.row, spot.index, spot.top)


Move = tuple[int, Spot, tuple[tuple, ...]]   # cost, where the needle comes out, and what it does as arguments of events


class Worked:
    """The stitches worked so far, by place."""

    def __init__(self, rows: Sequence[Row]) -> None:
        self._at = {(row.level, stitch.at): (row, index) for row in rows for index, stitch in enumerate(row.stitches)}

    def way(self, section: Section, start: Spot, goal: Spot) -> list[Event]:
        """The easiest way from `start` to `goal`, with the fewest moves among equals. Raises ValueError if nothing joins the two.

        Ways are tried in the order of what they cost so far and must still cost at the least (A*), so that few lead astray.
        """
        newest_first, best = count(0, -1), {start.stitch: (0, 0)}
        waiting: list[tuple] = [(0, 0, next(newest_first), 0, 0, start, ())]
        while waiting:
            *_, cost, moved, here, done = heappop(waiting)
            if here.stitch == goal.stitch:
                return _events(section, done)
            for more, spot, moves in self._moves(here):
                reached, name = (cost + more, moved + len(moves)), spot.stitch
                if name not in best or reached < best[name]:
                    best[name], left = reached, _least_passes(spot, goal)
                    heappush(waiting, (reached[0] + left * PASS, reached[1] + left, next(newest_first), *reached, spot, (done, moves)))
        raise ValueError(f"no way from row {start.row.name} to row {goal.row.name}")

    def _moves(self, here: Spot) -> Iterator[Move]:
        yield from self._along(here)
        yield from self._on(here)
        yield from self._turns(here)

    def _along(self, here: Spot) -> Iterator[Move]:
        """Into the neighbour from the same side."""
        for index in (here.index - 1, here.index + 1):
            if 0 <= index < len(here.row.stitches):
                cost = PASS if self._is_covered(here, index) else PASS + ON_EDGE
                yield cost, Spot(here.row, index, not here.top), ((through, here.row, index, not here.top),)

    def _is_covered(self, here: Spot, index: int) -> bool:
        """Whether a step to the neighbour is hidden between two rows, or on the upper edge, where thread bridges are."""
        between = (here.at + here.row.stitches[index].at) // 2
        return not here.lower_end or (here.row.level - 1, between) in self._at

    def _on(self, here: Spot) -> Iterator[Move]:
        """Straight on into the next row on this side."""
        level = here.row.level
        if level == 0:
            beyond = 1 if here.top else -1
        else:
            beyond = level + (1 if level > 0 else -1) if here.top else nearer_base(level)
        # Upward is away from the base row; from below the base the needle comes up through it as the piece hangs.
        up = here.top or level == 0 or (level < 0 and beyond == 0)
        for row, index in self._beside(beyond, here):
            yield PASS, Spot(row, index, up), ((through, row, index, up),)

    def _turns(self, here: Spot) -> Iterator[Move]:
        row, index = here.row, here.index
        beside = max(0, min(index, len(row.stitches) - 2))
        back = (through, row, index, not here.top)
        if here.top and len(row.stitches) > 1:
            yield PASS + TURN_AT_TOP, Spot(row, index, False), ((bridge, row, beside), back)
        elif here.top and row.level:
            for under, at in self._beside(nearer_base(row.level), here):
                up = under.level == 0 and row.level < 0
                yield PASS + ROUND_THE_EDGE, Spot(under, at, up), ((through, under, at, up),)
        elif not here.top:
            carried = list(self._beside(nearer_base(row.level), here)) if row.level else []
            if len(carried) == 2:
                yield PASS + TURN_AT_FOOT, Spot(row, index, True), ((bridge, carried[0][0], carried[0][1], _foot_of(row)), back)
            elif len(row.stitches) > 1:
                yield PASS + TURN_AT_FOOT, Spot(row, index, True), ((bridge, row, beside, True), back)

    def _beside(self, level: int, here: Spot) -> Iterator[tuple[Row, int]]:
        """The stitches of a level half a stitch to the left and right."""
        return (self._at[level, near] for near in (here.at - 1, here.at + 1) if (level, near) in self._at)


@kept
def all_worked(piece: Piece) -> Worked:
    """Every stitch of the body."""
    return Worked(piece.rows)


def _least_passes(here: Spot, goal: Spot) -> int:
    """Passes that a way takes at the least: each leads to the next row and half a stitch aside, or a whole stitch along the row."""
    rows, halves = abs(here.row.level - goal.row.level), abs(here.at - goal.at)
    return rows + max(0, halves - rows + 1) // 2


def _foot_of(row: Row) -> bool:
    """Whether a row hangs on the lower side of the row under it: the first row below the base does."""
    return row.level == -1


def _events(section: Section, done: tuple) -> list[Event]:
    parts = []
    while done:
        done, moves = done
        parts.append(moves)
    return [make(section, *arguments) for moves in reversed(parts) for make, *arguments in moves]
