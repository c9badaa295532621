"""What the steps of stitches share whose beads lie along the row."""

from __future__ import annotations

from ..language import _
from ..piece import Piece, opposite
from ..plan import TAIL, ThreadPlan, thread_said
from ..runs import said
from ..saying import cm, m
from ..words import sets_of
from . import stitch_of


def start_side(piece: Piece) -> str:
    """The edge at which row 1 starts."""
    return opposite(piece.base.direction)


def threaded(plan: ThreadPlan) -> str:
    """How a piece that begins with a strung line is begun."""
    return _("Thread a needle with {length} of {thread}. Pick up a stop bead of any other colour, pass through it once more the same "
             "way and slide it along until a tail of {tail} is left; take it off when you weave the tail in.",
             length=m(plan.length), thread=thread_said(plan.body), tail=cm(TAIL))


def strung(piece: Piece) -> str:
    """The beads of the first line."""
    return said(sets_of(piece, stitch_of(piece).told_together(piece)[0]))
