"""The numbered steps of a piece, written from the needle's path, with this piece's own numbers.

Every step says where the thread exits when it is done, so that the next one can start there.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from .needle import HANGER_PASSES, Section, ends_in, hanger_stitches, ladder_ups, starts_in, top_row
from .piece import LEFT, RIGHT, Piece, Row
from .runs import said
from .size import strand_length
from .thread import TAIL, WEAVE_IN, ThreadPlan, ThreadUse
from .words import row_words

STEP_IDS = ("first-pick-up", "ladder", "row-start-in", "row-start-out", "row-stitches", "row-end-in", "row-end-out",
            "one-stitch-row", "lower-rows", "thread-change", "hanger", "fringe-start", "fringe", "finishing")


@dataclass(frozen=True)
class Step:
    """One step. `text` is plain text of short sentences."""

    id: str
    title: str
    text: str


def steps(piece: Piece, plan: ThreadPlan, uses: Sequence[ThreadUse]) -> tuple[Step, ...]:
    """The steps that this piece needs, in working order."""
    made = [_first_pick_up(piece, plan), _ladder(piece)]
    made += [*_row_steps(piece), _lower_rows(piece), _thread_change(piece, uses), _hanger(piece)]
    made += [*_fringe(piece, plan), _finishing(piece)]
    return tuple(step for step in made if step is not None)


def _unit(piece: Piece, count: int = 1) -> str:
    return {(True, True): "stitch", (True, False): "stitches", (False, True): "set", (False, False): "sets"}[
        piece.drop == 1, count == 1]


def _cm(mm: float) -> str:
    return f"{mm / 10:.0f} cm ({mm / 25.4:.0f} in)"


def _m(mm: float) -> str:
    return f"{mm / 1000:.2f} m ({mm / 25.4:.0f} in)"


def _rows(rows: Sequence[Row]) -> str:
    """Row numbers in words: "row 4", "rows 2 to 9", "rows 2, 5 and 7"."""
    numbers = [row.number for row in rows]
    if len(numbers) == 1:
        return f"row {numbers[0]}"
    if len(numbers) > 2 and numbers == list(range(numbers[0], numbers[-1] + 1)):
        return f"rows {numbers[0]} to {numbers[-1]}"
    return f"rows {', '.join(map(str, numbers[:-1]))} and {numbers[-1]}"


def _pair(piece: Piece) -> str:
    text = row_words(piece)[0].text
    return text.split("; then")[0].removeprefix("ladder ").removeprefix("one stitch ").removeprefix("one set ")


def _first_pick_up(piece: Piece, plan: ThreadPlan) -> Step:
    count, side = len(piece.base.stitches), LEFT if piece.hand == RIGHT else RIGHT
    first = "upward" if ladder_ups(count)[0] else "downward"
    beads = f"Pick up the first two {_unit(piece, 2)} of row 1: {_pair(piece)}." if count > 1 else \
        f"Pick up the one {_unit(piece)} of row 1: {_pair(piece)}."
    circle = " Pass through both again in the same order, so that they sit side by side." if count > 1 else ""
    order = "" if piece.drop == 1 else f" The first set is passed {first}, so its beads are named in that order."
    return Step("first-pick-up", "First beads",
                f"Thread a needle with {_m(plan.length)} of {plan.body} and leave a tail of {_cm(TAIL)}. "
                f"Row 1 starts at the {side} edge of the chart. {beads}{circle}{order} "
                f"The thread exits the {'second' if count > 1 else 'first'} {_unit(piece)}.")


def _ladder(piece: Piece) -> Step | None:
    count = len(piece.base.stitches)
    if count < 3:
        return None
    return Step("ladder", "Ladder base",
                f"Add the other {count - 2} {_unit(piece, count - 2)} of row 1 one at a time: pick up the next {_unit(piece)}, "
                f"pass through the {_unit(piece)} before it again in the direction in which the thread left it, "
                f"then pass through the new {_unit(piece)}. Row 1 now has {count} {_unit(piece, count)}. "
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
    only = f" Where there is only one bridge ({_rows(narrow)}), use that one." if narrow else ""
    unit = _unit(piece)
    return Step("row-start-in", "Starting a row half a stitch in",
                f"This is how {_rows(rows)} start{'s' if len(rows) == 1 else ''}. Turn the work. Pick up the first two {_unit(piece, 2)} together. "
                f"Skip the first thread bridge and pass under the second.{only} {_PAIR.format(unit=unit)} "
                f"The thread exits the top of the second {unit}.")


def _start_out(piece: Piece, rows: list[Row]) -> Step | None:
    if not rows:
        return None
    unit = _unit(piece)
    return Step("row-start-out", "Starting a row half a stitch out",
                f"This is how {_rows(rows)} start{'s' if len(rows) == 1 else ''}. Turn the work. Pick up the first two {_unit(piece, 2)} together. "
                f"Pass under the first thread bridge, so that the first {unit} hangs half over the edge. "
                f"{_PAIR.format(unit=unit)} The thread exits the top of the second {unit}.")


def _row_stitches(piece: Piece, rows: list[Row]) -> Step | None:
    if not rows:
        return None
    unit = _unit(piece)
    order = "" if piece.drop == 1 else " Its beads are named from the top down, in the order of picking up."
    return Step("row-stitches", "Along the row",
                f"In {_rows(rows)}, work each further {unit} like this: pick it up, pass under the next thread bridge and "
                f"back up through the {unit}.{order} The thread exits its top.")


def _end_in(piece: Piece, rows: list[Row]) -> Step | None:
    if not rows:
        return None
    return Step("row-end-in", "Ending a row half a stitch in",
                f"In {_rows(rows)} the last {_unit(piece)} sits on the last thread bridge. Nothing is added. "
                f"The thread exits the top of the last {_unit(piece)}.")


def _end_out(piece: Piece, rows: list[Row]) -> Step | None:
    if not rows:
        return None
    return Step("row-end-out", "Ending a row half a stitch out",
                f"In {_rows(rows)} hang the last {_unit(piece)} on the last thread bridge too, so that two share it and the last one "
                f"stands half over the edge. The thread exits the top of the last {_unit(piece)}.")


def _lone(piece: Piece, rows: list[Row]) -> Step | None:
    if not rows:
        return None
    unit = _unit(piece)
    return Step("one-stitch-row", f"A row of one {unit}",
                f"For {_rows(rows)}, pick up the one {unit}, pass under the thread bridge and back up through the {unit}. "
                "The thread exits its top.")


def _lower_rows(piece: Piece) -> Step | None:
    if not piece.lower:
        return None
    side = (piece.base, *piece.upper)[-1].direction
    return Step("lower-rows", "Below the base row",
                f"Pass down through the edge {_unit(piece)} of each row on the {side} edge, to row 1 and out under it. "
                f"Turn the work and the chart top to bottom. Work {_rows(piece.lower)} on the thread bridges on this side of row 1, "
                f"from the edge where the thread is; up now means away from row 1. "
                f"The thread exits the last {_unit(piece)} of row {piece.lower[-1].number}.")


def section_name(section: Section) -> str:
    """A part of the work in words: "row 7", "strand 3", "the hanger"."""
    return {"hanger": "the hanger", "lower": "the rows below the base"}.get(
        section.kind, f"{section.kind} {section.number}")


def _thread_change(piece: Piece, uses: Sequence[ThreadUse]) -> Step | None:
    changes = [section_name(section) for use in uses for section in use.changes]
    if not changes:
        return None
    listed = changes[0] if len(changes) == 1 else f"{', '.join(changes[:-1])} and {changes[-1]}"
    return Step("thread-change", "Changing the thread",
                f"A working length runs out before {listed}. While {_cm(WEAVE_IN)} are left, anchor the new thread: pass round "
                f"two neighbouring {_unit(piece, 2)} twice, leaving a tail of {_cm(TAIL)}, and come out of the same place in the same "
                "direction as the old thread. Weave the old one in. The thread exits where the old one did.")


def _hanger(piece: Piece) -> Step | None:
    if piece.hanger.kind == "none":
        return None
    top = top_row(piece)
    left, right = (index + 1 for index in hanger_stitches(piece))
    unit, name = _unit(piece), f"row {top.number}"
    where = (f"{_unit(piece, 2)} {left} and {right} of {name}, counted from the left" if left != right
             else f"the one {unit} of {name}")
    way = "Weave up through the edge to the top row. " if piece.lower else ""
    if piece.hanger.kind == "guard":
        what = "Pass through a thread guard"
    else:
        count = len(piece.hanger.beads)
        what = f"Pick up the {count} bead{'s' if count > 1 else ''} of the loop: {said([(key,) for key in piece.hanger.beads])}"
    return Step("hanger", "Hanger",
                f"{way}The hanger sits on {where}. Pass down and up along the top row until the thread exits the top of the nearer one. "
                f"{what} and pass down through the {'other' if left != right else 'same'} {unit}. "
                f"Go round {HANGER_PASSES} times in all, snug but not stiff. "
                f"The thread exits below row {top.number}.")


def _fringe(piece: Piece, plan: ThreadPlan) -> list[Step]:
    if not piece.strands:
        return []
    side = LEFT if piece.hand == RIGHT else RIGHT
    count, unit = len(piece.strands), _unit(piece)
    first = piece.worked_strands[0].number
    longest = max(piece.strands, key=lambda strand: strand_length(piece, strand.all))
    return [
        Step("fringe-start", "Starting the fringe",
             f"Thread {_m(plan.length)} of {plan.fringe}; stretch nylon before you use it. Anchor it in the body round two neighbouring "
             f"{_unit(piece, 2)} twice and pass down through the first {unit} of row 1 at the {side} edge. "
             f"The thread exits under row 1, above strand {first}."),
        Step("fringe", "Each strand",
             f"Work {count} strands, one under each {unit} of row 1, from the {side} edge. Pick up the beads of the strand from the "
             f"top down, then its end beads. Skip the end beads and pass back up through the rest of the strand, up through the {unit} above it "
             f"and down through the next {unit}. Pull until no thread shows and the strand still swings. "
             f"The longest, strand {longest.number}, measures {strand_length(piece, longest.all):.0f} mm. "
             "After the last strand the thread exits the top of row 1."),
    ]


def _finishing(piece: Piece) -> Step:
    loop = "" if piece.hanger.kind == "none" else \
        " Open the loop of the ear wire sideways with two pliers, slip on the hanger and close it the same way."
    return Step("finishing", "Finishing",
                f"Weave in each end: pass through the body in a zigzag for {_cm(WEAVE_IN)} or so, turning twice, and trim close to a bead."
                f"{loop} No thread exits: the piece is done.")
