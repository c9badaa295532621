"""The steps of a brick-stitch body, with the piece's own numbers."""

from __future__ import annotations

from ..events import Pass, Under
from ..language import _, ngettext, sentences
from ..piece import LEFT, RIGHT, Piece, Row
from ..plan import TAIL, ThreadPlan, thread_said
from ..runs import said
from ..saying import Step, at_edge, cm, m, rows_said, unit_of
from ..words import sets_of
from .brick_edges import edges
from .brick_path import ladder_ups, needs_new_thread, to_start
from .brick_row_steps import row_steps


def body_steps(piece: Piece, plan: ThreadPlan) -> list[Step | None]:
    """The steps of the body in working order; None for those that this piece does not need."""
    return [_first_pick_up(piece, plan), _ladder(piece), *row_steps(piece), _parts(piece), _lower_rows(piece)]


def _first_pick_up(piece: Piece, plan: ThreadPlan) -> Step:
    unit, side = unit_of(piece), LEFT if piece.hand == RIGHT else RIGHT
    sets = sets_of(piece, (piece.base,))
    beads = said(sets[:2])
    if len(sets) > 1:
        take = _("Pick up the first two {units} of row 1: {beads}. Pass through both again in the same order, so that they sit side by side.",
                 units=unit_of(piece, 2), beads=beads)
        exits = _("The thread exits the second {unit}.", unit=unit)
    else:
        take, exits = _("Pick up the one {unit} of row 1: {beads}.", unit=unit, beads=beads), _("The thread exits the first {unit}.", unit=unit)
    order = "" if piece.drop == 1 else _("The first set is passed upward, so its beads are named in that order.") if ladder_ups(len(sets))[0] else \
        _("The first set is passed downward, so its beads are named in that order.")
    return Step("first-pick-up", _("First beads"), sentences(
        _("Thread a needle with {length} of {thread} and leave a tail of {tail}.", length=m(plan.length), thread=thread_said(plan.body), tail=cm(TAIL)),
        _("Row 1 starts {edge} of the chart.", edge=at_edge(side)), take, order, exits))


def _ladder(piece: Piece) -> Step | None:
    count = len(piece.base.stitches)
    if count < 3:
        return None
    return Step("ladder", _("Ladder base"), sentences(
        ngettext("Add the other {count} {units} of row 1 one at a time: pick up the next {unit}, "
                 "pass through the {unit} before it again in the direction in which the thread left it, then pass through the new {unit}.",
                 "Add the other {count} {units} of row 1 one at a time: pick up the next {unit}, "
                 "pass through the {unit} before it again in the direction in which the thread left it, then pass through the new {unit}.",
                 count - 2, unit=unit_of(piece), units=unit_of(piece, count - 2)),
        _("Row 1 now has {count} {units}. The thread exits the top of the last one, {edge}.",
          count=count, units=unit_of(piece, count), edge=at_edge(piece.base.direction))))


def _parts(piece: Piece) -> Step | None:
    """How each part that is worked later begins."""
    later = [row for row in piece.rows if row.new_start]
    if not later:
        return None
    return Step("part-start", _("Parts of a row"), sentences(
        _("Where rows have parts, work one part to its end before you begin the next."), *(_part(piece, row) for row in later)))


def _part(piece: Piece, row: Row) -> str:
    under, unit = piece.under(row), unit_of(piece)
    way, foot = to_start(piece, row), row.level == -1
    place = {"unit": unit, "number": edges(row, under).exit + 1, "under": under.name}
    if needs_new_thread(piece, row):
        begin = _("For row {row}, weave in the thread. Anchor a new one in row {under} beside {unit} {number}, counted from the left of the chart, "
                  "and pass through that {unit};", row=row.name, **place)
        return sentences(begin, _("the thread exits the foot of it.") if foot else _("the thread exits the top of it."))
    passes = sum(isinstance(event, Pass) for event in way)
    return sentences(
        _("For row {row}, go back through the work: pass from {unit} to touching {unit}, about {count} of them, so that no thread shows.",
          row=row.name, unit=unit, count=passes),
        _("Where you have to turn back, catch a thread bridge.") if any(isinstance(event, Under) for event in way) else "",
        _("The thread exits the foot of {unit} {number} of row {under}, counted from the left of the chart.", **place) if foot else
        _("The thread exits the top of {unit} {number} of row {under}, counted from the left of the chart.", **place))


def _lower_rows(piece: Piece) -> Step | None:
    if not piece.lower:
        return None
    return Step("lower-rows", _("Below the base row"), sentences(_way_down(piece, piece.lower[0]), _(
        "Turn the work and the chart top to bottom. Work {rows} on the thread "
        "bridges on this side of row 1, from the edge where the thread is; up now means away from row 1. "
        "The thread exits the last {unit} of row {last}.", rows=rows_said(piece.lower), unit=unit_of(piece), last=piece.lower[-1].name)))


def _way_down(piece: Piece, first: Row) -> str:
    """To the foot of the base row, at the edge where the rows below it start."""
    way = to_start(piece, first)
    named = {"unit": unit_of(piece), "edge": at_edge(LEFT if first.direction == RIGHT else RIGHT)}
    catch = isinstance(way[0], Under)
    if not piece.upper:
        return _("Catch the thread bridge beside the last {unit} and pass back down through that {unit}, and out under row 1 {edge}.", **named) if catch else \
            _("Pass back down through that {unit}, and out under row 1 {edge}.", **named)
    if all(not event.up for event in way if isinstance(event, Pass)) and not any(row.part for row in piece.rows):
        along = _("down from {unit} to {unit} along the left edge", **named) if first.direction == RIGHT else _("down from {unit} to {unit} along the right edge", **named)
    else:
        along = _("back from {unit} to touching {unit}", **named)
    return _("Catch the thread bridge beside the last {unit} and pass {way} to row 1, and out under its {unit} {edge}.", way=along, **named) if catch else \
        _("Pass {way} to row 1, and out under its {unit} {edge}.", way=along, **named)


def reading_the_chart(piece: Piece) -> str:
    """Where to start on the chart and how to go on."""
    split = [row for row in piece.rows if row.part]
    parts = _("Where a row has parts, {rows} and so on, work a part to its end before the next one: the words give their order.", rows=rows_said(split[:1])) \
        if split else ""
    start = _("Start at the left end of row 1 and work away from it, row by row, back and forth.") if piece.hand == RIGHT else \
        _("Start at the right end of row 1 and work away from it, row by row, back and forth.")
    return sentences(start, parts)
