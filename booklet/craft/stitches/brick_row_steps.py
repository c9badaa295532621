"""The steps of the rows above and below the base: how they start, run and end."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from msgspec import Struct

from ..language import Noun, _, ngettext, noun, sentences
from ..piece import Piece, Row
from ..saying import Step, rows_said, sentence, unit_of
from .brick_edges import Edges, edges, hung_indexes


class _Hung(Struct, frozen=True):
    """A row, the row it hangs on, and how it starts and ends there."""

    row: Row
    under: Row
    place: Edges

    @property
    def count(self) -> int:
        """Stitches that hang on thread bridges."""
        return len(self.row.stitches) - self.place.ladder_start - self.place.ladder_end

    @property
    def inside(self) -> bool:
        """Whether the row starts from a stitch that is not at the edge."""
        return self.place.travel > 0 or self.row.new_start

    @property
    def one_bridge(self) -> bool:
        """Whether the second stitch stands outside, so that it hangs on the bridge of the first."""
        at = self.row.stitches[hung_indexes(self.row, self.place)[1][1]].at
        return not self.under.first < at < self.under.last


def row_steps(piece: Piece) -> list[Step | None]:
    """Each kind of start, run and end, told once, with the rows that need it."""
    every = [_Hung(row, piece.under(row), edges(row, piece.under(row))) for row in piece.rows[1:]]
    long = [hung for hung in every if len(hung.row.stitches) > 1]

    def told(make: Callable[[Piece, list[_Hung]], Step], rows: Sequence[_Hung], wanted: Callable[[_Hung], bool]) -> Step | None:
        found = [hung for hung in rows if wanted(hung)]
        return make(piece, found) if found else None

    return [told(_start_in, long, lambda hung: hung.place.starts_in), told(_start_out, long, lambda hung: not hung.place.starts_in),
            told(_travel, every, lambda hung: hung.place.travel > 0), told(_start_ladder, long, lambda hung: hung.place.ladder_start > 0),
            told(_row_stitches, long, lambda hung: hung.count > 2),
            told(_end_in, long, lambda hung: hung.place.ends_in and not hung.place.short), told(_end_out, long, lambda hung: not hung.place.ends_in),
            told(_end_short, every, lambda hung: hung.place.short > 0), told(_end_ladder, long, lambda hung: hung.place.ladder_end > 0),
            told(_lone, every, lambda hung: len(hung.row.stitches) == 1)]


def _said(rows: Sequence[_Hung]) -> str:
    return rows_said([hung.row for hung in rows])


def _start(rows: Sequence[_Hung]) -> str:
    return ngettext("This is how {rows} starts.", "This is how {rows} start.", len(rows), rows=_said(rows))


def _pair(unit: Noun) -> str:
    """How the first two of a row are held, and where the thread is then."""
    return _("Pass up through the second {unit}, down through the first and up through the second again; "
             "this hides the thread at the edge. The thread exits the top of the second {unit}.", unit=unit)


def _exits(unit: Noun) -> str:
    return _("The thread exits the top of the last {unit}.", unit=unit)


def _start_in(piece: Piece, rows: list[_Hung]) -> Step:
    narrow = [hung for hung in rows if hung.one_bridge]
    return Step("row-start-in", _("Starting a row half a stitch in"), sentences(
        _start(rows),
        _("Turn the work. Pick up the first two {units} together. Skip the first thread bridge and pass under the second.", units=unit_of(piece, 2)),
        _("Where there is only one bridge ({rows}), use that one.", rows=_said(narrow)) if narrow else "", _pair(unit_of(piece))))


def _start_out(piece: Piece, rows: list[_Hung]) -> Step:
    unit, units, narrow = unit_of(piece), unit_of(piece, 2), [hung for hung in rows if hung.one_bridge]
    if all(hung.inside for hung in rows):
        take = _("Turn the work. Pick up the first two {units} together. Pass under the first thread bridge, so that the first {unit} hangs half "
                 "outward of the {unit} that the thread exits.", unit=unit, units=units)
    else:
        take = _("Turn the work. Pick up the first two {units} together. Pass under the first thread bridge, so that the first {unit} hangs half "
                 "over the edge.", unit=unit, units=units)
    return Step("row-start-out", _("Starting a row half a stitch out"), sentences(
        _start(rows), take, _("Where there is no bridge ahead ({rows}), use the one behind.", rows=_said(narrow)) if narrow else "", _pair(unit)))


def _travel(piece: Piece, rows: list[_Hung]) -> Step:
    unit = unit_of(piece)
    return Step("row-travel", _("Travelling in before a row"), sentences(
        ngettext("{rows} starts further in.", "{rows} start further in.", len(rows), rows=sentence(_said(rows))),
        _("Turn the work. Before you pick up anything, pass down through the next {unit} of the row under it and up through the one after it, as often as the words say "
          "({counts}); do not pull the edge together. Then start half a stitch in or out as if this {unit} were the edge, and count thread bridges from here. "
          "The thread exits the top of the last {unit} that you passed through.",
          unit=unit, counts=_numbers([(hung, hung.place.travel) for hung in rows], lambda count: unit_of(piece, count)))))


def _start_ladder(piece: Piece, rows: list[_Hung]) -> Step:
    return Step("row-start-ladder", _("Ladder stitches at the start of a row"), _(
        "In {rows} ladder {units} stand outward of the first {unit}. Start half a stitch out, and stop when you have passed "
        "down through the first {unit}. Add the ladder {units} outward, one at a time: pick one up, pass through the {unit} before "
        "it again in the direction in which the thread left it, then through the new one. Go back through them, each from the end "
        "where the thread is, down through the first {unit} and up through the second. The thread exits the top of the second {unit}.",
        rows=_said(rows), unit=unit_of(piece), units=unit_of(piece, 2)))


def _row_stitches(piece: Piece, rows: list[_Hung]) -> Step:
    return Step("row-stitches", _("Along the row"), sentences(
        _("In {rows}, work each further {unit} like this: pick it up, pass under the next thread bridge and back up through the {unit}.",
          rows=_said(rows), unit=unit_of(piece)),
        "" if piece.drop == 1 else _("Its beads are named from the top down, in the order of picking up."), _("The thread exits its top.")))


def _end_in(piece: Piece, rows: list[_Hung]) -> Step:
    unit = unit_of(piece)
    return Step("row-end-in", _("Ending a row half a stitch in"), sentences(
        _("In {rows} the last {unit} sits on the last thread bridge. Nothing is added.", rows=_said(rows), unit=unit), _exits(unit)))


def _end_out(piece: Piece, rows: list[_Hung]) -> Step:
    unit = unit_of(piece)
    if any(hung.place.ladder_end for hung in rows):
        hang = _("In {rows} hang the last {unit} before the ladder {units} on the last thread bridge too, so that two share it and the last one "
                 "stands half over the edge.", rows=_said(rows), unit=unit, units=unit_of(piece, 2))
    else:
        hang = _("In {rows} hang the last {unit} on the last thread bridge too, so that two share it and the last one stands half over the edge.",
                 rows=_said(rows), unit=unit)
    return Step("row-end-out", _("Ending a row half a stitch out"), sentences(hang, _exits(unit)))


def _end_short(piece: Piece, rows: list[_Hung]) -> Step:
    counts = _numbers([(hung, hung.place.short) for hung in rows], lambda count: noun("bridge", "bridges", count))
    return Step("row-end-short", _("Ending a row further in"), sentences(
        _("In {rows} stop while thread bridges are still free ({counts}). What follows starts from there.", rows=_said(rows), counts=counts),
        _exits(unit_of(piece))))


def _end_ladder(piece: Piece, rows: list[_Hung]) -> Step:
    unit, units, odd = unit_of(piece), unit_of(piece, 2), [hung for hung in rows if hung.place.ladder_end % 2]
    turn = _("In {rows} the thread then comes out at the foot: pass under the thread between the last two {units} there "
             "and back up through the last one.", rows=_said(odd), units=units) if odd else ""
    return Step("row-end-ladder", _("Ladder stitches at the end of a row"), sentences(
        _("In {rows} the words end with ladder {units}. Add them outward from the last {unit}, one at a time: pick one up, "
          "pass through the {unit} before it again in the direction in which the thread left it, then through the new one.",
          rows=_said(rows), unit=unit, units=units), turn, _exits(unit)))


def _lone(piece: Piece, rows: list[_Hung]) -> Step:
    unit = unit_of(piece)
    out = "" if all(hung.place.starts_in for hung in rows) else _(
        "Where the words say out, use the bridge on the outer side of the {unit} that the thread exits.", unit=unit)
    return Step("one-stitch-row", _("A row of one {unit}", unit=unit), sentences(
        _("For {rows}, pick up the one {unit}, pass under the thread bridge and back up through the {unit}.", rows=_said(rows), unit=unit), out,
        _("The thread exits its top.")))


def _numbers(rows: Sequence[tuple[_Hung, int]], units: Callable[[int], Noun]) -> str:
    """"row 5: 2 stitches; rows 7 and 8: 4 stitches"."""
    counts: dict[int, list[Row]] = {}
    for hung, count in rows:
        counts.setdefault(count, []).append(hung.row)
    return "; ".join(f"{rows_said(same)}: {count} {units(count)}" for count, same in sorted(counts.items()))
