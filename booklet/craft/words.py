"""The written instructions of rows and strands, as they stand in the book.

Beads are named in the order in which the needle picks them up. Every line can be read back:
`craft.replay` rebuilds the chart from the lines alone, and every build does so.
"""

from __future__ import annotations

from dataclasses import dataclass

from .needle import Section, ends_in, path, starts_in
from .piece import RIGHT, Piece, Row, Strand
from .runs import said


@dataclass(frozen=True)
class RowWords:
    """The words of one row."""

    number: int
    direction: str   # "right" or "left", as the row runs on the chart
    level: int       # as in Row
    stitches: int
    count: str       # "9 stitches", "5 sets", "6 stitches below"
    text: str        # "start in 2W; then 3B, 3W; end in"

    @property
    def arrow(self) -> str:
        return "→" if self.direction == RIGHT else "←"

    @property
    def line(self) -> str:
        """The whole line."""
        return f"Row {self.number} {self.arrow} {self.count}: {self.text}"


@dataclass(frozen=True)
class StrandWords:
    """The words of one strand."""

    number: int
    beads: int   # end beads counted
    count: str   # "18 beads"
    text: str    # "12W, 2B, 1W; end 3B"

    @property
    def line(self) -> str:
        """The whole line."""
        return f"Strand {self.number}, {self.count}: {self.text}"


def row_words(piece: Piece) -> tuple[RowWords, ...]:
    """Words for every row, in working order. Raises ValueError for a piece that cannot be worked."""
    needle = path(piece)
    words = []
    for row in piece.rows:
        beads = {(i, level): key for i, stitch in enumerate(row.stitches) for level, key in enumerate(stitch.beads)}
        keys = [beads[place.index, place.level] for place in needle.picked_up(Section("row", row.number))]
        sets = [tuple(keys[i:i + piece.drop]) for i in range(0, len(keys), piece.drop)]
        words.append(RowWords(row.number, row.direction, row.level, len(sets), _count(len(sets), piece.drop, row.level),
                              _row_text(row, piece.under(row), sets, piece.drop)))
    return tuple(words)


def _count(stitches: int, drop: int, level: int) -> str:
    unit = "stitch" if drop == 1 else "set"
    plural = unit if stitches == 1 else {"stitch": "stitches", "set": "sets"}[unit]
    return f"{stitches} {plural}" + (" below" if level < 0 else "")


def _row_text(row: Row, under: Row | None, sets: list[tuple[str, ...]], drop: int) -> str:
    if len(sets) == 1:
        return f"one {'stitch' if drop == 1 else 'set'} {said(sets)}"
    then = f"; then {said(sets[2:])}" if sets[2:] else ""
    if under is None:
        return f"ladder {said(sets[:2])}{then}"
    start, end = ("in" if starts_in(row, under) else "out"), ("in" if ends_in(row, under) else "out")
    return f"start {start} {said(sets[:2])}{then}; end {end}"


def strand_words(piece: Piece) -> tuple[StrandWords, ...]:
    """Words for every strand, in working order."""
    return tuple(_strand(strand) for strand in piece.worked_strands)


def _strand(strand: Strand) -> StrandWords:
    parts = [said([(key,) for key in strand.beads])] if strand.beads else []
    parts += [f"end {said([(key,) for key in strand.end])}"] if strand.end else []
    total = len(strand.all)
    return StrandWords(strand.number, total, f"{total} bead{'' if total == 1 else 's'}", "; ".join(parts))
