"""The piece: rows of stitches, strands of fringe, hangers, and whether they can be worked.

Positions are chart columns in half-stitch units: neighbours of a row stand 2 apart, and a row
stands 1 to either side of the row it hangs on (in square stitch and loom work straight above it). Lists of stitches run left to right as the piece hangs;
the beads of a stitch run from low to high, low being next to the base row.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from .beads import Bead
from .strand import Strand

LEFT, RIGHT = "left", "right"


def opposite(side: str) -> str:
    """The other of left and right."""
    return LEFT if side == RIGHT else RIGHT


@dataclass(frozen=True)
class Stitch:
    """One place in a row: `drop` beads stacked on one thread."""

    at: int                  # position in half stitches
    beads: tuple[str, ...]   # bead keys from low (next to the base row) to high; from the left where a set lies along its row


@dataclass(frozen=True)
class Row:
    """A row of the body."""

    number: int                    # in working order; 1 is the base row
    level: int                     # rows above the base row as it hangs: 0 base, 1, 2 ..; below it -1, -2 ..
    direction: str                 # how it runs on the chart as it hangs: "right" is left to right
    stitches: tuple[Stitch, ...]   # left to right as it hangs

    @property
    def first(self) -> int:
        """Position of the leftmost stitch."""
        return self.stitches[0].at

    @property
    def last(self) -> int:
        """Position of the rightmost stitch."""
        return self.stitches[-1].at

    @property
    def worked(self) -> tuple[Stitch, ...]:
        """The stitches in the order in which they are worked."""
        return self.stitches if self.direction == RIGHT else self.stitches[::-1]


GUARD_SPAN = 3.0   # mm from leg to leg of a small thread guard, which is about 4 mm across; from memory
RING_SIZE = 4.0    # mm across a small closed ring; from memory
HANGER_PASSES = 3  # of the thread through a hanger; common practice, no source


@dataclass(frozen=True)
class Hanger:
    """What carries the piece: a thread guard, a closed ring that is stitched on, or a loop of beads."""

    kind: str = "none"            # guard | ring | loop | none
    beads: tuple[str, ...] = ()   # of a loop
    at: str = "middle"            # where on the top row it sits: left | middle | right
    span: float = GUARD_SPAN      # mm between the legs of a guard
    size: float = RING_SIZE       # mm across a ring
    passes: int = HANGER_PASSES   # of the thread through it


@dataclass(frozen=True)
class Piece:
    """One earring or pendant, ready to be worked."""

    legend: Mapping[str, Bead]
    drop: int
    hand: str                      # "right": row 1 runs left to right
    rows: tuple[Row, ...]          # in working order
    strands: tuple[Strand, ...] = ()
    hangers: tuple[Hanger, ...] = ()
    stitch: str = "brick"          # a name in craft.stitches.STITCHES
    hang: str = "base"             # where the fringe hangs: a name in craft.places.HANGS
    charms: Mapping[str, float] = field(default_factory=dict)   # how far a charm hangs down, mm, by its name

    @property
    def base(self) -> Row:
        return self.rows[0]

    @property
    def upper(self) -> tuple[Row, ...]:
        """Rows above the base row, in working order."""
        return tuple(row for row in self.rows if row.level > 0)

    @property
    def lower(self) -> tuple[Row, ...]:
        """Rows below the base row, in working order."""
        return tuple(row for row in self.rows if row.level < 0)

    def under(self, row: Row) -> Row | None:
        """The row on which `row` hangs, one step nearer the base; None for the base row."""
        if row.level == 0:
            return None
        step = 1 if row.level > 0 else -1
        return next(other for other in self.rows if other.level == row.level - step)

    @property
    def along(self) -> str:
        """The way in which row 1 and the fringe are worked, as the piece hangs."""
        return self.base.direction if self.rows else self.hand

    @property
    def worked_strands(self) -> tuple[Strand, ...]:
        """Strands in working order: from the side on which row 1 starts, each where the needle goes down for it."""
        away = 1 if self.along == RIGHT else -1

        def order(strand: Strand) -> tuple[int, bool, int]:
            start = strand.span(self.along)[0]
            return away * start, start != strand.number, away * strand.number

        return tuple(sorted(self.strands, key=order))


def piece_rows(drawn: list[list[Stitch]], base: int, hand: str) -> tuple[Row, ...]:
    """Number and direct the rows of a chart.

    `drawn` holds the rows from the bottom up, each left to right, beads bottom bead first as the piece hangs;
    `base` is the index of the base row in it. Rows are worked from the base row to the top, then
    from below the base row down; they go back and forth without a break.
    """
    order = [*range(base, len(drawn)), *range(base - 1, -1, -1)]
    rows, direction = [], hand
    for number, index in enumerate(order, 1):
        stitches = drawn[index]
        if index < base:  # the piece is turned top to bottom: the upper bead is the low one
            stitches = [Stitch(s.at, s.beads[::-1]) for s in stitches]
        rows.append(Row(number, index - base, direction, tuple(stitches)))
        direction = opposite(direction)
    return tuple(rows)


@dataclass(frozen=True)
class Fault:
    """Why a row cannot be worked, and what would make it workable."""

    row: int
    at: int      # position of the stitch in question
    what: str
    cure: str
