"""Brick stitch from a ladder base: what can be worked. The path of the needle and the words stand beside it."""

from __future__ import annotations

from ..piece import Fault, Piece, Row, bridged, nearer_base
from .brick_path import body
from .brick_words import row_count, row_text

__all__ = ["DROPS", "INTERLOCKED", "LYING", "NAME", "PARTED", "body", "directed", "faults", "row_count", "row_text", "told_together", "warps"]

NAME = "brick stitch"
LYING, INTERLOCKED, PARTED, DROPS = False, False, True, range(1, 5)


def directed(rows: tuple[Row, ...]) -> tuple[Row, ...]:
    """Back and forth, as rows are numbered."""
    return rows


def warps(piece: Piece) -> int:
    """Brick stitch is worked in the hand."""
    return 0


def told_together(piece: Piece) -> list[tuple[Row, ...]]:
    """Each row has a line of words of its own."""
    return [(row,) for row in piece.rows]


def faults(piece: Piece) -> tuple[Fault, ...]:
    """Every reason why the body cannot be worked row by row; empty if it can."""
    found: list[Fault] = _gaps(piece.base)
    for row in piece.rows:
        under = piece.under(row)
        if under is not None and not any(f.row in (row.number, under.number) for f in found):
            found += _hanging_faults(piece, row, under)
    return tuple(found)


def _gaps(row: Row) -> list[Fault]:
    return [
        Fault(row.number, right.at, f"row {row.number}, the base row, has a gap after its stitch {index}",
              "the base row is one ladder: close the gap, or make a row without a gap the base row")
        for index, (left, right) in enumerate(zip(row.stitches, row.stitches[1:]), 1)
        if right.at - left.at != 2
    ]


def _hanging_faults(piece: Piece, row: Row, under: Row) -> list[Fault]:
    name, below = f"row {row.name}", f"row {under.name}"
    if (row.first - under.first) % 2 == 0:
        return [Fault(row.number, row.first, f"{name} sits straight on the stitches of {below}",
                      "move it one character to the left or right, so that it sits on the thread bridges")]
    carriers = [part for part in piece.at_level(nearer_base(row.level)) if bridged(row, part)]
    if len(carriers) > 1:
        left, right = sorted(carriers, key=lambda part: part.first)[:2]
        over = next(stitch.at for stitch in row.stitches if stitch.at > left.last)
        return [Fault(row.number, over, f"{name} joins {left.name} and {right.name}, and nothing carries it over the gap between them",
                      f"leave the gap open in row {row.number} too, or make it the base row, so that the two parts hang on it")]
    if len(under.stitches) == 1:
        return [Fault(row.number, row.first, f"{name} has nothing to hang on: {below} has one stitch and no thread bridge",
                      f"give {below} two stitches or more, or end the shape there")]
    if not carriers:
        return [Fault(row.number, row.first, f"{name} has nothing to hang on: no stitch of it stands over a thread bridge of {below}",
                      f"move it inward until one of its stitches stands between two of {below}, or make {below} wider")]
    return []
