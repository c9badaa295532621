"""Where beads stand in a step picture: as in the piece, but apart, so that the thread between them can be seen.

Points are drawn mm, x to the right and y down. A vector of length one is a direction.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from itertools import groupby
from math import cos, hypot, pi, sin

from msgspec import Struct

from ...craft import drape
from ...craft.events import Place
from ...craft.hanger import carriers, top_row
from ...craft.layout import layout, place_at
from ...craft.piece import Hanger, Piece
from ...craft.strand import LOOP, TWIST, Strand, laid
from ..picture import Point
from ..strands import end_offsets

PITCH = 5.4        # from stitch to stitch
SHARE = 0.7        # of the pitch that a bead takes
ROW_GAP = 4.0      # between two rows
COLUMN_GAP = 1.9   # between two stitches whose beads lie along the row
LYING_STRETCH = 1.45   # of such rows, so that they stand apart
FRINGE_GAP = 2.2   # between the body and a strand
END_GAP = 0.75     # round end beads
FOLD = 6           # beads of a strand above which its middle is left out
KEPT = 2           # beads kept at either end of it
FOLD_GAP = 3.0     # what stands for the beads left out
UP, DOWN, RIGHTWARD = (0.0, -1.0), (0.0, 1.0), (1.0, 0.0)


class Cell(Struct, frozen=True):
    """One bead: its middle, the direction of its hole (up for a Pass that goes up), and its size across and along the hole."""

    key: str
    x: float
    y: float
    axis: Point
    wide: float
    long: float

    @property
    def centre(self) -> Point:
        return self.x, self.y

    @property
    def half(self) -> Point:
        """How far it reaches from its middle, across and down."""
        upright = abs(self.axis[1])
        return ((self.long * abs(self.axis[0]) + self.wide * upright) / 2, (self.long * upright + self.wide * abs(self.axis[0])) / 2)


class Opened:
    """The cells of a piece, by place. Beads left out of long strands have none."""

    def __init__(self, piece: Piece) -> None:
        self.piece, self.plan = piece, layout(piece)
        self.scale = SHARE * PITCH / self.plan.pitch    # of beads
        self._zero = min(row.first for row in piece.rows)
        levels = sorted({row.level for row in piece.rows})
        columns = sorted({stitch.at for row in piece.rows for stitch in row.stitches})
        self._ranks = {row.number: levels.index(row.level) for row in piece.rows}
        self._columns = {at: column for column, at in enumerate(columns)}
        self.cells: dict[Place, Cell] = {}
        self.folds: dict[Place, tuple[Point, Point]] = {}   # where the middle of a strand is left out, by the first bead left out
        self.stitches: dict[tuple, list[Cell]] = {}   # of the body, by the first three fields of their places
        self._rows()
        for strand in piece.strands:
            self._strand(strand)
        for number, hanger in enumerate(piece.hangers, 1):
            self._loop(number, hanger)

    def x(self, at: int) -> float:
        """Drawn x of a chart position."""
        x = self.plan.x(at - self._zero)
        return x * self.scale + self._columns[at] * COLUMN_GAP if self.plan.lying else x * PITCH / self.plan.pitch

    def y(self, row: int, mm: float) -> float:
        """Drawn y of a height in the piece that belongs to a row."""
        return -mm * self.scale * LYING_STRETCH if self.plan.lying else -mm * self.scale - self._ranks[row] * ROW_GAP

    def _cell(self, key: str, x: float, y: float, axis: Point) -> Cell:
        kind = self.piece.legend[key].kind
        return Cell(key, x, y, axis, kind.diameter * self.scale, 0.94 * kind.length * self.scale)

    def _rows(self) -> None:
        levels = {row.number: row.level for row in self.piece.rows}
        centres = {round(self.plan.x(at - self._zero), 6): at for at in self._columns}
        for place, spot in self.plan.spots.items():
            if place.part != "row":
                continue
            axis = RIGHTWARD if self.plan.lying else UP if levels[place.line] >= 0 else DOWN
            middle = min(centres, key=lambda centre: abs(centre - spot.x)) if self.plan.lying else round(spot.x, 6)
            x = self.x(centres[middle]) + (spot.x - middle) * self.scale
            self.cells[place] = self._cell(spot.key, x, self.y(place.line, spot.y), axis)
            self.stitches.setdefault(place[:3], []).append(self.cells[place])

    def _strand(self, strand: Strand) -> None:
        ends = [place_at(self.piece, number) for number in (strand.number, strand.number + strand.to)]
        start, stop = ((self.x(place.at), self.y(place.row.number, self.plan.bottoms[place.row.number]) + FRINGE_GAP) for place in ends)
        if strand.kind == LOOP:
            beads = drape.loop(start, stop, self._lengths(strand.beads), self.scale)
            self._hang(strand, range(len(beads)), [(bead.x, bead.y) for bead in beads], [_upward(bead.angle) for bead in beads])
        elif strand.kind == TWIST:
            self._twist(strand, start)
        else:
            self._straight(strand, *start)

    def _hang(self, strand: Strand, indexes: Iterable[int], points: Iterable[Point], axes: Iterable[Point]) -> None:
        for index, point, axis in zip(indexes, points, axes):
            self.cells[Place("strand", strand.number, index)] = self._cell(strand.all[index], *point, axis)

    def _lengths(self, keys: Iterable[str]) -> list[float]:
        return [self.piece.legend[key].kind.length * self.scale for key in keys]

    def _straight(self, strand: Strand, x: float, y: float) -> None:
        """Down, the middle left out if it is long; twigs to its sides, end beads as they will sit."""
        own, *twigs = laid(strand)
        left_out, joints = _left_out(strand), {}
        for index, length in enumerate(self._lengths(strand.beads)):
            joints[index] = y
            if index not in left_out:
                self._hang(strand, [own.beads[index]], [(x, y + length / 2)], [UP])
                y += length
            elif index - 1 not in left_out:
                self.folds[Place("strand", strand.number, own.beads[index])] = (x, y), (x, y + FOLD_GAP)
                y += FOLD_GAP
        joints[len(strand.beads)] = y
        self._end(strand, own.end, (x, y))
        for number, twig in enumerate(twigs):
            indexes = (*twig.beads, *twig.end)
            beads = drape.twig((x, joints[twig.line.at]), drape.twig_side(number), self._lengths(strand.all[i] for i in indexes), 0.5 * SHARE * PITCH)
            self._hang(strand, indexes, [(bead.x, bead.y) for bead in beads], [_upward(bead.angle) for bead in beads])

    def _end(self, strand: Strand, indexes: Sequence[int], foot: Point) -> None:
        kinds = [self.piece.legend[strand.all[index]].kind for index in indexes]
        points = [(foot[0] + dx, foot[1] + dy) for dx, dy in end_offsets(kinds, END_GAP, self.scale)]
        self._hang(strand, indexes, points, _turning(foot, points))

    def _twist(self, strand: Strand, start: Point) -> None:
        """Two lines that wind round each other, and the end beads under both."""
        foot, end = len(strand.beads), len(strand.beads) + len(strand.end)
        half = SHARE * PITCH / 2
        lines = [drape.twist(start, self._lengths(keys), half, first, self.scale) for keys, first in ((strand.beads, True), (strand.second, False))]
        up = range(len(strand.all) - 1, end - 1, -1)
        for indexes, beads in zip((range(foot), up), lines):
            self._hang(strand, indexes, [(bead.x, bead.y) for bead in beads], [_upward(bead.angle) for bead in beads])
        low = max([bead.y for line in lines for bead in line], default=start[1]) + half
        self._end(strand, range(foot, end), (start[0], low))

    def _loop(self, number: int, hanger: Hanger) -> None:
        """A loop's beads on a circle above the stitches that carry it, from the left one over the top."""
        left, right, y = self.carried(hanger)
        lengths = [self.piece.legend[key].kind.length * self.scale + 0.3 for key in hanger.beads]
        around, done = sum(lengths) + max(right - left, 2.0), 0.0
        radius = around / (2 * pi)
        opening = pi * max(right - left, 2.0) / around
        centre = ((left + right) / 2, y - ROW_GAP - radius * cos(opening))
        for index, (key, length) in enumerate(zip(hanger.beads, lengths)):
            turn = opening + (done + length / 2) / radius     # clockwise from straight down
            done += length
            point = (centre[0] - radius * sin(turn), centre[1] + radius * cos(turn))
            self.cells[Place("hanger", number, index)] = self._cell(key, *point, (-cos(turn), -sin(turn)))

    def carried(self, hanger: Hanger) -> tuple[float, float, float]:
        """x of the two stitches that carry a hanger, and y of the upper edge of their row."""
        top = top_row(self.piece, hanger.at)
        left, right = (self.x(top.stitches[index].at) for index in carriers(self.piece, hanger))
        return left, right, self.y(top.number, self.plan.tops[top.number])


def _left_out(strand: Strand) -> set[int]:
    """Beads of a long line that the picture leaves out: far from both ends, and from twigs and charms."""
    count, found = len(strand.beads), set()
    if count <= FOLD:
        return found
    marks = [0, count, *(thing.at for thing in strand.hung)]
    far = [index for index in range(count) if all(not mark - KEPT <= index < mark + KEPT for mark in marks)]
    for run in _runs(far):
        found |= set(run) if len(run) > 1 else set()
    return found


def _runs(numbers: Iterable[int]) -> Iterator[list[int]]:
    for _, same in groupby(enumerate(numbers), lambda pair: pair[1] - pair[0]):
        yield [number for _, number in same]


def _upward(angle: float) -> Point:
    """The direction of a hole turned clockwise from upright."""
    return sin(angle), -cos(angle)


def _turning(foot: Point, places: list[Point]) -> list[Point]:
    """Directions against which the thread runs through end beads; up through a single one."""
    if len(places) < 2:
        return [UP] * len(places)
    line = [foot, *places, foot]
    return [unit(before[0] - after[0], before[1] - after[1]) for before, after in zip(line, line[2:])]


def unit(x: float, y: float) -> Point:
    """The direction of a vector; down for none."""
    length = hypot(x, y)
    return (x / length, y / length) if length else (0.0, 1.0)
