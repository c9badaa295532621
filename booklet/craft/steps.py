"""The numbered steps of a piece, written from the needle's path, with this piece's own numbers.

Every step says where the thread exits when it is done, so that the next one can start there.
"""

from __future__ import annotations

from collections.abc import Sequence

from .hanger_steps import hanger_step
from .piece import LEFT, RIGHT, Piece
from .plan import TAIL, WEAVE_IN, ThreadPlan
from .saying import Step, cm, listed, m, section_name, unit_of
from .size import strand_length
from .stitches.brick_steps import body_steps
from .thread import ThreadUse

STEP_IDS = ("first-pick-up", "ladder", "row-start-in", "row-start-out", "row-stitches", "row-end-in", "row-end-out",
            "one-stitch-row", "lower-rows", "thread-change", "hanger", "fringe-start", "fringe", "fringe-thread-change",
            "finishing", "ear-wire")
BODY_STEPS = {"brick": body_steps}   # by stitch


def steps(piece: Piece, plan: ThreadPlan, uses: Sequence[ThreadUse], ear_wire: bool = False) -> tuple[Step, ...]:
    """The steps that this piece needs, in working order. `ear_wire`: whether there is one to be hung in."""
    body, fringe = ([use for use in uses if use.part == part] for part in ("body", "fringe"))
    made = [*BODY_STEPS[piece.stitch](piece, plan), _thread_change(piece, "thread-change", body), hanger_step(piece)]
    made += [*_fringe(piece, plan), _thread_change(piece, "fringe-thread-change", fringe)]
    made += [_finishing(piece), _ear_wire(piece) if ear_wire else None]
    return tuple(step for step in made if step is not None)


def _thread_change(piece: Piece, name: str, uses: Sequence[ThreadUse]) -> Step | None:
    changes = [(section_name(after), section_name(before)) for use in uses for after, before in zip(use.after, use.changes)]
    if not changes:
        return None
    where = listed([f"after {after}, before {before}" for after, before in changes])
    return Step(name, "Changing the thread" if name == "thread-change" else "Changing the thread of the fringe",
                f"Change the thread {where}. While {cm(WEAVE_IN)} are left, anchor the new thread: pass round "
                f"two neighbouring {unit_of(piece, 2)} twice, leaving a tail of {cm(TAIL)}, and come out of the same place in the same "
                "direction as the old thread. Weave the old one in. The thread exits where the old one did.")


def _fringe(piece: Piece, plan: ThreadPlan) -> list[Step]:
    if not piece.strands:
        return []
    side = LEFT if piece.hand == RIGHT else RIGHT
    count, unit = len(piece.strands), unit_of(piece)
    first = piece.worked_strands[0].number
    longest = max(piece.strands, key=lambda strand: strand_length(piece, strand.all))
    return [
        Step("fringe-start", "Starting the fringe",
             f"Thread {m(plan.length)} of {plan.fringe}{_stretch(plan)}. Anchor it in the body round two neighbouring "
             f"{unit_of(piece, 2)} twice and pass down through the first {unit} of row 1 at the {side} edge. "
             f"The thread exits under row 1, above strand {first}."),
        Step("fringe", "Each strand",
             f"Work {count} strands, one under each {unit} of row 1, from the {side} edge. Pick up the beads of the strand from the "
             f"top down, then its end beads. Skip the end beads and pass back up through the rest of the strand, up through the {unit} above it "
             f"and down through the next {unit}. Pull until no thread shows and the strand still swings. "
             f"The longest, strand {longest.number}, measures {strand_length(piece, longest.all):.0f} mm. "
             "After the last strand the thread exits the top of row 1."),
    ]


def _stretch(plan: ThreadPlan) -> str:
    """Advice for a thread that is of nylon, or of which nothing is known."""
    known = plan.kind("fringe")
    return "; stretch nylon before you use it" if known is None or not known.material or "nylon" in known.material else ""


def _finishing(piece: Piece) -> Step:
    return Step("finishing", "Finishing",
                f"Weave in each end: pass through the body in a zigzag for {cm(WEAVE_IN)} or so, turning twice, and trim close to a bead. "
                "No thread exits: the beadwork is done.")


def _ear_wire(piece: Piece) -> Step | None:
    if not piece.hangers:
        return None
    where = {"guard": "the thread guard", "ring": "the closed ring", "loop": "the loop of beads"}[piece.hangers[0].kind]
    return Step("ear-wire", "Ear wire",
                "Hold the loop of the ear wire on both sides of its gap, with two pliers. Open it sideways, one end towards you and "
                f"the other away; pulled apart it would lose its round and might break. Slip {where} on and bring the ends back the same "
                "way until the gap is closed and no thread can slip out. No thread exits: the piece is done.")
