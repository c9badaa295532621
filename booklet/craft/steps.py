"""The numbered steps of a piece, written from the needle's path, with this piece's own numbers.

Every step says where the thread exits when it is done, so that the next one can start there.
"""

from __future__ import annotations

from collections.abc import Sequence

from .hanger import HANGER_PASSES, hanger_stitches, top_row
from .piece import LEFT, RIGHT, Piece
from .plan import TAIL, WEAVE_IN, ThreadPlan
from .runs import said
from .saying import Step, cm, m, section_name, unit_of
from .size import strand_length
from .stitches.brick_steps import body_steps
from .thread import ThreadUse

STEP_IDS = ("first-pick-up", "ladder", "row-start-in", "row-start-out", "row-travel", "row-start-ladder", "row-stitches",
            "row-end-in", "row-end-out", "row-end-short", "row-end-ladder", "one-stitch-row", "part-start", "lower-rows", "thread-change", "hanger", "fringe-start", "fringe", "finishing")
BODY_STEPS = {"brick": body_steps}   # by stitch


def steps(piece: Piece, plan: ThreadPlan, uses: Sequence[ThreadUse]) -> tuple[Step, ...]:
    """The steps that this piece needs, in working order."""
    made = [*BODY_STEPS[piece.stitch](piece, plan), _thread_change(piece, uses), _hanger(piece)]
    made += [*_fringe(piece, plan), _finishing(piece)]
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
    unit, name = unit_of(piece), f"row {top.name}"
    where = (f"{unit_of(piece, 2)} {left} and {right} of {name}, counted from the left" if left != right
             else f"the one {unit} of {name}")
    last = piece.rows[-1]
    way = "" if last == top else "Weave up through the edge to the top row. " if last.level < 0 else f"Weave back through the stitches to {name}. "
    if piece.hanger.kind == "guard":
        what = "Pass through a thread guard"
    else:
        count = len(piece.hanger.beads)
        what = f"Pick up the {count} bead{'s' if count > 1 else ''} of the loop: {said([(key,) for key in piece.hanger.beads])}"
    return Step("hanger", "Hanger",
                f"{way}The hanger sits on {where}. Pass down and up along the top row until the thread exits the top of the nearer one. "
                f"{what} and pass down through the {'other' if left != right else 'same'} {unit}. "
                f"Go round {HANGER_PASSES} times in all, snug but not stiff. "
                f"The thread exits below row {top.name}.")


def _fringe(piece: Piece, plan: ThreadPlan) -> list[Step]:
    if not piece.strands:
        return []
    side = LEFT if piece.hand == RIGHT else RIGHT
    count, unit = len(piece.strands), unit_of(piece)
    first = piece.worked_strands[0].number
    longest = max(piece.strands, key=lambda strand: strand_length(piece, strand.all))
    return [
        Step("fringe-start", "Starting the fringe",
             f"Thread {m(plan.length)} of {plan.fringe}; stretch nylon before you use it. Anchor it in the body round two neighbouring "
             f"{unit_of(piece, 2)} twice and pass down through the first {unit} of row 1 at the {side} edge. "
             f"The thread exits under row 1, above strand {first}."),
        Step("fringe", "Each strand",
             f"Work {count} strands, one under each {unit} of row 1, from the {side} edge. Pick up the beads of the strand from the "
             f"top down, then its end beads. Skip the end beads and pass back up through the rest of the strand, up through the {unit} above it "
             f"and down through the next {unit}. Pull until no thread shows and the strand still swings. "
             f"The longest, strand {longest.number}, measures {strand_length(piece, longest.all):.0f} mm. "
             "After the last strand the thread exits the top of row 1."),
    ]


def _finishing(piece: Piece) -> Step:
    loop = "" if piece.hanger.kind == "none" else \
        " Open the loop of the ear wire sideways with two pliers, slip on the hanger and close it the same way."
    return Step("finishing", "Finishing",
                f"Weave in each end: pass through the body in a zigzag for {cm(WEAVE_IN)} or so, turning twice, and trim close to a bead."
                f"{loop} No thread exits: the piece is done.")
