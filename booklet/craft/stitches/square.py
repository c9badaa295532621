"""Square stitch: row 1 is strung, then every bead is sewn to the bead below it. The work is turned after each row."""

from __future__ import annotations

from ..events import Anchor, Event, Section
from ..language import _
from ..piece import RIGHT, Fault, Piece, Row
from ..runs import said
from . import lying
from .lying import each_alone as told_together
from .lying import Spot, bottom_row, end_reach, end_said, from_strand, row_count, start_reach, start_said, stitch_at, take, through, worked

__all__ = ["DROPS", "INTERLOCKED", "LYING", "NAME", "PARTED", "body", "directed", "faults", "from_strand", "row_count", "row_text", "to_hanger",
           "to_strand", "told_together", "warps"]

NAME = "square stitch"
LYING, INTERLOCKED, PARTED, DROPS = True, False, False, (1,)


def directed(rows: tuple[Row, ...]) -> tuple[Row, ...]:
    """Back and forth, as rows are numbered."""
    return rows


def faults(piece: Piece) -> tuple[Fault, ...]:
    """Every reason why the body cannot be worked; empty if it can."""
    found = lying.shared_faults(piece, NAME)
    if len(piece.rows) < 2:
        found.append(Fault(1, piece.base.first, "row 1 is only strung, and there is no row that holds it", "draw two rows or more"))
    if found:
        return tuple(found)
    for row, under in zip(piece.rows[1:], piece.rows):
        found += _row_faults(piece, row, under)
    return tuple(found)


def _row_faults(piece: Piece, row: Row, under: Row) -> list[Fault]:
    name, below, number = f"row {row.number}", f"row {under.number}", row.number
    if (row.first - under.first) % 2:
        return [Fault(number, row.first, f"{name} stands between the stitches of {below}", "move it one character to the left or right, straight above them")]
    start, end = start_reach(row, under), end_reach(row, under)
    first, last = row.worked[0].at, row.worked[-1].at
    if row.first > under.last or row.last < under.first:
        return [Fault(number, first, f"{name} stands beside {below} and not on it", f"let it stand on a stitch of {below}")]
    found = []
    if start > 0:
        found.append(Fault(number, first, f"{name} starts {_many(start)} further out than {below} ends",
                           f"stitches can be added only where a row ends: add them to {below}, or start {name} straight above its end"))
    if number == 2 and (start < 0 or end < 0):
        found.append(Fault(2, first if start < 0 else last, "row 2 does not cover row 1, which is only strung", "make rows 1 and 2 equally long"))
    if end > 0 and not _held(piece, row, under):
        found.append(Fault(number, last, f"no row holds the {_many(end)} that {name} adds at its end",
                           f"let row {number + 1} start straight above them and cover them"))
    return found


def _many(count: int) -> str:
    return "1 stitch" if count == 1 else f"{count} stitches"


def _held(piece: Piece, row: Row, under: Row) -> bool:
    """Whether the next row is sewn to every stitch that this one adds at its end."""
    if row.number == len(piece.rows):
        return False
    taken = {stitch.at for stitch in piece.rows[row.number].stitches}
    return all(stitch.at in taken for stitch in row.stitches if not stitch_at(under, stitch.at))


def body(piece: Piece) -> list[Event]:
    """The body thread from its anchor to the end of the last row."""
    base = piece.base
    events: list[Event] = [Anchor(Section("row", 1)), take(Section("row", 1), worked(base), base.direction == RIGHT)]
    for row, under in zip(piece.rows[1:], piece.rows):
        events += _inward(piece, row, under) + _row(row, under)
    return events


def _inward(piece: Piece, row: Row, under: Row) -> list[Event]:
    """To a row that starts further in: back through the row before the last, then out through the stitch to begin above."""
    steps = -start_reach(row, under)
    if not steps:
        return []
    section, right, deeper = Section("row", row.number), row.direction == RIGHT, piece.rows[under.number - 2]
    ends = worked(under)[::-1][:steps + 1]
    below = [stitch_at(deeper, under.stitches[index].at) for _, index in ends]
    return [through(section, below, right), through(section, ends[-1:], not right)]


def _row(row: Row, under: Row) -> list[Event]:
    """Pick a bead up, pass back through the bead below and through the new one again; at an end further out, string the rest."""
    section, right, events = Section("row", row.number), row.direction == RIGHT, []
    for spot in worked(row):
        below = stitch_at(under, row.stitches[spot[1]].at)
        events.append(take(section, [spot], right))
        events += [through(section, [below], not right), through(section, [spot], right)] if below else []
    return events


def warps(piece: Piece) -> int:
    """Square stitch is worked in the hand."""
    return 0


def row_text(piece: Piece, row: Row, sets: list[tuple[str, ...]]) -> str:
    """The words of a row after its number, direction and count."""
    under = piece.under(row)
    if under is None:
        return _("string {beads}", beads=said(sets))
    start, end = start_reach(row, under), end_reach(row, under)
    return "; ".join(part for part in (start_said(start), said(sets), end_said(end)) if part)


def to_strand(piece: Piece, section: Section, index: int, before: int | None) -> list[Event]:
    """Along row 1 to the next strand."""
    return lying.to_strand(bottom_row(piece), piece, section, index, before)


def to_hanger(piece: Piece, left: int, right: int) -> tuple[list[Spot], list[Spot], bool]:
    """Stitches of the row below to pass from the end of the last row inward, those under the hanger back outward, and
    whether inward is to the right."""
    top, below = piece.rows[-1], piece.rows[-2]
    inward = top.direction != RIGHT
    way = [spot for _, index in worked(top)[::-1] if (index <= right if inward else index >= left)
           if (spot := stitch_at(below, top.stitches[index].at))]
    crown = [(top, index) for index in range(left, right + 1)]
    return way, crown[::-1] if inward else crown, inward
