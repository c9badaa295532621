"""What stitches share whose beads lie with their holes along the row: peyote, square stitch and loom work.

A pass through such beads goes to the right or to the left as the piece hangs; `up` of a Pass then means to the right.
A bead of the body is found by its row and the stitch's index from the left.
"""

from __future__ import annotations

from collections.abc import Sequence

from ..events import Event, Pass, PickUp, Section, stitch_places, worked_indexes
from ..language import _, ngettext
from ..piece import RIGHT, Fault, Piece, Row

Spot = tuple[Row, int]   # a stitch: its row, and its index there


def through(section: Section, spots: Sequence[Spot], right: bool) -> Pass:
    """Through stitches one after the other, all in one direction."""
    return Pass(section, tuple(place for row, index in spots for place in stitch_places(row, index, right)), right)


def take(section: Section, spots: Sequence[Spot], right: bool) -> PickUp:
    """Pick stitches up one after the other, on a thread that runs in one direction."""
    return PickUp(section, tuple(place for row, index in spots for place in stitch_places(row, index, right)))


def worked(row: Row) -> list[Spot]:
    """The stitches of a row in working order."""
    return [(row, index) for index in worked_indexes(row)]


def stitch_at(row: Row | None, at: int) -> Spot | None:
    """The stitch of a row at a chart position; None if there is none."""
    return next(((row, index) for index, stitch in enumerate(row.stitches) if stitch.at == at), None) if row else None


def to_strand(edge: Sequence[Spot], piece: Piece, section: Section, index: int, before: int | None) -> list[Event]:
    """Along the lower edge, the way row 1 runs, to where strand `index` hangs: out of the far side of its stitch.

    `edge` has the stitches of the lower edge from the left; `before` is the index of the stitch that the needle came through last.
    """
    right = piece.base.direction == RIGHT
    spots = list(edge) if right else list(edge)[::-1]
    goal = spots.index((piece.base, index))
    start = goal if before is None else spots.index((piece.base, before)) + 1
    return [through(section, spots[start:goal + 1], right)] if goal >= start else []


def from_strand(piece: Piece, section: Section, index: int) -> list[Event]:
    """Through the stitch above the strand once more, the same way, so that the strand hangs under its middle."""
    return [through(section, [(piece.base, index)], piece.base.direction == RIGHT)]


def shared_faults(piece: Piece, name: str) -> list[Fault]:
    """A base row that is not the bottom row, and gaps."""
    found = [Fault(1, piece.base.first, f"row 1 of {name} must be the bottom row of the chart",
                   "write base: bottom, or leave base out")] if piece.lower else []
    return found + [
        Fault(row.number, right.at, f"row {row.number} has a gap after its stitch {index}",
              "a row is one unbroken line of stitches" if right.at - left.at > 2 else "no two stitches may touch")
        for row in piece.rows for index, (left, right) in enumerate(zip(row.stitches, row.stitches[1:]), 1)
        if right.at - left.at != 2]


def each_alone(piece: Piece) -> list[tuple[Row, ...]]:
    """Every row has a line of words of its own."""
    return [(row,) for row in piece.rows]


def bottom_row(piece: Piece) -> list[Spot]:
    """The stitches of row 1 from the left."""
    return [(piece.base, index) for index in range(len(piece.base.stitches))]


def row_count(stitches: int, drop: int, level: int) -> str:
    """ "9 stitches", "5 sets"."""
    return ngettext("{count} stitch", "{count} stitches", stitches) if drop == 1 else ngettext("{count} set", "{count} sets", stitches)


def start_reach(row: Row, under: Row) -> int:
    """Stitches by which a row starts further out than the row under it; negative further in."""
    return (under.first - row.first if row.direction == RIGHT else row.last - under.last) // 2


def end_reach(row: Row, under: Row) -> int:
    """Stitches by which a row ends further out than the row under it; negative further in."""
    return (row.last - under.last if row.direction == RIGHT else under.first - row.first) // 2


def start_said(reach: int) -> str:
    """"start 2 in", "start 1 out"; nothing for a row that starts at the edge."""
    return "" if not reach else _("start {count} out", count=reach) if reach > 0 else _("start {count} in", count=-reach)


def end_said(reach: int) -> str:
    """"end 2 in", "end 1 out"; nothing for a row that ends at the edge."""
    return "" if not reach else _("end {count} out", count=reach) if reach > 0 else _("end {count} in", count=-reach)
