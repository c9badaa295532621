"""The path of the needle through a whole piece.

Everything that is said about working a piece (pick-up order, passes through a bead, thread length, steps) is read
from this path.
"""

from __future__ import annotations

from .events import Path, WeaveIn
from .hanger import hangers
from .kept import kept
from .piece import Piece
from .places import strands_fit
from .stitches import faults, stitch_of
from .strands import fringe


@kept
def path(piece: Piece) -> Path:
    """The whole path. Raises ValueError for a piece with faults, or with a strand where there is no place for it."""
    if faults(piece):
        raise ValueError("the piece cannot be worked; see craft.stitches.faults")
    if not strands_fit(piece):
        raise ValueError("a strand has no place to hang; see craft.places.strands_fit")
    body = [*stitch_of(piece).body(piece), *hangers(piece)]
    return Path((*body, WeaveIn(body[-1].section)), tuple(fringe(piece)))
