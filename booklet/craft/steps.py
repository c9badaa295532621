"""The numbered steps of a piece, written from the needle's path, with this piece's own numbers.

Every step says where the thread exits when it is done, so that the next one can start there.
"""

from __future__ import annotations

from collections.abc import Sequence

from .fringe_steps import fringe_steps
from .hanger import HANGER_PASSES, hanger_stitches, top_row
from .piece import Piece
from .plan import TAIL, WEAVE_IN, ThreadPlan
from .runs import said
from .saying import Step, cm, m, section_name, unit_of
from .stitches.brick_steps import body_steps
from .thread import ThreadUse

STEP_IDS = ("first-pick-up", "ladder", "row-start-in", "row-start-out", "row-stitches", "row-end-in", "row-end-out",
            "one-stitch-row", "lower-rows", "thread-change", "hanger", "fringe-start", "fringe", "fringe-twigs", "fringe-loop",
            "fringe-twist", "fringe-charm", "fringe-way", "finishing")
BODY_STEPS = {"brick": body_steps}   # by stitch


def steps(piece: Piece, plan: ThreadPlan, uses: Sequence[ThreadUse]) -> tuple[Step, ...]:
    """The steps that this piece needs, in working order."""
    made = [*BODY_STEPS[piece.stitch](piece, plan), _thread_change(piece, uses), _hanger(piece)]
    made += [*fringe_steps(piece, plan), _finishing(piece)]
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


def _hanger(piece: Piece) -> Step | None:
    if piece.hanger.kind == "none":
        return None
    top = top_row(piece)
    left, right = (index + 1 for index in hanger_stitches(piece))
    unit, name = unit_of(piece), f"row {top.number}"
    where = (f"{unit_of(piece, 2)} {left} and {right} of {name}, counted from the left" if left != right
             else f"the one {unit} of {name}")
    way = "Weave up through the edge to the top row. " if piece.lower else ""
    if piece.hanger.kind == "guard":
        what = "Pass through a thread guard"
    else:
        count = len(piece.hanger.beads)
        what = f"Pick up the {count} bead{'s' if count > 1 else ''} of the loop: {said([(key,) for key in piece.hanger.beads])}"
    return Step("hanger", "Hanger",
                f"{way}The hanger sits on {where}. Pass down and up along the top row until the thread exits the top of the nearer one. "
                f"{what} and pass down through the {'other' if left != right else 'same'} {unit}. "
                f"Go round {HANGER_PASSES} times in all, snug but not stiff. "
                f"The thread exits below row {top.number}.")


def _finishing(piece: Piece) -> Step:
    loop = "" if piece.hanger.kind == "none" else \
        " Open the loop of the ear wire sideways with two pliers, slip on the hanger and close it the same way."
    return Step("finishing", "Finishing",
                f"Weave in each end: pass through the body in a zigzag for {cm(WEAVE_IN)} or so, turning twice, and trim close to a bead."
                f"{loop} No thread exits: the piece is done.")
