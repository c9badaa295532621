"""The steps of a body in square stitch, with the piece's own numbers."""

from __future__ import annotations

from ..piece import Piece, Row
from ..plan import ThreadPlan
from ..saying import Step, rows_said, sentence, unit_of
from ..words import row_words
from .lying import end_reach, start_reach
from .lying_steps import start_side, threaded


def reading_the_chart(piece: Piece) -> str:
    """Where to start on the chart and how to go on."""
    return f"Start at the {start_side(piece)} end of row 1 and work row by row, back and forth, each bead straight above another."


def body_steps(piece: Piece, plan: ThreadPlan) -> list[Step | None]:
    """The steps of the body in working order; None for those that this piece does not need."""
    hung = [(row, piece.under(row)) for row in piece.rows[1:]]
    return [_strung(piece, plan), _start_in([row for row, under in hung if start_reach(row, under) < 0]), _along(piece),
            _end_in([row for row, under in hung if end_reach(row, under) < 0]), _end_out([row for row, under in hung if end_reach(row, under) > 0])]


def _strung(piece: Piece, plan: ThreadPlan) -> Step:
    words = row_words(piece)[0]
    return Step("first-pick-up", "Row 1",
                f"{threaded(plan)} Begin at the {start_side(piece)} edge of the chart and string the {words.stitches} {unit_of(piece, words.stitches)} of row 1: "
                f"{words.text.removeprefix('string ')}. The thread exits the last bead, at the {piece.base.direction} edge.")


def _along(piece: Piece) -> Step:
    return Step("row-stitches", "Bead on bead",
                f"Work {rows_said(piece.rows[1:])} like this. Turn the work. Pick up a bead, pass back through the bead right below it and once more "
                "through the new one, so that both lie straight one above the other, side by side with their neighbours. Read every other row of the chart from the other end. "
                "The thread exits the last bead of the row, at the edge.")


def _start_in(rows: list[Row]) -> Step | None:
    if not rows:
        return None
    return Step("row-start-in", "Starting a row further in",
                f"This is how {rows_said(rows)} start{'s' * (len(rows) == 1)}. Turn the work. The words say how many stitches are left free. Pass through the row before the last, "
                "below the stitches that are left free and the one after them, then out through that one in the last row. "
                "The thread exits it on the side of the edge, where the first bead of the new row is picked up.")


def _end_in(rows: list[Row]) -> Step | None:
    if not rows:
        return None
    return Step("row-end-in", "Ending a row further in",
                f"{sentence(rows_said(rows))} end{'s' * (len(rows) == 1)} before the edge; the words say how many stitches are left free. Nothing is added. "
                "The thread exits the last bead of the row.")


def _end_out(rows: list[Row]) -> Step | None:
    if not rows:
        return None
    return Step("row-end-out", "Ending a row further out",
                f"In {rows_said(rows)} string the last beads, as many as the words say, beyond the edge. They hang loose until the next row is sewn to "
                "them. The thread exits the last bead.")
