"""The steps of the rows above and below the base: how they start, run and end."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from msgspec import Struct

from ..piece import Piece, Row
from ..saying import Step, rows_said, unit_of
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


_PAIR = ("Pass up through the second {unit}, down through the first and up through the second again; "
         "this hides the thread at the edge.")


def _said(rows: Sequence[_Hung]) -> str:
    return rows_said([hung.row for hung in rows])


def _start(rows: Sequence[_Hung]) -> str:
    return f"This is how {_said(rows)} start{'s' if len(rows) == 1 else ''}."


def _start_in(piece: Piece, rows: list[_Hung]) -> Step:
    unit, narrow = unit_of(piece), [hung for hung in rows if hung.one_bridge]
    only = f" Where there is only one bridge ({_said(narrow)}), use that one." if narrow else ""
    return Step("row-start-in", "Starting a row half a stitch in",
                f"{_start(rows)} Turn the work. Pick up the first two {unit_of(piece, 2)} together. "
                f"Skip the first thread bridge and pass under the second.{only} {_PAIR.format(unit=unit)} "
                f"The thread exits the top of the second {unit}.")


def _start_out(piece: Piece, rows: list[_Hung]) -> Step:
    unit, narrow = unit_of(piece), [hung for hung in rows if hung.one_bridge]
    only = f" Where there is no bridge ahead ({_said(narrow)}), use the one behind." if narrow else ""
    over = "over the edge" if not all(hung.inside for hung in rows) else f"outward of the {unit} that the thread exits"
    return Step("row-start-out", "Starting a row half a stitch out",
                f"{_start(rows)} Turn the work. Pick up the first two {unit_of(piece, 2)} together. "
                f"Pass under the first thread bridge, so that the first {unit} hangs half {over}.{only} "
                f"{_PAIR.format(unit=unit)} The thread exits the top of the second {unit}.")


def _travel(piece: Piece, rows: list[_Hung]) -> Step:
    unit = unit_of(piece)
    return Step("row-travel", "Travelling in before a row",
                f"{_said(rows).capitalize()} start{'s' if len(rows) == 1 else ''} further in. Turn the work. Before you pick up anything, pass down "
                f"through the next {unit} of the row under it and up through the one after it, as often as the words say "
                f"({_numbers([(hung, hung.place.travel) for hung in rows], unit)}); do not pull the edge together. "
                f"Then start half a stitch in or out as if this {unit} were the edge, and count thread bridges from here. "
                f"The thread exits the top of the last {unit} that you passed through.")


def _start_ladder(piece: Piece, rows: list[_Hung]) -> Step:
    unit = unit_of(piece)
    return Step("row-start-ladder", "Ladder stitches at the start of a row",
                f"In {_said(rows)} ladder {unit_of(piece, 2)} stand outward of the first {unit}. Start half a stitch out, and stop when you have passed "
                f"down through the first {unit}. Add the ladder {unit_of(piece, 2)} outward, one at a time: pick one up, pass through the {unit} before "
                f"it again in the direction in which the thread left it, then through the new one. Go back through them, each from the end "
                f"where the thread is, down through the first {unit} and up through the second. The thread exits the top of the second {unit}.")


def _row_stitches(piece: Piece, rows: list[_Hung]) -> Step:
    unit = unit_of(piece)
    order = "" if piece.drop == 1 else " Its beads are named from the top down, in the order of picking up."
    return Step("row-stitches", "Along the row",
                f"In {_said(rows)}, work each further {unit} like this: pick it up, pass under the next thread bridge and "
                f"back up through the {unit}.{order} The thread exits its top.")


def _end_in(piece: Piece, rows: list[_Hung]) -> Step:
    unit = unit_of(piece)
    return Step("row-end-in", "Ending a row half a stitch in",
                f"In {_said(rows)} the last {unit} sits on the last thread bridge. Nothing is added. "
                f"The thread exits the top of the last {unit}.")


def _end_out(piece: Piece, rows: list[_Hung]) -> Step:
    unit = unit_of(piece)
    ladder = f" before the ladder {unit_of(piece, 2)}" if any(hung.place.ladder_end for hung in rows) else ""
    return Step("row-end-out", "Ending a row half a stitch out",
                f"In {_said(rows)} hang the last {unit}{ladder} on the last thread bridge too, so that two share it and the last one "
                f"stands half over the edge. The thread exits the top of the last {unit}.")


def _end_short(piece: Piece, rows: list[_Hung]) -> Step:
    return Step("row-end-short", "Ending a row further in",
                f"In {_said(rows)} stop while thread bridges are still free ({_numbers([(hung, hung.place.short) for hung in rows], 'bridge')}). "
                f"What follows starts from there. The thread exits the top of the last {unit_of(piece)}.")


def _end_ladder(piece: Piece, rows: list[_Hung]) -> Step:
    unit, odd = unit_of(piece), [hung for hung in rows if hung.place.ladder_end % 2]
    turn = (f" In {_said(odd)} the thread then comes out at the foot: pass under the thread between the last two {unit_of(piece, 2)} there "
            f"and back up through the last one.") if odd else ""
    return Step("row-end-ladder", "Ladder stitches at the end of a row",
                f"In {_said(rows)} the words end with ladder {unit_of(piece, 2)}. Add them outward from the last {unit}, one at a time: pick one up, "
                f"pass through the {unit} before it again in the direction in which the thread left it, then through the new one.{turn} "
                f"The thread exits the top of the last {unit}.")


def _lone(piece: Piece, rows: list[_Hung]) -> Step:
    unit = unit_of(piece)
    out = f" Where the words say out, use the bridge on the outer side of the {unit} that the thread exits." \
        if not all(hung.place.starts_in for hung in rows) else ""
    return Step("one-stitch-row", f"A row of one {unit}",
                f"For {_said(rows)}, pick up the one {unit}, pass under the thread bridge and back up through the {unit}.{out} "
                "The thread exits its top.")


def _numbers(rows: Sequence[tuple[_Hung, int]], unit: str) -> str:
    """"row 5: 2 stitches; rows 7 and 8: 4"."""
    counts: dict[int, list[Row]] = {}
    for hung, count in rows:
        counts.setdefault(count, []).append(hung.row)
    plural = {"stitch": "stitches", "set": "sets", "bridge": "bridges"}[unit]
    return "; ".join(f"{rows_said(same)}: {count} {unit if count == 1 else plural}" for count, same in sorted(counts.items()))
