"""The steps of a body of loom work, with the piece's own numbers."""

from __future__ import annotations

from ..language import _, sentences
from ..layout import layout
from ..piece import LEFT, Piece, Row
from ..plan import TAIL, WARP_END, WEAVE_IN, ThreadPlan, thread_said
from ..saying import Step, at_edge, cm, m, rows_said
from ..words import row_words
from .lying import start_reach
from .lying_steps import start_side
from .loom import warps
from .square_steps import starts_said


def reading_the_chart(piece: Piece) -> str:
    """Where to start on the chart and how to go on."""
    return _("Start at the left end of row 1. The thread comes back after each row, so every row is read from the left.") if start_side(piece) == LEFT else \
        _("Start at the right end of row 1. The thread comes back after each row, so every row is read from the right.")


def body_steps(piece: Piece, plan: ThreadPlan) -> list[Step | None]:
    """The steps of the body in working order; None for those that this piece does not need."""
    hung = [(row, piece.under(row)) for row in piece.rows[1:]]
    return [_warps(piece, plan), _first(piece, plan), _start_in([row for row, under in hung if start_reach(row, under) < 0]),
            _start_out([row for row, under in hung if start_reach(row, under) > 0]), _along(piece), _off_the_loom()]


def _warps(piece: Piece, plan: ThreadPlan) -> Step:
    return Step("warps", _("Setting up the loom"), _(
        "Stretch {count} warps of {thread}, each {length} long, side by side, a bead's length apart: one more than the piece has beads "
        "across, with {end} beyond either end of the work. Set them firm and even. No thread exits yet: the working thread comes next.",
        count=warps(piece), thread=thread_said(plan.body), length=cm(max(layout(piece).tops.values()) + 2 * WARP_END), end=cm(WARP_END)))


def _first(piece: Piece, plan: ThreadPlan) -> Step:
    edge, words = at_edge(start_side(piece)), row_words(piece)[0]
    return Step("first-pick-up", _("Row 1"), _(
        "Thread a needle with {length} of {thread}. Knot it to the outer warp {edge}, leaving a tail of {tail}. "
        "Pick up the {count} of row 1: {beads}. Bring them under the warps and press them up from below, one into each space "
        "between two warps. Pass back through all of them above the warps. The thread exits the first bead, {edge}.",
        length=m(plan.length), thread=thread_said(plan.body), edge=edge, tail=cm(TAIL), count=words.count, beads=words.text))


def _start_in(rows: list[Row]) -> Step | None:
    if not rows:
        return None
    return Step("row-start-in", _("Starting a row further in"), sentences(starts_said(rows), _(
        "The words say how many beads are left free. Pass through that many beads of the row before, "
        "come out between two beads, and go round the warp there and under the others. The thread exits below the warps, where the row begins.")))


def _start_out(rows: list[Row]) -> Step | None:
    if not rows:
        return None
    return Step("row-start-out", _("Starting a row further out"), sentences(starts_said(rows), _(
        "Bring the thread under as many free warps as the words say, outward, so that the new beads hide it. "
        "The thread exits below the warps, where the row begins.")))


def _along(piece: Piece) -> Step | None:
    rows = piece.rows[1:]
    if not rows:
        return None
    side = _("each from the left") if start_side(piece) == LEFT else _("each from the right")
    return Step("row-stitches", _("Row by row"), _(
        "Work {rows} in the same way, {side}: all beads on the needle, under the warps, up into the spaces, and back "
        "through all of them above the warps. Check that no warp was pierced and that every warp lies below the thread. Press each row against the row before it. "
        "The thread exits the first bead of the row, {edge}.", rows=rows_said(rows), side=side, edge=at_edge(start_side(piece))))


def _off_the_loom() -> Step:
    return Step("off-the-loom", _("Off the loom"), _(
        "Weave the working thread back through the last rows for {length} or so, or keep it for the hanger. Cut the warps at the loom and finish them one by one: "
        "thread the end, pass round the outermost row, and weave it in through three rows or more beside its own way, turning once. Trim close to a bead. "
        "No warp exits when all are woven in; the working thread exits where it was.", length=cm(WEAVE_IN)))
