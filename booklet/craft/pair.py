"""A piece turned round: its mirror image, and the same piece for the other hand."""

from __future__ import annotations

from msgspec.structs import replace

from .piece import LEFT, RIGHT, Hanger, Piece, Row, Stitch, opposite
from .places import places
from .stitches import stitch_of, worked_rows
from .strand import Strand

_OTHER = {LEFT: RIGHT, RIGHT: LEFT}


def mirrored(piece: Piece) -> Piece:
    """The piece as its mirror image, worked by the same hand: left and right of body, fringe and hangers exchanged."""
    drawn = [[_turned_over(piece, row, stitch) for stitch in reversed(row.stitches)] for row in piece.drawn]
    rows = worked_rows(piece.stitch, drawn, -piece.drawn[0].level, piece.hand)   # other parts of a row come first
    return replace(piece, rows=rows, strands=_strands_over(piece), hangers=_hangers_over(piece))


def _strands_over(piece: Piece) -> tuple[Strand, ...]:
    count = places_across(piece)
    return tuple(strand.turned_over(count) for strand in reversed(piece.strands))


def _hangers_over(piece: Piece) -> tuple[Hanger, ...]:
    return tuple(replace(hanger, beads=hanger.beads[::-1], at=_OTHER.get(hanger.at, hanger.at)) for hanger in reversed(piece.hangers))


def _turned_over(piece: Piece, row: Row, stitch: Stitch) -> Stitch:
    """The stitch on the other side, its beads as `piece_rows` takes them: from the bottom, or from the left where a set lies."""
    backwards = stitch_of(piece).LYING != (row.level < 0)
    return Stitch(-stitch.at, stitch.beads[::-1] if backwards else stitch.beads)


def other_hand(piece: Piece) -> Piece:
    """The same piece worked by the other hand: every row runs the other way, and the fringe from the other side."""
    drawn = [[Stitch(stitch.at, stitch.beads[::-1] if row.level < 0 else stitch.beads) for stitch in row.stitches] for row in piece.drawn]
    hand = opposite(piece.hand)
    return replace(piece, hand=hand, rows=worked_rows(piece.stitch, drawn, -piece.drawn[0].level, hand))   # other parts of a row come first


def in_hand(piece: Piece, hand: str) -> Piece:
    """The piece as `hand` works it."""
    return piece if piece.hand == hand else other_hand(piece)


def places_across(piece: Piece) -> int:
    """Places of the fringe; the highest number of a strand, where that is more."""
    return max([len(places(piece)), *(strand.number for strand in piece.strands)])


def is_symmetric(piece: Piece) -> bool:
    """Whether the piece is its own mirror image, so that a mirrored pair is a pair of equal pieces."""
    left, right, lying = min(row.first for row in piece.rows), max(row.last for row in piece.rows), stitch_of(piece).LYING
    for row in piece.drawn:
        turned = [(right - stitch.at, stitch.beads[::-1] if lying else stitch.beads) for stitch in reversed(row.stitches)]
        if turned != [(stitch.at - left, stitch.beads) for stitch in row.stitches]:
            return False
    return _strands_over(piece) == piece.strands and _hangers_over(piece) == piece.hangers


def has_two_faces(piece: Piece) -> bool:
    """Whether the piece looks the same from behind but for left and right, so that the second of a pair is the first turned over.

    Flat bead weaving shows the same bead on both faces. Strands with twigs do not lie flat.
    """
    return not any(strand.twigs for strand in piece.strands)
