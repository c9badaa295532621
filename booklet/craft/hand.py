"""The same piece worked by the other hand."""

from __future__ import annotations

from dataclasses import replace

from .piece import Piece, opposite


def in_hand(piece: Piece, hand: str) -> Piece:
    """The piece as `hand` works it: what hangs at last is the same, but every row runs the other way, and the fringe begins at the other side."""
    if piece.hand == hand:
        return piece
    return replace(piece, hand=hand, rows=tuple(replace(row, direction=opposite(row.direction)) for row in piece.rows))
