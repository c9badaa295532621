"""The steps of a brick-stitch body, with the piece's own numbers."""

from __future__ import annotations

from ..events import Pass, Under
from ..piece import LEFT, RIGHT, Piece, Row
from ..plan import TAIL, ThreadPlan
from ..saying import Step, cm, m, rows_said, unit_of
from ..words import row_words
from .brick_edges import edges
from .brick_path import ladder_ups, needs_new_thread, to_start
from .brick_row_steps import row_steps


def body_steps(piece: Piece, plan: ThreadPlan) -> list[Step | None]:
    """The steps of the body in working order; None for those that this piece does not need."""
    return [_first_pick_up(piece, plan), _ladder(piece), *row_steps(piece), _parts(piece), _lower_rows(piece)]


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


def _parts(piece: Piece) -> Step | None:
    """How each part that is worked later begins."""
    later = [row for row in piece.rows if row.new_start]
    if not later:
        return None
    told = " ".join(_part(piece, row) for row in later)
    return Step("part-start", "Parts of a row",
                f"Where rows have parts, work one part to its end before you begin the next. {told}")


def _part(piece: Piece, row: Row) -> str:
    under, unit = piece.under(row), unit_of(piece)
    number, way = edges(row, under).exit + 1, to_start(piece, row)
    end = "foot" if row.level == -1 else "top"
    goal = f"the {end} of {unit} {number} of row {under.name}, counted from the left of the chart"
    if needs_new_thread(piece, row):
        return (f"For row {row.name}, weave in the thread. Anchor a new one in row {under.name} beside {unit} {number}, counted from the left of the chart, "
                f"and pass through that {unit}; the thread exits the {end} of it.")
    passes = sum(isinstance(event, Pass) for event in way)
    turn = " Where you have to turn back, catch a thread bridge." if any(isinstance(event, Under) for event in way) else ""
    return (f"For row {row.name}, go back through the work: pass from {unit} to touching {unit}, about {passes} of them, "
            f"so that no thread shows.{turn} The thread exits {goal}.")


def _lower_rows(piece: Piece) -> Step | None:
    if not piece.lower:
        return None
    unit, first = unit_of(piece), piece.lower[0]
    return Step("lower-rows", "Below the base row",
                f"{_way_down(piece, first, unit)} Turn the work and the chart top to bottom. Work {rows_said(piece.lower)} on the thread "
                f"bridges on this side of row 1, from the edge where the thread is; up now means away from row 1. "
                f"The thread exits the last {unit} of row {piece.lower[-1].name}.")


def _way_down(piece: Piece, first: Row, unit: str) -> str:
    """To the foot of the base row, at the edge where the rows below it start."""
    side, way = LEFT if first.direction == RIGHT else RIGHT, to_start(piece, first)
    catch = f"Catch the thread bridge beside the last {unit} and pass" if isinstance(way[0], Under) else "Pass"
    if not piece.upper:
        return f"{catch} back down through that {unit}, and out under row 1 at the {side} edge."
    straight = all(not event.up for event in way if isinstance(event, Pass)) and not any(row.part for row in piece.rows)
    down = f"down from {unit} to {unit} along the {side} edge" if straight else f"back from {unit} to touching {unit}"
    return f"{catch} {down} to row 1, and out under its {unit} at the {side} edge."


def reading_the_chart(piece: Piece) -> str:
    """Where to start on the chart and how to go on."""
    side = LEFT if piece.hand == RIGHT else RIGHT
    split = [row for row in piece.rows if row.part]
    parts = f" Where a row has parts, {rows_said(split[:1])} and so on, work a part to its end before the next one: the words give their order." \
        if split else ""
    return f"Start at the {side} end of row 1 and work away from it, row by row, back and forth.{parts}"
