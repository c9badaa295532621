"""Rebuilding the chart from the printed words, and holding it against the piece.

The reading itself is in `craft.reading`; the stitch is told by the piece, everything else by the words alone.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from .piece import Piece
from .reading import brick, loom, peyote, square
from .reading.items import CannotRead
from .reading.strands import read_strand
from .reading.told import ReadRow

READERS = {"brick": brick.read_rows, "peyote": peyote.read_rows, "square": square.read_rows, "loom": loom.read_rows}   # by stitch


@dataclass(frozen=True)
class ReadPiece:
    """All that was read."""

    rows: tuple[ReadRow, ...]
    strands: tuple[tuple[int, tuple[str, ...], tuple[str, ...]], ...]  # (number, beads, end beads), by number


def replay(row_lines: Sequence[str], strand_lines: Sequence[str], stitch: str = "brick") -> ReadPiece:
    """Work the lines in their order. Raises CannotRead with the line that makes no sense."""
    return ReadPiece(READERS[stitch](row_lines), tuple(sorted(read_strand(line) for line in strand_lines)))


def differences(piece: Piece, row_lines: Sequence[str], strand_lines: Sequence[str]) -> tuple[str, ...]:
    """Where the chart that the lines rebuild differs from the piece; empty if the words are right."""
    try:
        read = replay(row_lines, strand_lines, piece.stitch)
    except CannotRead as error:
        return (str(error),)
    return (*_row_differences(piece, read), *_strand_differences(piece, read))


def _row_differences(piece: Piece, read: ReadPiece) -> list[str]:
    found = []
    if [row.number for row in read.rows] != [row.number for row in piece.rows]:
        found.append(f"the words have rows {[row.number for row in read.rows]}, "
                     f"the chart has {[row.number for row in piece.rows]}")
    zero = piece.rows[0].stitches[0].at
    for told, row in zip(read.rows, piece.rows):
        drawn = tuple((stitch.at - zero, stitch.beads) for stitch in row.stitches)
        if told.stitches != drawn or told.below != (row.level < 0) or told.runs_right != (row.direction == "right"):
            found.append(f"row {row.number}: the words rebuild {told.stitches}, the chart has {drawn}")
    return found


def _strand_differences(piece: Piece, read: ReadPiece) -> list[str]:
    drawn = tuple((strand.number, strand.beads, strand.end) for strand in piece.strands)
    if len(drawn) != len(read.strands):
        return [f"the words have {len(read.strands)} strands, the pattern has {len(drawn)}"]
    return [f"strand {have[0]}: the words give {told[1:]}, the pattern has {have[1:]}"
            for told, have in zip(read.strands, drawn) if told != have]
