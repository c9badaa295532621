"""Where every bead of the finished piece lies, in millimetres.

x runs right from the left edge of the body; y runs up from the bottom of the lowest row, so fringe has negative y.
Bead holes are vertical: across a row beads take their diameter, along a stitch or strand their length.
"""

from __future__ import annotations

from dataclasses import dataclass

from .events import Place
from .hanger import carriers, pitch, top_row
from .piece import Hanger, Piece, Row


@dataclass(frozen=True)
class Spot:
    """Centre of a bead in mm, with its key."""

    x: float
    y: float
    key: str


@dataclass(frozen=True)
class Layout:
    """All spots of a piece."""

    pitch: float                  # mm from stitch to stitch of a row
    bottoms: dict[int, float]     # y of the lower edge of each row, by row number
    tops: dict[int, float]        # y of its upper edge
    spots: dict[Place, Spot]

    def x(self, at: float) -> float:
        """mm from the left edge of the body to chart position `at`, counted from the leftmost position."""
        return (at / 2 + 0.5) * self.pitch


def layout(piece: Piece) -> Layout:
    """Lay out body, fringe and hanger beads."""
    legend = piece.legend
    bottoms, tops = _row_edges(piece)
    result = Layout(pitch(piece), bottoms, tops, {})
    zero = min(row.first for row in piece.rows)
    for row in piece.rows:
        _place_row(piece, row, zero, result)
    for strand in piece.strands:
        base = piece.base.stitches[min(strand.number, len(piece.base.stitches)) - 1]
        y = bottoms[1]
        for index, key in enumerate(strand.all):
            length = legend[key].kind.length
            result.spots[Place("strand", strand.number, index)] = Spot(result.x(base.at - zero), y - length / 2, key)
            y -= length
    for number, hanger in enumerate(piece.hangers, 1):
        _place_loop(piece, number, hanger, zero, result)
    return result


def _row_edges(piece: Piece) -> tuple[dict[int, float], dict[int, float]]:
    bottoms, tops, y = {}, {}, 0.0
    for row in sorted(piece.rows, key=lambda row: row.level):
        bottoms[row.number] = y
        y += max(sum(piece.legend[key].kind.length for key in stitch.beads) for stitch in row.stitches)
        tops[row.number] = y
    return bottoms, tops


def _place_row(piece: Piece, row: Row, zero: int, result: Layout) -> None:
    for index, stitch in enumerate(row.stitches):
        upright = row.level >= 0
        y = result.bottoms[row.number] if upright else result.tops[row.number]
        for level, key in enumerate(stitch.beads):
            length = piece.legend[key].kind.length * (1 if upright else -1)
            result.spots[Place("row", row.number, index, level)] = Spot(result.x(stitch.at - zero), y + length / 2, key)
            y += length


def _place_loop(piece: Piece, number: int, hanger: Hanger, zero: int, result: Layout) -> None:
    """A loop's beads on a polygon line above the two stitches that carry it: up one side and down the other."""
    beads = hanger.beads
    top = top_row(piece)
    left, right = (result.x(top.stitches[i].at - zero) for i in carriers(piece, hanger))
    middle, y = (left + right) / 2, result.tops[top.number]
    for index, key in enumerate(beads):
        kind = piece.legend[key].kind
        rank = min(index, len(beads) - 1 - index)
        side = 0 if len(beads) % 2 and index == len(beads) // 2 else (-1 if index < len(beads) / 2 else 1)
        x = middle + side * max(kind.diameter / 2, (right - left) / 2)
        result.spots[Place("hanger", number, index)] = Spot(x, y + (rank + 0.5) * kind.length, key)
