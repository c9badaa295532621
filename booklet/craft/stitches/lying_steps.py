"""What the steps of stitches share whose beads lie along the row."""

from __future__ import annotations

from ..piece import Piece, opposite
from ..plan import TAIL, ThreadPlan
from ..saying import cm, m


def start_side(piece: Piece) -> str:
    """The edge at which row 1 starts."""
    return opposite(piece.base.direction)


def threaded(plan: ThreadPlan) -> str:
    """How a piece that begins with a strung line is begun."""
    return (f"Thread a needle with {m(plan.length)} of {plan.body}. Pick up a stop bead of any other colour, pass through it once more the same "
            f"way and slide it along until a tail of {cm(TAIL)} is left; take it off when you weave the tail in.")
