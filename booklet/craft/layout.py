"""Where every bead of the finished piece lies, in millimetres.

x runs right from the left edge of the body; y runs up from the bottom of the lowest row, so fringe has negative y.
Where beads stand, holes are vertical: across a row beads take their diameter, along a stitch or strand their length.
Where they lie along the row it is the other way round.
"""

from __future__ import annotations

from functools import cached_property

from msgspec import Struct

from .events import Place, stitch_places, strand_places
from .hanger import across, carriers, cell, top_row
from .kept import kept
from .piece import Hanger, Piece, Row
from .places import HangingPlace, places
from .stitches import stitch_of
from .strand import LOOP, STRAIGHT, TWIST, Strand, laid, middles


class Spot(Struct, frozen=True):
    """Centre of a bead in mm, with its key."""

    x: float
    y: float
    key: str


class Layout(Struct, frozen=True, dict=True):
    """All spots of a piece."""

    pitch: float                  # mm across the widest bead of the body
    bottoms: dict[int, float]     # y of the lower edge of each row, by row number
    tops: dict[int, float]        # y of its upper edge
    spots: dict[Place, Spot]
    cell: float                   # mm that a stitch takes across
    share: float = 0.5            # of it from one position to the next: neighbours are two positions apart
    lying: bool = False           # beads lie along the row

    def x(self, at: float) -> float:
        """mm from the left edge of the body to chart position `at`, counted from the leftmost position."""
        return (at * self.share + 0.5) * self.cell

    @cached_property
    def middles(self) -> dict[Place, tuple[float, float]]:
        """The middle of every bead."""
        return {place: (spot.x, spot.y) for place, spot in self.spots.items()}

    @property
    def reach(self) -> float:
        """Positions from the middle of a stitch to its edge."""
        return 0.5 / self.share

    @property
    def interlocked(self) -> bool:
        """Whether a row lies half a bead deep in the row under it."""
        return self.share == 1


@kept
def layout(piece: Piece) -> Layout:
    """Lay out body, fringe and hanger beads."""
    stitch = stitch_of(piece)
    bottoms, tops = row_edges(piece)
    result = Layout(across(piece), bottoms, tops, {}, cell(piece), 1.0 if stitch.INTERLOCKED else 0.5, stitch.LYING)
    zero = min(row.first for row in piece.rows)
    for row in piece.rows:
        _place_row(piece, row, zero, result)
    for strand in piece.strands:
        _place_strand(piece, strand, zero, result)
    for number, hanger in enumerate(piece.hangers, 1):
        _place_loop(piece, number, hanger, zero, result)
    return result


def row_edges(piece: Piece) -> tuple[dict[int, float], dict[int, float]]:
    """y of the lower and the upper edge of each row, by row number."""
    bottoms, tops, y, interlocked, pitch = {}, {}, 0.0, stitch_of(piece).INTERLOCKED, across(piece)
    for row in piece.drawn:
        bottoms[row.number] = y
        tops[row.number] = y + (pitch if interlocked else row_height(piece, row))
        y = y + pitch / 2 if interlocked else tops[row.number]
    return bottoms, tops


def row_height(piece: Piece, row: Row) -> float:
    """mm from the lower to the upper edge of a row."""
    kinds = [[piece.legend[key].kind for key in stitch.beads] for stitch in row.stitches]
    if stitch_of(piece).LYING:
        return max(kind.diameter for each in kinds for kind in each)
    return max(sum(kind.length for kind in each) for each in kinds)


def _place_row(piece: Piece, row: Row, zero: int, result: Layout) -> None:
    foot, up = (result.bottoms[row.number], 1) if row.level >= 0 else (result.tops[row.number], -1)
    for index, stitch in enumerate(row.stitches):
        x, y = result.x(stitch.at - zero), foot
        if result.lying:
            _place_lying(piece, row, index, x, result)
            continue
        for place, key in zip(stitch_places(row, index, True), stitch.beads):
            length = piece.legend[key].kind.length * up
            result.spots[place] = Spot(x, y + length / 2, key)
            y += length


def _place_strand(piece: Piece, strand: Strand, zero: int, result: Layout) -> None:
    ends = [place_at(piece, number) for number in (strand.number, strand.number + strand.to)]
    start, stop = ((result.x(place.at - zero), result.bottoms[place.row.number]) for place in ends)
    draped = _draped(piece, strand, (start[0], -start[1]), (stop[0], -stop[1]))
    for place, key, (x, down) in zip(strand_places(strand.number, len(strand.all)), strand.all, draped):
        result.spots[place] = Spot(x, -down, key)


def place_at(piece: Piece, number: int) -> HangingPlace:
    """A place of the fringe by its number; the nearest one where there is none of that number."""
    hanging = places(piece)
    return hanging[min(max(number, 1), len(hanging)) - 1]


def _draped(piece: Piece, strand: Strand, start: tuple[float, float], stop: tuple[float, float]) -> list[tuple[float, float]]:
    """Middle of every bead in the order of picking up, y down."""
    kinds = [piece.legend[key].kind for key in strand.all]
    lengths = [kind.length for kind in kinds]
    if strand.kind == STRAIGHT and not strand.twigs:
        return [(start[0], start[1] + middle) for middle in middles(lengths)]
    from . import drape   # loaded here, because most strands hang straight

    if strand.kind == LOOP:
        return [(bead.x, bead.y) for bead in drape.loop(start, stop, lengths)]
    if strand.kind == TWIST:
        foot, half = len(strand.beads), max(kind.diameter for kind in kinds) / 2
        down = drape.twist(start, lengths[:foot], half, True)
        up = drape.twist(start, lengths[foot + len(strand.end):][::-1], half, False)[::-1]
        low = start[1] + max(sum(lengths[:foot]), sum(lengths[foot + len(strand.end):])) * drape.TAKE_UP
        return [*((bead.x, bead.y) for bead in down), *((start[0], low + middle) for middle in middles(lengths[foot:foot + len(strand.end)])),
                *((bead.x, bead.y) for bead in up)]
    found: dict[int, tuple[float, float]] = {}
    own, *twigs = laid(strand)
    for index, middle in zip((*own.beads, *own.end), middles([lengths[i] for i in (*own.beads, *own.end)])):
        found[index] = (start[0], start[1] + middle)
    for number, twig in enumerate(twigs):
        indexes = (*twig.beads, *twig.end)
        joint = (start[0], start[1] + sum(lengths[i] for i in own.beads[:twig.line.at]))
        beads = drape.twig(joint, drape.twig_side(number), [lengths[i] for i in indexes], kinds[own.beads[twig.line.at - 1]].diameter / 2 if own.beads else 0.0)
        found |= {index: (bead.x, bead.y) for index, bead in zip(indexes, beads)}
    return [found[index] for index in range(len(kinds))]


def _place_lying(piece: Piece, row: Row, index: int, x: float, result: Layout) -> None:
    """The beads of one stitch side by side, centred on x."""
    keys, y = row.stitches[index].beads, (result.bottoms[row.number] + result.tops[row.number]) / 2
    lengths = [piece.legend[key].kind.length for key in keys]
    x -= sum(lengths) / 2
    for place, key, length in zip(stitch_places(row, index, True), keys, lengths):
        result.spots[place] = Spot(x + length / 2, y, key)
        x += length


def _place_loop(piece: Piece, number: int, hanger: Hanger, zero: int, result: Layout) -> None:
    """A loop's beads on a polygon line above the two stitches that carry it: up one side and down the other."""
    beads = hanger.beads
    top = top_row(piece, hanger.at)
    left, right = (result.x(top.stitches[i].at - zero) for i in carriers(piece, hanger))
    middle, y = (left + right) / 2, result.tops[top.number]
    for index, key in enumerate(beads):
        kind = piece.legend[key].kind
        rank = min(index, len(beads) - 1 - index)
        side = 0 if len(beads) % 2 and index == len(beads) // 2 else (-1 if index < len(beads) / 2 else 1)
        x = middle + side * max(kind.diameter / 2, (right - left) / 2)
        result.spots[Place("hanger", number, index)] = Spot(x, y + (rank + 0.5) * kind.length, key)
