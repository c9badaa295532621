"""The stitches of a body, one module each.

A stitch module has `faults(piece)`, `body(piece)` (events from the anchor to the end of the last row), `row_count` and
`row_text` (words of a row). A piece names its stitch; everything else asks here.
"""

from __future__ import annotations

from types import ModuleType

from ..piece import Fault, Piece
from . import brick

STITCHES: dict[str, ModuleType] = {"brick": brick}


def stitch_of(piece: Piece) -> ModuleType:
    """The module of the stitch that a piece is worked in."""
    return STITCHES[piece.stitch]


def faults(piece: Piece) -> tuple[Fault, ...]:
    """Every reason why the body cannot be worked; empty if it can."""
    return stitch_of(piece).faults(piece)
