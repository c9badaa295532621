"""The steps of a flat peyote body, with the piece's own numbers."""

from __future__ import annotations

from ..piece import Piece, opposite
from ..plan import ThreadPlan
from ..saying import Step, rows_said, sentence
from ..words import row_words
from .lying_steps import start_side, threaded
from .peyote import turns_at_edge


def reading_the_chart(piece: Piece) -> str:
    """Where to start on the chart and how to go on."""
    return (f"Rows 1 and 2 are strung as one line from the {start_side(piece)} end, a {_unit(piece)} of each in turn. From row 3 on work back and forth, "
            f"a {_unit(piece)} into every gap of the row before.")


def _unit(piece: Piece) -> str:
    return "bead" if piece.drop == 1 else "set"


def body_steps(piece: Piece, plan: ThreadPlan) -> list[Step | None]:
    """The steps of the body in working order; None for those that this piece does not need."""
    return [_strung(piece, plan), _along(piece), _edge_turn(piece)]


def _strung(piece: Piece, plan: ThreadPlan) -> Step:
    unit, words, row = _unit(piece), row_words(piece)[0], piece.rows
    odd = len(row[0].stitches) != len(row[1].stitches)
    belongs = (f"The first and the last {unit} are of row 1, and every other one between them; the rest are row 2." if odd
               else f"The last {unit} is of row 1, the one before it of row 2, and so on back to the first.")
    order = "" if piece.drop == 1 else " The beads of a set stay side by side and are worked as one."
    return Step("first-pick-up", "Rows 1 and 2",
                f"{threaded(plan)} Begin at the {start_side(piece)} edge of the chart and string the {words.stitches} {_unit(piece)}s of rows 1 and 2 "
                f"as one line: {words.text.removeprefix('string ')}. {belongs}{order} "
                f"The thread exits the last {unit}, at the {piece.base.direction} edge.")


def _along(piece: Piece) -> Step:
    unit, rows = _unit(piece), piece.rows[2:]
    return Step("row-stitches", "Along a row",
                f"{sentence(rows_said(rows))} fill the gaps. Turn the work. Pick up a {unit}, skip the {unit} below it and pass through the next one, "
                f"which stands half a bead higher; the new {unit} drops into the gap. Go on like this to the other edge. Row 3 is the fiddly one: "
                f"hold the work flat and push its beads up and down into their places before you pull. "
                f"The thread exits the {unit} at the edge, below the {unit} that you pick up next.")


def _edge_turn(piece: Piece) -> Step | None:
    rows = [row for row in piece.rows[2:] if turns_at_edge(row, piece.under(row))]
    if not rows:
        return None
    unit, side = _unit(piece), rows[0].direction
    which = "Row 3 ends" if len(rows) == 1 else f"Every other row from row 3 to row {rows[-1].number} ends"
    return Step("edge-turn", "The edge turn",
                f"{which} at the {side} edge, with nothing to pass into beyond the last {unit}. Pick up the last {unit}, then pass back, towards "
                f"the {opposite(side)}, through the edge {unit} right below it. Pull until the new {unit} sits on it. The thread exits between "
                f"the edge and the next {unit}: start the next row from there, without going through the edge again.")
