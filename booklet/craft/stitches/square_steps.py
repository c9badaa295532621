"""The steps of a body in square stitch, with the piece's own numbers."""

from __future__ import annotations

from ..language import _, ngettext, sentences
from ..piece import Piece, Row
from ..plan import ThreadPlan
from ..saying import Step, at_edge, rows_said, sentence, unit_of
from .lying import end_reach, start_reach
from .lying_steps import start_side, strung, threaded


def reading_the_chart(piece: Piece) -> str:
    """Where to start on the chart and how to go on."""
    left = start_side(piece) == "left"
    return _("Start at the left end of row 1 and work row by row, back and forth, each bead straight above another.") if left else \
        _("Start at the right end of row 1 and work row by row, back and forth, each bead straight above another.")


def body_steps(piece: Piece, plan: ThreadPlan) -> list[Step | None]:
    """The steps of the body in working order; None for those that this piece does not need."""
    hung = [(row, piece.under(row)) for row in piece.rows[1:]]
    return [_strung(piece, plan), _start_in([row for row, under in hung if start_reach(row, under) < 0]), _along(piece),
            _end_in([row for row, under in hung if end_reach(row, under) < 0]), _end_out([row for row, under in hung if end_reach(row, under) > 0])]


def _strung(piece: Piece, plan: ThreadPlan) -> Step:
    count = len(piece.base.stitches)
    begin = ngettext("Begin {edge} of the chart and string the {count} {units} of row 1: {beads}.",
                     "Begin {edge} of the chart and string the {count} {units} of row 1: {beads}.",
                     count, edge=at_edge(start_side(piece)), units=unit_of(piece, count), beads=strung(piece))
    return Step("first-pick-up", _("Row 1"), sentences(
        threaded(plan), begin, _("The thread exits the last bead, {edge}.", edge=at_edge(piece.base.direction))))


def _along(piece: Piece) -> Step:
    return Step("row-stitches", _("Bead on bead"), _(
        "Work {rows} like this. Turn the work. Pick up a bead, pass back through the bead right below it and once more "
        "through the new one, so that both lie straight one above the other, side by side with their neighbours. Read every other row of the chart from the other end. "
        "The thread exits the last bead of the row, at the edge.", rows=rows_said(piece.rows[1:])))


def starts_said(rows: list[Row]) -> str:
    """Which rows a step is about."""
    return ngettext("This is how {rows} starts.", "This is how {rows} start.", len(rows), rows=rows_said(rows))


def _start_in(rows: list[Row]) -> Step | None:
    if not rows:
        return None
    return Step("row-start-in", _("Starting a row further in"), sentences(starts_said(rows), _(
        "Turn the work. The words say how many stitches are left free. Pass through the row before the last, "
        "below the stitches that are left free and the one after them, then out through that one in the last row. "
        "The thread exits it on the side of the edge, where the first bead of the new row is picked up.")))


def _end_in(rows: list[Row]) -> Step | None:
    if not rows:
        return None
    ends = ngettext("{rows} ends before the edge; the words say how many stitches are left free.",
                    "{rows} end before the edge; the words say how many stitches are left free.", len(rows), rows=sentence(rows_said(rows)))
    return Step("row-end-in", _("Ending a row further in"), sentences(ends, _("Nothing is added. The thread exits the last bead of the row.")))


def _end_out(rows: list[Row]) -> Step | None:
    if not rows:
        return None
    return Step("row-end-out", _("Ending a row further out"), _(
        "In {rows} string the last beads, as many as the words say, beyond the edge. They hang loose until the next row is sewn to "
        "them. The thread exits the last bead.", rows=rows_said(rows)))
