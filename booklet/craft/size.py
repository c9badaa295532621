"""Finished size in millimetres and inches, and mass."""

from __future__ import annotations

from dataclasses import dataclass

from .piece import Piece, Row

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
    """Width: stitches across, slant included, times bead diameter. A row is `drop` bead lengths high."""
    kinds = {key: bead.kind for key, bead in piece.legend.items()}
    across = (max(row.last for row in piece.rows) - min(row.first for row in piece.rows)) / 2 + 1
    diameter = max(kinds[key].diameter for row in piece.rows for stitch in row.stitches for key in stitch.beads)
    body = _height(piece, piece.rows)
    fringe = max((strand_length(piece, strand.all) for strand in piece.strands), default=0.0)
    return Size(across * diameter, body, fringe, body + max(0.0, fringe - _height(piece, piece.lower)))


def _height(piece: Piece, rows: tuple[Row, ...]) -> float:
    """mm; the parts of a row are side by side."""
    heights: dict[int, float] = {}
    for row in rows:
        for stitch in row.stitches:
            heights[row.level] = max(heights.get(row.level, 0.0), strand_length(piece, stitch.beads))
    return sum(heights.values())


def strand_length(piece: Piece, keys: tuple[str, ...]) -> float:
    """Length of beads strung one after another, mm."""
    return sum(piece.legend[key].kind.length for key in keys)


def mass(piece: Piece) -> float:
    """Grams of beads in one piece; ear wire, guard and thread are not counted."""
    body = (key for row in piece.rows for stitch in row.stitches for key in stitch.beads)
    fringe = (key for strand in piece.strands for key in strand.all)
    return sum(piece.legend[key].kind.mass for key in (*body, *fringe, *piece.hanger.beads)) / 1000
