"""The numbered steps of a piece, written from the needle's path, with this piece's own numbers.

Every step says where the thread exits when it is done, so that the next one can start there.
"""

from __future__ import annotations

from collections.abc import Sequence

from .fringe_steps import fringe_steps
from .hanger_steps import hanger_step
from .language import _, listed, sentences
from .lying_fringe_steps import lying_fringe_steps
from .piece import Piece
from .plan import TAIL, WEAVE_IN, ThreadPlan
from .saying import Step, cm, section_name, unit_of
from .stitches import brick_steps, loom_steps, peyote_steps, square_steps, stitch_of
from .thread import ThreadUse

STEP_IDS = ("warps", "first-pick-up", "ladder", "row-start-in", "row-start-out", "row-travel", "row-start-ladder", "row-stitches", "edge-turn",
            "row-end-in", "row-end-out", "row-end-short", "row-end-ladder", "one-stitch-row", "part-start", "lower-rows", "off-the-loom",
            "thread-change", "hanger", "fringe-start", "fringe", "fringe-twigs", "fringe-loop", "fringe-twist", "fringe-charm", "fringe-way",
            "fringe-thread-change", "finishing", "ear-wire")
STITCH_STEPS = {"brick": brick_steps, "peyote": peyote_steps, "square": square_steps, "loom": loom_steps}   # by stitch


def steps(piece: Piece, plan: ThreadPlan, uses: Sequence[ThreadUse], ear_wire: bool = False) -> tuple[Step, ...]:
    """The steps that this piece needs, in working order. `ear_wire`: whether there is one to be hung in."""
    body, fringe = ([use for use in uses if use.part == part] for part in ("body", "fringe"))
    made = [*STITCH_STEPS[piece.stitch].body_steps(piece, plan), _thread_change(piece, "thread-change", body), hanger_step(piece)]
    hung = lying_fringe_steps if stitch_of(piece).LYING else fringe_steps
    made += [*hung(piece, plan), _thread_change(piece, "fringe-thread-change", fringe)]
    made += [_finishing(piece), _ear_wire(piece) if ear_wire else None]
    return tuple(step for step in made if step is not None)


def _thread_change(piece: Piece, name: str, uses: Sequence[ThreadUse]) -> Step | None:
    # A part that begins with a new thread says so itself.
    changes = [(section_name(after), section_name(before)) for use in uses for after, before in zip(use.after, use.changes) if before not in use.begun]
    if not changes:
        return None
    where = listed([_("after {after}, before {before}", after=after, before=before) for after, before in changes])
    return Step(name, _("Changing the thread") if name == "thread-change" else _("Changing the thread of the fringe"), sentences(
        _("Change the thread {where}.", where=where),
        _("While {left} are left, anchor the new thread: pass round two neighbouring {units} twice, leaving a tail of {tail}, and come out of the same place in the same "
          "direction as the old thread. Weave the old one in. The thread exits where the old one did.", left=cm(WEAVE_IN), units=unit_of(piece, 2), tail=cm(TAIL))))


def reading_the_chart(piece: Piece) -> str:
    """Where to start on the chart and how to go on, in a sentence or two."""
    return STITCH_STEPS[piece.stitch].reading_the_chart(piece)


def _finishing(piece: Piece) -> Step:
    return Step("finishing", _("Finishing"), _(
        "Weave in each end: pass through the body in a zigzag for {length} or so, turning twice, and trim close to a bead. "
        "No thread exits: the beadwork is done.", length=cm(WEAVE_IN)))


def _ear_wire(piece: Piece) -> Step | None:
    if not piece.hangers:
        return None
    slip = {"guard": _("Slip the thread guard on and bring the ends back the same way until the gap is closed and no thread can slip out."),
            "ring": _("Slip the closed ring on and bring the ends back the same way until the gap is closed and no thread can slip out."),
            "loop": _("Slip the loop of beads on and bring the ends back the same way until the gap is closed and no thread can slip out.")}[piece.hangers[0].kind]
    return Step("ear-wire", _("Ear wire"), sentences(
        _("Hold the loop of the ear wire on both sides of its gap, with two pliers. Open it sideways, one end towards you and "
          "the other away; pulled apart it would lose its round and might break."), slip, _("No thread exits: the piece is done.")))
