"""The steps of a flat peyote body, with the piece's own numbers."""

from __future__ import annotations

from ..language import _, sentences
from ..piece import LEFT, Piece, opposite
from ..plan import ThreadPlan
from ..saying import Step, at_edge, bead_or_set, rows_said, sentence, towards
from .lying_steps import start_side, strung, threaded
from .peyote import turns_at_edge


def reading_the_chart(piece: Piece) -> str:
    """Where to start on the chart and how to go on."""
    first = _("Rows 1 and 2 are strung as one line from the left end, a {unit} of each in turn.", unit=bead_or_set(piece)) if start_side(piece) == LEFT else \
        _("Rows 1 and 2 are strung as one line from the right end, a {unit} of each in turn.", unit=bead_or_set(piece))
    return sentences(first, _("From row 3 on work back and forth, a {unit} into every gap of the row before.", unit=bead_or_set(piece)))


def body_steps(piece: Piece, plan: ThreadPlan) -> list[Step | None]:
    """The steps of the body in working order; None for those that this piece does not need."""
    return [_strung(piece, plan), _along(piece), _edge_turn(piece)]


def _strung(piece: Piece, plan: ThreadPlan) -> Step:
    unit, row = bead_or_set(piece), piece.rows
    count, odd = sum(len(one.stitches) for one in row[:2]), len(row[0].stitches) != len(row[1].stitches)
    belongs = _("The first and the last {unit} are of row 1, and every other one between them; the rest are row 2.", unit=unit) if odd else \
        _("The last {unit} is of row 1, the one before it of row 2, and so on back to the first.", unit=unit)
    return Step("first-pick-up", _("Rows 1 and 2"), sentences(
        threaded(plan),
        _("Begin {edge} of the chart and string the {count} {units} of rows 1 and 2 as one line: {beads}.",
          edge=at_edge(start_side(piece)), count=count, units=bead_or_set(piece, 2), beads=strung(piece)),
        belongs, _("The beads of a set stay side by side and are worked as one.") if piece.drop > 1 else "",
        _("The thread exits the last {unit}, {edge}.", unit=unit, edge=at_edge(piece.base.direction))))


def _along(piece: Piece) -> Step:
    return Step("row-stitches", _("Along a row"), _(
        "{rows} fill the gaps. Turn the work. Pick up a {unit}, skip the {unit} below it and pass through the next one, "
        "which stands half a bead higher; the new {unit} drops into the gap. Go on like this to the other edge. Row 3 is the fiddly one: "
        "hold the work flat and push its beads up and down into their places before you pull. "
        "The thread exits the {unit} at the edge, below the {unit} that you pick up next.",
        rows=sentence(rows_said(piece.rows[2:])), unit=bead_or_set(piece)))


def _edge_turn(piece: Piece) -> Step | None:
    rows = [row for row in piece.rows[2:] if turns_at_edge(row, piece.under(row))]
    if not rows:
        return None
    unit, side = bead_or_set(piece), rows[0].direction
    which = _("Row 3 ends {edge}, with nothing to pass into beyond the last {unit}.", edge=at_edge(side), unit=unit) if len(rows) == 1 else \
        _("Every other row from row 3 to row {row} ends {edge}, with nothing to pass into beyond the last {unit}.",
          row=rows[-1].number, edge=at_edge(side), unit=unit)
    return Step("edge-turn", _("The edge turn"), sentences(which, _(
        "Pick up the last {unit}, then pass back, {towards}, through the edge {unit} right below it. Pull until the new {unit} sits on it. "
        "The thread exits between the edge and the next {unit}: start the next row from there, without going through the edge again.",
        unit=unit, towards=towards(opposite(side)))))
