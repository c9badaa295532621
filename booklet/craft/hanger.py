"""The path of the needle through a hanger: to the middle of the top row, then round through guard or loop."""

from __future__ import annotations

from .events import Event, Guard, Pass, PickUp, Place, Section, bridge, edge_index, stitch_places, worked_indexes
from .piece import Piece, Row
from .travel import Spot, Worked

HANGER_PASSES = 3  # through a guard or loop; common practice, no source


def top_row(piece: Piece) -> Row:
    """The row that carries the hanger: the highest as the piece hangs that has one part, or has a part in the middle."""
    for level in sorted({row.level for row in piece.rows}, reverse=True):
        parts = piece.at_level(level)
        middle = (min(part.first for part in parts) + max(part.last for part in parts)) / 2
        for part in parts:
            if len(parts) == 1 or part.first <= middle <= part.last:
                return part
    return piece.base


def hanger_stitches(piece: Piece) -> tuple[int, int]:
    """Indexes of the two stitches of the top row that carry the hanger, left then right; equal in a row of one."""
    count = len(top_row(piece).stitches)
    if count % 2 == 0:
        return count // 2 - 1, count // 2
    middle = count // 2
    return max(0, middle - 1), min(count - 1, middle + 1)


def hanger(piece: Piece) -> list[Event]:
    """Along the top row to the middle, then round through guard or loop, `HANGER_PASSES` times."""
    if piece.hanger.kind == "none":
        return []
    section, top = Section("hanger", 1), top_row(piece)
    last = piece.rows[-1]
    events = _climb(piece, section) if last != top else []
    edge = edge_index(top, last.direction)
    left, right = hanger_stitches(piece)
    near, far = (left, right) if abs(edge - left) <= abs(edge - right) else (right, left)
    events += _travel(piece, section, edge, near)
    loop = tuple(Place("hanger", 1, index) for index in range(len(piece.hanger.beads)))
    for turn in range(HANGER_PASSES):
        if turn:
            events += _up_again(piece, section, near, far)
        if piece.hanger.kind == "guard":
            events.append(Guard(section))
        else:
            events.append(PickUp(section, loop) if turn == 0 else Pass(section, loop, True))
        events.append(Pass(section, stitch_places(top, far, False), False))
    return events


def _climb(piece: Piece, section: Section) -> list[Event]:
    """From the end of the last row through the stitches to the edge of the top row."""
    last, top = piece.rows[-1], top_row(piece)
    return Worked(piece.rows).way(section, Spot(last, worked_indexes(last)[-1], True), Spot(top, edge_index(top, last.direction), True))


def _travel(piece: Piece, section: Section, start: int, goal: int) -> list[Event]:
    """Along the top row, down one stitch and up the next, so that the needle leaves the goal at its top."""
    top, events, at, up = top_row(piece), [], start, True
    while at != goal:
        at, up = at + (1 if goal > at else -1), not up
        events.append(Pass(section, stitch_places(top, at, up), up))
    if not up:
        events += _up_again(piece, section, goal, goal)
    return events


def _up_again(piece: Piece, section: Section, goal: int, at: int) -> list[Event]:
    """From under stitch `at` of the top row up through stitch `goal`; where it is the same one, round a thread bridge."""
    top = top_row(piece)
    events: list[Event] = []
    under = piece.under(top)
    if goal == at and under is not None:
        position = top.stitches[goal].at
        left = max(i for i, stitch in enumerate(under.stitches[:-1]) if stitch.at < position or i == 0)
        events.append(bridge(section, under, left))
    return [*events, Pass(section, stitch_places(top, goal, True), True)]
