"""The path of the needle through a body of brick stitch."""

from __future__ import annotations

from ..events import (
    Anchor,
    Event,
    Pass,
    PickUp,
    Section,
    WeaveIn,
    bridge,
    edge_index,
    row_section,
    stitch_places,
    through,
    worked_indexes,
)
from ..piece import RIGHT, Piece, Row, opposite
from ..travel import Spot, Worked
from .brick_edges import bridge_under, edges, hung_indexes

LONGEST_TRAVEL = 12   # passes to the start of another part; beyond that a new thread is easier; common practice, no source


def body(piece: Piece) -> list[Event]:
    """The body thread from its anchor to the end of the last row. Where a new thread begins, the old one is woven in before it."""
    events: list[Event] = [Anchor(Section("row", 1)), *ladder(piece.base)]
    for row in piece.rows[1:]:
        under = piece.under(row)
        events += to_start(piece, row) if begins_elsewhere(row) else []
        events += [*_travel_in(row, under), *brick_row(row, under)]
    return events


def begins_elsewhere(row: Row) -> bool:
    """Whether the needle is not at the end of the row under it: at another part, or at the first row below the base."""
    return row.new_start or row.level == -1


def to_start(piece: Piece, row: Row) -> list[Event]:
    """To the stitch from which a part begins, or to the foot of the base row at the edge where the rows below it start.

    The way leads through the work; to a part that is far away it is easier with a new thread.
    """
    done = piece.rows[:piece.rows.index(row)]
    last, under = done[-1], piece.under(row)
    section = row_section(row) if row.new_start else Section("lower", 1)
    index = edges(row, under).exit if row.new_start else edge_index(under, opposite(row.direction))
    goal = Spot(under, index, row.level != -1)
    way = Worked(done).way(section, Spot(last, worked_indexes(last)[-1], True), goal)
    if row.new_start and sum(isinstance(event, Pass) for event in way) > LONGEST_TRAVEL:
        return [WeaveIn(row_section(last)), Anchor(section), through(section, goal.row, goal.index, goal.top)]
    return way


def needs_new_thread(piece: Piece, row: Row) -> bool:
    """Whether a part begins with a thread of its own."""
    return row.new_start and any(isinstance(event, Anchor) for event in to_start(piece, row))


def ladder_ups(count: int) -> list[bool]:
    """Whether each stitch of a ladder is passed upward. The last one is, and directions alternate."""
    return [(count - k) % 2 == 0 for k in range(1, count + 1)]


def ladder(row: Row) -> list[Event]:
    """The base row in ladder stitch: two stitches circled, then one by one through the neighbour."""
    section, order = row_section(row), worked_indexes(row)
    ups = ladder_ups(len(order))
    taken = [stitch_places(row, index, up) for index, up in zip(order, ups)]
    events: list[Event] = [PickUp(section, tuple(place for stitch in taken[:2] for place in stitch))]
    if len(taken) > 1:
        events += [Pass(section, taken[0], ups[0]), Pass(section, taken[1], ups[1])]
    return events + _ladder_on(row, order[1:], ups[1:])


def _ladder_on(row: Row, order: list[int], ups: list[bool]) -> list[Event]:
    """Add stitches to the first of `order` one by one: pick up, through the neighbour again, through the new one."""
    section, events = row_section(row), []
    for k in range(1, len(order)):
        events += [PickUp(section, stitch_places(row, order[k], ups[k])),
                   through(section, row, order[k - 1], ups[k - 1]), through(section, row, order[k], ups[k])]
    return events


def brick_row(row: Row, under: Row) -> list[Event]:
    """A row of brick stitch, from the stitch of the row under it that `edges` names."""
    section, place = row_section(row), edges(row, under)
    before, hung, after = hung_indexes(row, place)
    if len(hung) == 1:
        return _hang(row, under, hung[0])
    first, second = hung[:2]
    pair = stitch_places(row, first, True) + stitch_places(row, second, False)
    events = [PickUp(section, pair), _bridge(row, under, second), through(section, row, second, True), through(section, row, first, False)]
    events += [*_ladder_out_and_back(row, [first, *before]), through(section, row, second, True)]
    for index in hung[2:]:
        events += _hang(row, under, index)
    return events + _ladder_end(row, [hung[-1], *after])


def _hang(row: Row, under: Row, index: int) -> list[Event]:
    section = row_section(row)
    return [PickUp(section, stitch_places(row, index, False)), _bridge(row, under, index), through(section, row, index, True)]


def _bridge(row: Row, under: Row, index: int) -> Event:
    # The first row below the base hangs on the bridges at the foot of the base row.
    return bridge(row_section(row), under, bridge_under(row, under, index), foot=row.level == -1)


def _travel_in(row: Row, under: Row) -> list[Event]:
    """Along the row under, down one stitch and up the next."""
    place, step = edges(row, under), 1 if row.direction == RIGHT else -1
    indexes = [place.exit - step * k for k in range(place.travel)][::-1]
    # For the first row below the base the base row is turned over, so that its beads are passed the other way.
    return [through(row_section(row), under, index, (k % 2 == 1) != (row.level == -1)) for k, index in enumerate(indexes)]


def _ladder_out_and_back(row: Row, order: list[int]) -> list[Event]:
    """Ladder stitches outward from the first hung stitch, which was passed downward; then back to the foot of it."""
    section, ups = row_section(row), [k % 2 == 1 for k in range(len(order))]
    back = [through(section, row, index, up) for index, up in zip(order, ups)][:-1]
    return [*_ladder_on(row, order, ups), *back[::-1]]


def _ladder_end(row: Row, order: list[int]) -> list[Event]:
    """Ladder stitches outward from the last hung stitch. An odd number ends at the foot, so the needle turns there."""
    section, ups = row_section(row), [k % 2 == 0 for k in range(len(order))]
    events = _ladder_on(row, order, ups)
    if not ups[-1]:
        events += [bridge(section, row, min(order[-2:]), foot=True), through(section, row, order[-1], True)]
    return events
