"""Single beads of the body: what a message calls them, and where they stand in the file."""

from __future__ import annotations

from ..craft.piece import Piece
from ..craft.stitches import stitch_of
from ..findings import Mark
from .mirrors import Cell
from .subject import Subject


def bead_said(piece: Piece, cell: Cell) -> str:
    """A bead in words: "stitch 3 of row 2", in a stitch of several "the lower bead of stitch 3 of row 2"."""
    level, height, at = cell
    row = next(row for row in piece.drawn if row.level == level)
    stitch = next(number for number, stitch in enumerate(row.stitches, 1) if stitch.at == at)
    low, high, start = ("left", "right", "the left") if stitch_of(piece).LYING else ("lower", "upper", "below")
    bead = "" if piece.drop == 1 else f"the {high if height else low} bead of " if piece.drop == 2 else f"bead {height + 1} from {start} of "
    return f"{bead}stitch {stitch} of row {row.number}"


def bead_mark(subject: Subject, cell: Cell) -> Mark:
    """Its place in the chart."""
    level, height, at = cell
    number = next(row.number for row in subject.piece.drawn if row.level == level)
    line = subject.drawn_rows[number].lines[height if stitch_of(subject.piece).LYING else -1 - height]
    return next(bead.mark for bead in line if bead.at == at)
