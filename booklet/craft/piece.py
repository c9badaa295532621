"""The piece: rows of stitches, strands of fringe, hangers, and whether they can be worked.

Positions are chart columns in half-stitch units: neighbours of a row stand 2 apart, and a row
stands 1 to either side of the row it hangs on (in square stitch and loom work straight above it). Lists of stitches run left to right as the piece hangs;
the beads of a stitch run from low to high, low being next to the base row.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import cached_property

from msgspec import Struct, field
from msgspec.structs import replace

from .beads import Bead
from .strand import Strand

LEFT, RIGHT = "left", "right"


def opposite(side: str) -> str:
    """The other of left and right."""
    return LEFT if side == RIGHT else RIGHT


class Stitch(Struct, frozen=True):
    """One place in a row: `drop` beads stacked on one thread."""

    at: int                  # position in half stitches
    beads: tuple[str, ...]   # bead keys from low (next to the base row) to high; from the left where a set lies along its row


class Row(Struct, frozen=True):
    """A row of the body, or one part of a row that has a gap."""

    number: int                    # of the chart row; 1 is the base row
    level: int                     # rows above the base row as it hangs: 0 base, 1, 2 ..; below it -1, -2 ..
    direction: str                 # how it runs on the chart as it hangs: "right" is left to right
    stitches: tuple[Stitch, ...]   # left to right as it hangs
    part: str = ""                 # "a", "b" .. in working order where the chart row has more than one part
    before: int = 0                # stitches of the same chart row to the left of this part
    new_start: bool = False        # the row under it was left for another part, so the needle has to come back to it

    @property
    def name(self) -> str:
        """Number and part, as printed: "5", "5b"."""
        return f"{self.number}{self.part}"

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


class Hanger(Struct, frozen=True):
    """What carries the piece: a thread guard, a closed ring that is stitched on, or a loop of beads."""

    kind: str = "none"            # guard | ring | loop | none
    beads: tuple[str, ...] = ()   # of a loop
    at: str = "middle"            # where on the top row it sits: left | middle | right
    span: float = GUARD_SPAN      # mm between the legs of a guard
    size: float = RING_SIZE       # mm across a ring
    passes: int = HANGER_PASSES   # of the thread through it


class Piece(Struct, frozen=True, dict=True):
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

    @cached_property
    def upper(self) -> tuple[Row, ...]:
        """Rows above the base row, in working order."""
        return tuple(row for row in self.rows if row.level > 0)

    @cached_property
    def lower(self) -> tuple[Row, ...]:
        """Rows below the base row, in working order."""
        return tuple(row for row in self.rows if row.level < 0)

    def under(self, row: Row) -> Row | None:
        """The row on which `row` hangs, one step nearer the base; None for the base row."""
        return self._carriers.get(row.name)

    def at_level(self, level: int) -> tuple[Row, ...]:
        """The row at a level, or its parts in working order."""
        return self._levels.get(level, ())

    @cached_property
    def _levels(self) -> dict[int, tuple[Row, ...]]:
        levels: dict[int, tuple[Row, ...]] = {}
        for row in self.rows:
            levels[row.level] = (*levels.get(row.level, ()), row)
        return levels

    @cached_property
    def _carriers(self) -> dict[str, Row | None]:
        return {row.name: stands_on(row, self.at_level(nearer_base(row.level))) for row in self.rows if row.level}

    @cached_property
    def drawn(self) -> tuple[Row, ...]:
        """The rows of the chart from the lowest up, each as one row with its gaps."""
        return tuple(replace(parts[0], part="", before=0, stitches=tuple(sorted((s for part in parts for s in part.stitches), key=lambda s: s.at)))
                     for _, parts in sorted(self._levels.items()))

    @cached_property
    def sets(self) -> dict[int, tuple[tuple[str, ...], ...]]:
        """The beads of every stitch, from the left, by the number of the chart row."""
        return {row.number: tuple(stitch.beads for stitch in row.stitches) for row in self.drawn}

    def holds(self, number: int, index: int) -> Row:
        """The row, or the part of it, that holds stitch `index` (from the left, 0 first) of chart row `number`."""
        return next(row for row in self._numbered[number] if row.before <= index < row.before + len(row.stitches))

    @cached_property
    def _numbered(self) -> dict[int, tuple[Row, ...]]:
        return {parts[0].number: parts for parts in self._levels.values()}

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


def nearer_base(level: int) -> int:
    """The level of the row that a row at `level` hangs on."""
    return level - 1 if level > 0 else level + 1


def stands_on(row: Row, parts: Sequence[Row]) -> Row | None:
    """The part that carries `row`: the one with most thread bridges under its stitches, else the nearest; None without parts."""
    if len(parts) < 2 or not row.stitches:
        return parts[0] if parts else None
    return max(parts, key=lambda part: (len(bridged(row, part)), -max(part.first - row.last, row.first - part.last)))


def bridged(row: Row, under: Row) -> list[Stitch]:
    """The stitches of `row` that stand between two stitches of `under`, where there is a thread bridge."""
    return [stitch for stitch in row.stitches if under.first < stitch.at < under.last]


def piece_rows(drawn: list[list[Stitch]], base: int, hand: str, parted: bool = True) -> tuple[Row, ...]:
    """Number and direct the rows of a chart.

    `drawn` holds the rows from the bottom up, each left to right, beads bottom bead first as the piece hangs;
    `base` is the index of the base row in it. Rows are worked from the base row to the top, then
    from below the base row down; they go back and forth without a break. Where rows have parts, the part next to the needle
    is worked to its end before the next one is begun; without `parted` a row with a gap is left whole.
    """
    first = Row(1, 0, hand, tuple(drawn[base]))
    rows, number, direction = [first], 1, hand
    for indexes in (range(base + 1, len(drawn)), range(base - 1, -1, -1)):
        levels = [[first]]
        for index in indexes:
            number, direction = number + 1, opposite(direction)
            stitches = drawn[index]
            if index < base:  # the piece is turned top to bottom: the upper bead is the low one
                stitches = [Stitch(s.at, s.beads[::-1]) for s in stitches]
            row = Row(number, index - base, direction, tuple(stitches))
            levels.append(_parts(row) if parted else [row])
        rows += _in_working_order(levels)
    return tuple(_lettered(rows))


def _parts(row: Row) -> list[Row]:
    """The row cut at its gaps; parts in the order in which the row runs."""
    ends = [i for i, (s, after) in enumerate(zip(row.stitches, row.stitches[1:]), 1) if after.at - s.at != 2]
    cuts = [0, *ends, len(row.stitches)]
    parts = [replace(row, stitches=row.stitches[start:end], before=start) for start, end in zip(cuts, cuts[1:])]
    return parts if row.direction == RIGHT else parts[::-1]


def _in_working_order(levels: list[list[Row]]) -> list[Row]:
    """Every part after the base row: a part, then all that stands on it, then its neighbour."""
    carried: dict[Row, list[Row]] = {}
    for under, parts in zip(levels, levels[1:]):
        for part in parts:
            carried.setdefault(stands_on(part, under), []).append(part)
    order: list[Row] = []
    waiting = carried.get(levels[0][0], [])[::-1]
    starts = set(waiting[:-1])
    while waiting:
        row = waiting.pop()
        order.append(replace(row, new_start=row in starts))
        above = carried.get(row, [])
        starts.update(above[1:])
        waiting += above[::-1]
    return order


def _lettered(rows: Sequence[Row]) -> list[Row]:
    """Letters for the parts of chart rows that have more than one: a to z, then aa to zz."""
    parts: dict[int, list[Row]] = {}
    for row in rows:
        parts.setdefault(row.number, []).append(row)
    letters = {row: chr(97 + rank % 26) * (1 + rank // 26) if len(same) > 1 else ""
               for same in parts.values() for rank, row in enumerate(same)}
    return [replace(row, part=letters[row]) for row in rows]


class Fault(Struct, frozen=True):
    """Why a row cannot be worked, and what would make it workable."""

    row: int
    at: int      # position of the stitch in question
    what: str
    cure: str
