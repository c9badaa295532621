"""The steps of a brick-stitch body, with the piece's own numbers."""

from __future__ import annotations

from ..piece import LEFT, RIGHT, Piece, Row
from ..plan import TAIL, ThreadPlan
from ..saying import Step, cm, m, rows_said, unit_of
from ..words import row_words
from .brick import ends_in, ladder_ups, starts_in


def body_steps(piece: Piece, plan: ThreadPlan) -> list[Step | None]:
    """The steps of the body in working order; None for those that this piece does not need."""
    return [_first_pick_up(piece, plan), _ladder(piece), *_row_steps(piece), _lower_rows(piece)]


def _pair(piece: Piece) -> str:
    text = row_words(piece)[0].text
    return text.split("; then")[0].removeprefix("ladder ").removeprefix("one stitch ").removeprefix("one set ")


def _first_pick_up(piece: Piece, plan: ThreadPlan) -> Step:
    count, side = len(piece.base.stitches), LEFT if piece.hand == RIGHT else RIGHT
    first = "upward" if ladder_ups(count)[0] else "downward"
    beads = f"Pick up the first two {unit_of(piece, 2)} of row 1: {_pair(piece)}." if count > 1 else \
        f"Pick up the one {unit_of(piece)} of row 1: {_pair(piece)}."
    circle = " Pass through both again in the same order, so that they sit side by side." if count > 1 else ""
    order = "" if piece.drop == 1 else f" The first set is passed {first}, so its beads are named in that order."
    return Step("first-pick-up", "First beads",
                f"Thread a needle with {m(plan.length)} of {plan.body} and leave a tail of {cm(TAIL)}. "
                f"Row 1 starts at the {side} edge of the chart. {beads}{circle}{order} "
                f"The thread exits the {'second' if count > 1 else 'first'} {unit_of(piece)}.")


def _ladder(piece: Piece) -> Step | None:
    count = len(piece.base.stitches)
    if count < 3:
        return None
    return Step("ladder", "Ladder base",
                f"Add the other {count - 2} {unit_of(piece, count - 2)} of row 1 one at a time: pick up the next {unit_of(piece)}, "
                f"pass through the {unit_of(piece)} before it again in the direction in which the thread left it, "
                f"then pass through the new {unit_of(piece)}. Row 1 now has {count} {unit_of(piece, count)}. "
                f"The thread exits the top of the last one, at the {piece.base.direction} edge.")


def _row_steps(piece: Piece) -> list[Step | None]:
    hung = [(row, piece.under(row)) for row in piece.rows[1:]]
    long = [(row, under) for row, under in hung if len(row.stitches) > 1]
    start_in = [row for row, under in long if starts_in(row, under)]
    start_out = [row for row, under in long if not starts_in(row, under)]
    more = [row for row, _ in long if len(row.stitches) > 2]
    end_in = [row for row, under in long if ends_in(row, under)]
    end_out = [row for row, under in long if not ends_in(row, under)]
    lone = [row for row, _ in hung if len(row.stitches) == 1]
    return [_start_in(piece, start_in), _start_out(piece, start_out), _row_stitches(piece, more),
            _end_in(piece, end_in), _end_out(piece, end_out), _lone(piece, lone)]


_PAIR = ("Pass up through the second {unit}, down through the first and up through the second again; "
         "this hides the thread at the edge.")


def _start_in(piece: Piece, rows: list[Row]) -> Step | None:
    if not rows:
        return None
    narrow = [row for row in rows if len(piece.under(row).stitches) == 2]
    only = f" Where there is only one bridge ({rows_said(narrow)}), use that one." if narrow else ""
    unit = unit_of(piece)
    return Step("row-start-in", "Starting a row half a stitch in",
                f"This is how {rows_said(rows)} start{'s' if len(rows) == 1 else ''}. Turn the work. Pick up the first two {unit_of(piece, 2)} together. "
                f"Skip the first thread bridge and pass under the second.{only} {_PAIR.format(unit=unit)} "
                f"The thread exits the top of the second {unit}.")


def _start_out(piece: Piece, rows: list[Row]) -> Step | None:
    if not rows:
        return None
    unit = unit_of(piece)
    return Step("row-start-out", "Starting a row half a stitch out",
                f"This is how {rows_said(rows)} start{'s' if len(rows) == 1 else ''}. Turn the work. Pick up the first two {unit_of(piece, 2)} together. "
                f"Pass under the first thread bridge, so that the first {unit} hangs half over the edge. "
                f"{_PAIR.format(unit=unit)} The thread exits the top of the second {unit}.")


def _row_stitches(piece: Piece, rows: list[Row]) -> Step | None:
    if not rows:
        return None
    unit = unit_of(piece)
    order = "" if piece.drop == 1 else " Its beads are named from the top down, in the order of picking up."
    return Step("row-stitches", "Along the row",
                f"In {rows_said(rows)}, work each further {unit} like this: pick it up, pass under the next thread bridge and "
                f"back up through the {unit}.{order} The thread exits its top.")


def _end_in(piece: Piece, rows: list[Row]) -> Step | None:
    if not rows:
        return None
    return Step("row-end-in", "Ending a row half a stitch in",
                f"In {rows_said(rows)} the last {unit_of(piece)} sits on the last thread bridge. Nothing is added. "
                f"The thread exits the top of the last {unit_of(piece)}.")


def _end_out(piece: Piece, rows: list[Row]) -> Step | None:
    if not rows:
        return None
    return Step("row-end-out", "Ending a row half a stitch out",
                f"In {rows_said(rows)} hang the last {unit_of(piece)} on the last thread bridge too, so that two share it and the last one "
                f"stands half over the edge. The thread exits the top of the last {unit_of(piece)}.")


def _lone(piece: Piece, rows: list[Row]) -> Step | None:
    if not rows:
        return None
    unit = unit_of(piece)
    return Step("one-stitch-row", f"A row of one {unit}",
                f"For {rows_said(rows)}, pick up the one {unit}, pass under the thread bridge and back up through the {unit}. "
                "The thread exits its top.")


def _lower_rows(piece: Piece) -> Step | None:
    if not piece.lower:
        return None
    side = (piece.base, *piece.upper)[-1].direction
    return Step("lower-rows", "Below the base row",
                f"Pass down through the edge {unit_of(piece)} of each row on the {side} edge, to row 1 and out under it. "
                f"Turn the work and the chart top to bottom. Work {rows_said(piece.lower)} on the thread bridges on this side of row 1, "
                f"from the edge where the thread is; up now means away from row 1. "
                f"The thread exits the last {unit_of(piece)} of row {piece.lower[-1].number}.")


def reading_the_chart(piece: Piece) -> str:
    """Where to start on the chart and how to go on."""
    side = LEFT if piece.hand == RIGHT else RIGHT
    return f"Start at the {side} end of row 1 and work away from it, row by row, back and forth."
