"""Brick stitch from a ladder base: what can be worked, the path of the needle, and the words of a row."""

from __future__ import annotations

from ..events import Anchor, Event, Pass, PickUp, Section, Under, edge_index, stitch_places, worked_indexes
from ..piece import LEFT, RIGHT, Fault, Piece, Row
from ..runs import said

NAME = "brick stitch"
LYING, INTERLOCKED, DROPS = False, False, range(1, 5)


def directed(rows: tuple[Row, ...]) -> tuple[Row, ...]:
    """Back and forth, as rows are numbered."""
    return rows


def warps(piece: Piece) -> int:
    """Brick stitch is worked in the hand."""
    return 0


def faults(piece: Piece) -> tuple[Fault, ...]:
    """Every reason why the body cannot be worked row by row; empty if it can."""
    found: list[Fault] = []
    for row in piece.rows:
        found += _gaps(row)
        under = piece.under(row)
        if under is not None and not any(f.row in (row.number, under.number) for f in found):
            found += _edge_faults(row, under)
    return tuple(found)


def _gaps(row: Row) -> list[Fault]:
    return [
        Fault(row.number, right.at, f"row {row.number} has a gap after its stitch {index}",
              "neighbours of a row stand two characters apart, with nothing missing between them")
        for index, (left, right) in enumerate(zip(row.stitches, row.stitches[1:]), 1)
        if right.at - left.at != 2
    ]


def _edge_faults(row: Row, under: Row) -> list[Fault]:
    name, below = f"row {row.number}", f"row {under.number}"
    if (row.first - under.first) % 2 == 0:
        return [Fault(row.number, row.first, f"{name} sits straight on the stitches of {below}",
                      "move it one character to the left or right, so that it sits on the thread bridges")]
    if len(under.stitches) == 1:
        return [Fault(row.number, row.first, f"{name} has nothing to hang on: {below} has one stitch and no thread bridge",
                      f"give {below} two stitches or more, or end the shape there")]
    found = []
    for side, at, reach in ((LEFT, row.first, under.first - row.first), (RIGHT, row.last, row.last - under.last)):
        if abs(reach) != 1:
            way = "out" if reach > 0 else "in"
            found.append(Fault(
                row.number, at,
                f"{name} goes {abs(reach) / 2:g} stitches {way} from {below} on its {side} edge",
                "an edge can move by half a stitch from one row to the next"))
    return found


def body(piece: Piece) -> list[Event]:
    """The body thread from its anchor to the end of the last row."""
    events: list[Event] = [Anchor(Section("row", 1)), *ladder(piece.base)]
    for row in piece.upper:
        events += brick_row(row, piece.under(row))
    if piece.lower:
        events += to_lower_rows(piece)
        for row in piece.lower:
            events += brick_row(row, piece.under(row))
    return events


def ladder_ups(count: int) -> list[bool]:
    """Whether each stitch of a ladder is passed upward. The last one is, and directions alternate."""
    return [(count - k) % 2 == 0 for k in range(1, count + 1)]


def ladder(row: Row) -> list[Event]:
    """The base row in ladder stitch: two stitches circled, then one by one through the neighbour."""
    section, order = Section("row", row.number), worked_indexes(row)
    ups = ladder_ups(len(order))
    taken = [stitch_places(row, index, up) for index, up in zip(order, ups)]
    events: list[Event] = [PickUp(section, tuple(place for stitch in taken[:2] for place in stitch))]
    if len(taken) > 1:
        events += [Pass(section, taken[0], ups[0]), Pass(section, taken[1], ups[1])]
    for k in range(2, len(taken)):
        events += [PickUp(section, taken[k]), Pass(section, taken[k - 1], ups[k - 1]), Pass(section, taken[k], ups[k])]
    return events


def starts_in(row: Row, under: Row) -> bool:
    """Whether the first new stitch sits over the first thread bridge (inset) and not half outside (overhanging)."""
    return row.first > under.first if row.direction == RIGHT else row.last < under.last


def ends_in(row: Row, under: Row) -> bool:
    """Whether the row ends on the last thread bridge and does not hang one more stitch on it."""
    return row.last < under.last if row.direction == RIGHT else row.first > under.first


def brick_row(row: Row, under: Row) -> list[Event]:
    """A row of brick stitch hung on the thread bridges of the row under it."""
    section, order = Section("row", row.number), worked_indexes(row)
    bridges = list(range(len(under.stitches) - 1))
    if row.direction != RIGHT:
        bridges.reverse()
    shift = 0 if starts_in(row, under) else -1

    def bridge(k: int) -> Under:
        return Under(section, under.number, bridges[max(0, min(k + shift, len(bridges) - 1))])

    def through(k: int, up: bool) -> Pass:
        return Pass(section, stitch_places(row, order[k], up), up)

    if len(order) == 1:
        return [PickUp(section, stitch_places(row, order[0], False)), bridge(0), through(0, True)]
    pair = stitch_places(row, order[0], True) + stitch_places(row, order[1], False)
    events: list[Event] = [PickUp(section, pair), bridge(1), through(1, True), through(0, False), through(1, True)]
    for k in range(2, len(order)):
        events += [PickUp(section, stitch_places(row, order[k], False)), bridge(k), through(k, True)]
    return events


def to_lower_rows(piece: Piece) -> list[Event]:
    """Down the edge on which the last upper row ended, out under the base row's stitch there."""
    section, rows = Section("lower", 1), (piece.base, *piece.upper)
    side = rows[-1].direction
    return [Pass(section, stitch_places(row, edge_index(row, side), False), False) for row in reversed(rows)]


def told_together(piece: Piece) -> list[tuple[Row, ...]]:
    """Each row has a line of words of its own."""
    return [(row,) for row in piece.rows]


def row_count(stitches: int, drop: int, level: int) -> str:
    unit = "stitch" if drop == 1 else "set"
    plural = unit if stitches == 1 else {"stitch": "stitches", "set": "sets"}[unit]
    return f"{stitches} {plural}" + (" below" if level < 0 else "")


def row_text(row: Row, under: Row | None, sets: list[tuple[str, ...]], drop: int) -> str:
    if len(sets) == 1:
        return f"one {'stitch' if drop == 1 else 'set'} {said(sets)}"
    then = f"; then {said(sets[2:])}" if sets[2:] else ""
    if under is None:
        return f"ladder {said(sets[:2])}{then}"
    start, end = ("in" if starts_in(row, under) else "out"), ("in" if ends_in(row, under) else "out")
    return f"start {start} {said(sets[:2])}{then}; end {end}"
