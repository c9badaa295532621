"""The numbered steps of a piece, written from the needle's path, with this piece's own numbers.

Every step says where the thread exits when it is done, so that the next one can start there.
"""

from __future__ import annotations

from collections.abc import Sequence

from .piece import Piece
from .plan import TAIL, WEAVE_IN, ThreadPlan
from .saying import Step, cm, section_name, unit_of
from .stitches import brick_steps, loom_steps, peyote_steps, square_steps
from .thread import ThreadUse

STEP_IDS = ("warps", "first-pick-up", "ladder", "row-start-in", "row-start-out", "row-stitches", "edge-turn", "row-end-in", "row-end-out",
            "one-stitch-row", "lower-rows", "off-the-loom", "thread-change", "hanger", "fringe-start", "fringe", "finishing")
STITCH_STEPS = {"brick": brick_steps, "peyote": peyote_steps, "square": square_steps, "loom": loom_steps}   # by stitch


def steps(piece: Piece, plan: ThreadPlan, uses: Sequence[ThreadUse]) -> tuple[Step, ...]:
    """The steps that this piece needs, in working order."""
    stitch = STITCH_STEPS[piece.stitch]
    made = [*stitch.body_steps(piece, plan), _thread_change(piece, uses)]
    made += [stitch.hanger_step(piece), *stitch.fringe_steps(piece, plan), _finishing(piece)]
    return tuple(step for step in made if step is not None)


def _thread_change(piece: Piece, uses: Sequence[ThreadUse]) -> Step | None:
    changes = [section_name(section) for use in uses for section in use.changes]
    if not changes:
        return None
    listed = changes[0] if len(changes) == 1 else f"{', '.join(changes[:-1])} and {changes[-1]}"
    return Step("thread-change", "Changing the thread",
                f"A working length runs out before {listed}. While {cm(WEAVE_IN)} are left, anchor the new thread: pass round "
                f"two neighbouring {unit_of(piece, 2)} twice, leaving a tail of {cm(TAIL)}, and come out of the same place in the same "
                "direction as the old thread. Weave the old one in. The thread exits where the old one did.")


def reading_the_chart(piece: Piece) -> str:
    """Where to start on the chart and how to go on, in a sentence or two."""
    return STITCH_STEPS[piece.stitch].reading_the_chart(piece)


def _finishing(piece: Piece) -> Step:
    loop = "" if piece.hanger.kind == "none" else \
        " Open the loop of the ear wire sideways with two pliers, slip on the hanger and close it the same way."
    return Step("finishing", "Finishing",
                f"Weave in each end: pass through the body in a zigzag for {cm(WEAVE_IN)} or so, turning twice, and trim close to a bead."
                f"{loop} No thread exits: the piece is done.")
