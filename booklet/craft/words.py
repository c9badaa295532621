"""The written instructions of rows and strands, as they stand in the book.

Beads are named in the order in which the needle picks them up. Every line can be read back:
`craft.replay` rebuilds the chart from the lines alone, and every build does so.
"""

from __future__ import annotations

from dataclasses import dataclass

from .events import Section
from .needle import path
from .piece import RIGHT, Piece, Strand
from .runs import said
from .stitches import stitch_of


@dataclass(frozen=True)
class RowWords:
    """The words of one row."""

    number: int      # of the first row, where several are told in one line
    name: str        # "Row 3", "Rows 1 and 2"
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
        return f"{self.name} {self.arrow} {self.count}: {self.text}"


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
    needle, stitch = path(piece), stitch_of(piece)
    words = []
    for rows in stitch.told_together(piece):
        row, numbers = rows[0], [each.number for each in rows]
        keys = [piece.rows[place.line - 1].stitches[place.index].beads[place.level]
                for place in needle.picked_up(*(Section("row", number) for number in numbers))]
        sets = [tuple(keys[i:i + piece.drop]) for i in range(0, len(keys), piece.drop)]
        name = f"Rows {' and '.join(map(str, numbers))}" if len(rows) > 1 else f"Row {row.number}"
        words.append(RowWords(row.number, name, row.direction, row.level, len(sets), stitch.row_count(len(sets), piece.drop, row.level),
                              stitch.row_text(row, piece.under(row), sets, piece.drop)))
    return tuple(words)


def strand_words(piece: Piece) -> tuple[StrandWords, ...]:
    """Words for every strand, in working order."""
    return tuple(_strand(strand) for strand in piece.worked_strands)


def _strand(strand: Strand) -> StrandWords:
    parts = [said([(key,) for key in strand.beads])] if strand.beads else []
    parts += [f"end {said([(key,) for key in strand.end])}"] if strand.end else []
    total = len(strand.all)
    return StrandWords(strand.number, total, f"{total} bead{'' if total == 1 else 's'}", "; ".join(parts))
