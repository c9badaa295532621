"""Finished size in millimetres and inches, and mass."""

from __future__ import annotations

from dataclasses import dataclass

from .layout import layout
from .piece import Piece
from .stitches import stitch_of

MM_PER_INCH = 25.4  # exact: the international inch


@dataclass(frozen=True)
class Size:
    """Millimetres. The hanger and the ear wire are not counted."""

    width: float    # of the body, edge to edge
    body: float     # height of the body
    fringe: float   # the longest strand, end beads counted
    length: float   # body and fringe together


def inches(mm: float) -> float:
    """Millimetres to inches."""
    return mm / MM_PER_INCH


def size(piece: Piece) -> Size:
    """Width: stitches across, slant included, times bead diameter. A row is `drop` bead lengths high.

    Where beads lie along the row, length counts across and diameter upward.
    """
    if stitch_of(piece).LYING:
        return _size_lying(piece)
    kinds = {key: bead.kind for key, bead in piece.legend.items()}
    across = (max(row.last for row in piece.rows) - min(row.first for row in piece.rows)) / 2 + 1
    diameter = max(kinds[key].diameter for row in piece.rows for stitch in row.stitches for key in stitch.beads)
    body = sum(max(sum(kinds[key].length for key in stitch.beads) for stitch in row.stitches) for row in piece.rows)
    fringe = max((strand_length(piece, strand.all) for strand in piece.strands), default=0.0)
    below = sum(max(sum(kinds[key].length for key in stitch.beads) for stitch in row.stitches) for row in piece.lower)
    return Size(across * diameter, body, fringe, body + max(0.0, fringe - below))


def _size_lying(piece: Piece) -> Size:
    places = layout(piece)
    across, body = max(row.last for row in piece.rows) - min(row.first for row in piece.rows), max(places.tops.values())
    fringe = max((strand_length(piece, strand.all) for strand in piece.strands), default=0.0)
    return Size(places.x(across) + places.cell / 2, body, fringe, body + fringe)


def strand_length(piece: Piece, keys: tuple[str, ...]) -> float:
    """Length of beads strung one after another, mm."""
    return sum(piece.legend[key].kind.length for key in keys)


def mass(piece: Piece) -> float:
    """Grams of beads in one piece; ear wire, guard and thread are not counted."""
    body = (key for row in piece.rows for stitch in row.stitches for key in stitch.beads)
    fringe = (key for strand in piece.strands for key in strand.all)
    return sum(piece.legend[key].kind.mass for key in (*body, *fringe, *piece.hanger.beads)) / 1000
