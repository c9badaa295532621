"""Loom work: the beads of a row are pressed up between stretched warps, and the thread goes back through them above the warps.

There is one warp more than the work has beads across. The thread comes back to the side where it began, so every row
runs the same way.
"""

from __future__ import annotations

from msgspec.structs import replace

from ..events import Anchor, Event, Section
from ..language import ngettext
from ..piece import RIGHT, Fault, Piece, Row
from ..runs import said
from . import lying
from .lying import each_alone as told_together
from .lying import Spot, bottom_row, end_reach, end_said, from_strand, start_reach, start_said, stitch_at, take, through, worked

__all__ = ["DROPS", "INTERLOCKED", "LYING", "NAME", "PARTED", "body", "directed", "faults", "from_strand", "row_count", "row_text", "to_hanger",
           "to_strand", "told_together", "warps"]

NAME = "loom work"
LYING, INTERLOCKED, PARTED, DROPS = True, False, False, (1,)


def directed(rows: tuple[Row, ...]) -> tuple[Row, ...]:
    """All the same way."""
    return tuple(replace(row, direction=rows[0].direction) for row in rows)


def faults(piece: Piece) -> tuple[Fault, ...]:
    """Every reason why the body cannot be worked; empty if it can."""
    found = lying.shared_faults(piece, NAME)
    for row, under in zip(piece.rows[1:], piece.rows):
        name, below = f"row {row.number}", f"row {under.number}"
        if (row.first - under.first) % 2:
            found.append(Fault(row.number, row.first, f"{name} stands between the beads of {below}",
                               "move it one character to the left or right: the beads of a column lie between the same two warps"))
        elif row.first > under.last or row.last < under.first:
            found.append(Fault(row.number, row.worked[0].at, f"{name} stands beside {below} and not on it", f"let it share a column with {below}"))
    return tuple(found)


def body(piece: Piece) -> list[Event]:
    """The working thread from its anchor to the end of the last row."""
    events: list[Event] = [Anchor(Section("row", 1))]
    for row in piece.rows:
        section, right, under = Section("row", row.number), row.direction == RIGHT, piece.under(row)
        inward = worked(under)[:max(0, -start_reach(row, under))] if under else []
        events += [through(section, inward, right)] if inward else []
        events += [take(section, worked(row), right), through(section, worked(row)[::-1], not right)]
    return events


def warps(piece: Piece) -> int:
    """One more than the work has beads across."""
    return (max(row.last for row in piece.rows) - min(row.first for row in piece.rows)) // 2 + 2


def row_count(stitches: int, drop: int, level: int) -> str:
    """ "9 beads"."""
    return ngettext("{count} bead", "{count} beads", stitches)


def row_text(piece: Piece, row: Row, sets: list[tuple[str, ...]]) -> str:
    """The words of a row after its number, direction and count."""
    under = piece.under(row)
    start, end = (start_reach(row, under), end_reach(row, under)) if under else (0, 0)
    return "; ".join(part for part in (start_said(start), said(sets), end_said(end)) if part)


def to_strand(piece: Piece, section: Section, index: int, before: int | None) -> list[Event]:
    """Along row 1 to the next strand."""
    return lying.to_strand(bottom_row(piece), piece, section, index, before)


def to_hanger(piece: Piece, left: int, right: int) -> tuple[list[Spot], list[Spot], bool]:
    """Stitches to pass from the end of the last row inward, those under the hanger back outward, and whether inward is to the right.

    Inward the needle takes the row below the top where that reaches far enough; the warps hold either row.
    """
    top, inward = piece.rows[-1], piece.rows[-1].direction == RIGHT
    way = [(row, index) for row, index in worked(top) if (index <= right if inward else index >= left)]
    lower = [stitch_at(piece.under(top), top.stitches[index].at) for _, index in way]
    crown = [(top, index) for index in range(left, right + 1)]
    return way if None in lower else lower, crown[::-1] if inward else crown, inward
