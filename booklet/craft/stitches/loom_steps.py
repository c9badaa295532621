"""The steps of a body of loom work, with the piece's own numbers."""

from __future__ import annotations

from ..layout import layout
from ..piece import Piece, Row
from ..plan import TAIL, WARP_END, WEAVE_IN, ThreadPlan
from ..saying import Step, cm, m, rows_said
from ..words import row_words
from .lying import start_reach
from .lying_steps import start_side
from .loom import warps


def reading_the_chart(piece: Piece) -> str:
    """Where to start on the chart and how to go on."""
    return f"Start at the {start_side(piece)} end of row 1. The thread comes back after each row, so every row is read from the {start_side(piece)}."


def body_steps(piece: Piece, plan: ThreadPlan) -> list[Step | None]:
    """The steps of the body in working order; None for those that this piece does not need."""
    hung = [(row, piece.under(row)) for row in piece.rows[1:]]
    return [_warps(piece, plan), _first(piece, plan), _start_in(piece, [row for row, under in hung if start_reach(row, under) < 0]),
            _start_out(piece, [row for row, under in hung if start_reach(row, under) > 0]), _along(piece), _off_the_loom()]


def _warps(piece: Piece, plan: ThreadPlan) -> Step:
    count, height = warps(piece), max(layout(piece).tops.values())
    return Step("warps", "Setting up the loom",
                f"Stretch {count} warps of {plan.body}, each {cm(height + 2 * WARP_END)} long, side by side, a bead's length apart: one more than the piece has beads "
                f"across, with {cm(WARP_END)} beyond either end of the work. Set them firm and even. No thread exits yet: the working thread comes next.")


def _first(piece: Piece, plan: ThreadPlan) -> Step:
    side, words = start_side(piece), row_words(piece)[0]
    return Step("first-pick-up", "Row 1",
                f"Thread a needle with {m(plan.length)} of {plan.body}. Knot it to the outer warp at the {side} edge, leaving a tail of {cm(TAIL)}. "
                f"Pick up the {words.count} of row 1: {words.text}. Bring them under the warps and press them up from below, one into each space "
                f"between two warps. Pass back through all of them above the warps. "
                f"The thread exits the first bead, at the {side} edge.")


def _start_in(piece: Piece, rows: list[Row]) -> Step | None:
    if not rows:
        return None
    return Step("row-start-in", "Starting a row further in",
                f"This is how {rows_said(rows)} start{'s' * (len(rows) == 1)}. The words say how many beads are left free. Pass through that many beads of the row before, "
                "come out between two beads, and go round the warp there and under the others. The thread exits below the warps, where the row begins.")


def _start_out(piece: Piece, rows: list[Row]) -> Step | None:
    if not rows:
        return None
    return Step("row-start-out", "Starting a row further out",
                f"This is how {rows_said(rows)} start{'s' * (len(rows) == 1)}. Bring the thread under as many free warps as the words say, outward, so that the new beads hide it. "
                "The thread exits below the warps, where the row begins.")


def _along(piece: Piece) -> Step | None:
    rows = piece.rows[1:]
    if not rows:
        return None
    return Step("row-stitches", "Row by row",
                f"Work {rows_said(rows)} in the same way, each from the {start_side(piece)}: all beads on the needle, under the warps, up into the spaces, and back "
                "through all of them above the warps. Check that no warp was pierced and that every warp lies below the thread. Press each row against the row before it. "
                f"The thread exits the first bead of the row, at the {start_side(piece)} edge.")


def _off_the_loom() -> Step:
    return Step("off-the-loom", "Off the loom",
                f"Weave the working thread back through the last rows for {cm(WEAVE_IN)} or so, or keep it for the hanger. Cut the warps at the loom and finish them one by one: thread the end, pass round the "
                f"outermost row, and weave it in through three rows or more beside its own way, turning once. Trim close to a bead. "
                "No warp exits when all are woven in; the working thread exits where it was.")
