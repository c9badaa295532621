"""Flat peyote: rows 1 and 2 are strung as one line, then every row puts a stitch into each gap of the row before.

Columns of stitches stand side by side, every other one half a bead higher. An even number of columns is begun at the
side where row 2 stands at the edge, so that the last stitch strung is one of row 1 and row 3 begins above it. With an odd
number row 1 stands at both edges; then every other row ends above an edge stitch with nothing beyond it to pass into,
and the thread goes back through that edge stitch: the edge turn.
"""

from __future__ import annotations

from msgspec.structs import replace

from ..events import Anchor, Event, Pass, Section
from ..language import _
from ..piece import RIGHT, Fault, Piece, Row, opposite
from ..runs import said
from . import lying
from .lying import Spot, from_strand, row_count, stitch_at, take, through, worked

__all__ = ["DROPS", "INTERLOCKED", "LYING", "NAME", "PARTED", "body", "directed", "faults", "from_strand", "row_count", "row_text", "to_hanger",
           "to_strand", "told_together", "warps"]

NAME = "flat peyote"
LYING, INTERLOCKED, PARTED, DROPS = True, True, False, range(1, 5)
FEWEST_ROWS = 4


def directed(rows: tuple[Row, ...]) -> tuple[Row, ...]:
    """Rows 1 and 2 run the same way; with an even number of columns, away from the side where row 2 stands at the edge."""
    direction = rows[0].direction
    if len(rows) > 1 and rows[0].stitches and rows[1].stitches and len(rows[0].stitches) == len(rows[1].stitches):
        direction = RIGHT if rows[0].last > rows[1].last else opposite(RIGHT)
    turned = opposite(direction)
    return tuple(replace(row, direction=direction if row.number <= 2 or row.number % 2 == 0 else turned) for row in rows)


def faults(piece: Piece) -> tuple[Fault, ...]:
    """Every reason why the body cannot be worked; empty if it can."""
    found = lying.shared_faults(piece, NAME)
    if len(piece.rows) < FEWEST_ROWS:
        found.append(Fault(len(piece.rows), piece.rows[-1].first, f"peyote has only {len(piece.rows)} of the {FEWEST_ROWS} rows that it takes",
                           "rows 1 and 2 are strung; draw two or more rows above them"))
    if found:
        return tuple(found)
    return tuple(fault for fault in (_first_rows(piece), *map(lambda row: _edges(piece, row), piece.rows[2:])) if fault)


def _first_rows(piece: Piece) -> Fault | None:
    first, second = piece.rows[:2]
    if (first.first - second.first) % 2 == 0:
        return Fault(2, second.first, "row 2 stands straight above row 1", "move it one column to the left or right, into the gaps of row 1")
    if abs(first.first - second.first) > 1 or abs(first.last - second.last) > 1:
        return Fault(2, second.first, "row 2 does not fill the gaps of row 1", "rows 1 and 2 are strung as one line, a stitch of each in turn")
    if len(second.stitches) > len(first.stitches):
        return Fault(2, second.first, "row 2 is longer than row 1, so the work could not be turned after the first line",
                     "with an odd number of columns row 1 reaches both edges: leave out row 1, or draw a row below it")
    return None


def _edges(piece: Piece, row: Row) -> Fault | None:
    """From row 3 on, every row has the columns of the row before the last."""
    other = piece.rows[row.number - 3]
    if (row.first, row.last) == (other.first, other.last):
        return None
    at = row.first if row.first != other.first else row.last
    return Fault(row.number, at, f"row {row.number} does not stand on the columns of row {other.number}",
                 "the edges of flat peyote are straight: every second row has the same columns")


def body(piece: Piece) -> list[Event]:
    """The body thread from its anchor to the end of the last row."""
    right = piece.base.direction == RIGHT
    line = lower_edge(piece) if right else lower_edge(piece)[::-1]
    events: list[Event] = [Anchor(Section("row", 1))]
    events += [take(Section("row", spot[0].number), [spot], right) for spot in line]
    for row in piece.rows[2:]:
        events += _row(piece, row)
    return events


def _row(piece: Piece, row: Row) -> list[Event]:
    """A stitch into each gap: pick it up, pass through the next stitch of the row before."""
    section, right, events = Section("row", row.number), row.direction == RIGHT, []
    for spot in worked(row):
        events += [take(section, [spot], right), _into(piece, section, spot, right)]
    return events


def _into(piece: Piece, section: Section, spot: Spot, right: bool) -> Pass:
    row, at = spot[0], spot[0].stitches[spot[1]].at
    beyond = stitch_at(piece.under(row), at + (1 if right else -1))
    return through(section, [beyond], right) if beyond else through(section, [stitch_at(piece.rows[row.number - 3], at)], not right)


def turns_at_edge(row: Row, under: Row) -> bool:
    """Whether a row ends above an edge stitch with nothing beyond it."""
    return row.number > 2 and (row.last > under.last if row.direction == RIGHT else row.first < under.first)


def lower_edge(piece: Piece) -> list[Spot]:
    """The stitches of rows 1 and 2 from the left: the first line."""
    spots = [(row, index) for row in piece.rows[:2] for index in range(len(row.stitches))]
    return sorted(spots, key=lambda spot: spot[0].stitches[spot[1]].at)


def warps(piece: Piece) -> int:
    """Peyote is worked in the hand."""
    return 0


def told_together(piece: Piece) -> list[tuple[Row, ...]]:
    """Rows 1 and 2 are strung in one line."""
    return [piece.rows[:2], *((row,) for row in piece.rows[2:])]


def row_text(piece: Piece, row: Row, sets: list[tuple[str, ...]]) -> str:
    """The words of a row after its number, direction and count."""
    under = piece.under(row)
    if under is None:
        return _("string {beads}", beads=said(sets))
    return said(sets) + (_("; edge turn") if turns_at_edge(row, under) else "")


def to_strand(piece: Piece, section: Section, index: int, before: int | None) -> list[Event]:
    """Along rows 1 and 2 to the next strand; strands hang from row 1."""
    return lying.to_strand(lower_edge(piece), piece, section, index, before)


def to_hanger(piece: Piece, left: int, right: int) -> tuple[list[Spot], list[Spot], bool]:
    """Stitches to pass from the end of the last row inward, those under the hanger back outward, and whether inward is to the right.

    Inward the needle keeps two rows below the top, where it passes nothing that it has just come out of.
    """
    top, below = piece.rows[-1], piece.rows[-2]
    inward, two_below = top.direction != RIGHT, (piece.rows[-3], piece.rows[-4])
    ends = sorted((top.stitches[left].at, top.stitches[right].at))
    near, far = ends if inward else ends[::-1]
    step = 1 if inward else -1
    edge = {True: min(top.first, below.first), False: max(top.last, below.last)}[inward]
    start = edge + step if turns_at_edge(top, below) else edge
    way = [spot for at in range(start, far + step, step) for row in two_below if (spot := stitch_at(row, at))]
    crown = [spot for at in range(far, near - step, -step) for row in (top, below) if (spot := stitch_at(row, at))]
    return way, crown, inward
