"""A piece turned round: its mirror image, and the same piece for the other hand."""

from __future__ import annotations

from msgspec.structs import replace

from .piece import LEFT, RIGHT, Hanger, Piece, Row, Stitch, opposite
from .places import places
from .stitches import stitch_of, worked_rows

_OTHER = {LEFT: RIGHT, RIGHT: LEFT}


def mirrored(piece: Piece) -> Piece:
    """The piece as its mirror image, worked by the same hand: left and right of body, fringe and hangers exchanged."""
    drawn = [[_turned_over(piece, row, stitch) for stitch in reversed(row.stitches)] for row in piece.drawn]
    rows = worked_rows(piece.stitch, drawn, -piece.drawn[0].level, piece.hand)   # other parts of a row come first
    strands = tuple(strand.turned_over(places_across(piece)) for strand in reversed(piece.strands))
    return replace(piece, rows=rows, strands=strands, hangers=tuple(_hanger(hanger) for hanger in reversed(piece.hangers)))


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


def _hanger(hanger: Hanger) -> Hanger:
    return replace(hanger, beads=hanger.beads[::-1], at=_OTHER.get(hanger.at, hanger.at))


def is_symmetric(piece: Piece) -> bool:
    """Whether the piece is its own mirror image, so that a mirrored pair is a pair of equal pieces."""
    other = mirrored(piece)
    return _shape(other) == _shape(piece) and other.strands == piece.strands and other.hangers == piece.hangers


def _shape(piece: Piece) -> list[tuple]:
    left = min(row.first for row in piece.rows)
    return [(row.level, [(stitch.at - left, stitch.beads) for stitch in row.stitches]) for row in piece.drawn]


def has_two_faces(piece: Piece) -> bool:
    """Whether the piece looks the same from behind but for left and right, so that the second of a pair is the first turned over.

    Flat bead weaving shows the same bead on both faces. Strands with twigs do not lie flat.
    """
    return not any(strand.twigs for strand in piece.strands)
