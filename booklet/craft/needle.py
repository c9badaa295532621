"""The path of the needle through a whole piece.

Everything that is said about working a piece (pick-up order, passes through a bead, thread length, steps) is read
from this path.
"""

from __future__ import annotations

from .events import Path, WeaveIn
from .hanger import hangers
from .piece import Piece
from .stitches import faults, stitch_of
from .strands import fringe


def path(piece: Piece) -> Path:
    """The whole path. Raises ValueError for a piece with faults, or with strands that do not match its base row."""
    if faults(piece):
        raise ValueError("the piece cannot be worked; see craft.stitches.faults")
    if piece.strands and len(piece.strands) != len(piece.base.stitches):
        raise ValueError("the number of strands differs from the number of base stitches")
    body = [*stitch_of(piece).body(piece), *hangers(piece)]
    return Path((*body, WeaveIn(body[-1].section)), tuple(fringe(piece)))
