"""The path of the needle through a hanger: to the middle of the top row, then round through guard or loop."""

from __future__ import annotations

from .events import Event, Guard, Pass, PickUp, Place, Section, Under, edge_index, stitch_places
from .piece import LEFT, RIGHT, Piece, Row
from .stitches import stitch_of
from .stitches.lying import through

HANGER_PASSES = 3  # through a guard or loop; common practice, no source


def top_row(piece: Piece) -> Row:
    """The highest row as the piece hangs, which carries the hanger."""
    return max(piece.rows, key=lambda row: row.level)


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
    if stitch_of(piece).LYING:
        return _lying_hanger(piece)
    section, top = Section("hanger", 1), top_row(piece)
    last = piece.rows[-1]
    events = _climb(piece, section) if piece.lower else []
    edge = edge_index(top, last.direction)
    left, right = hanger_stitches(piece)
    near, far = (left, right) if abs(edge - left) <= abs(edge - right) else (right, left)
    events += _travel(piece, section, edge, near)
    for turn in range(HANGER_PASSES):
        if turn:
            events += _up_again(piece, section, near, far)
        events.append(_over(piece, section, turn))
        events.append(Pass(section, stitch_places(top, far, False), False))
    return events


def _over(piece: Piece, section: Section, turn: int) -> Event:
    """Through the guard, or through the beads of the loop."""
    if piece.hanger.kind == "guard":
        return Guard(section)
    loop = tuple(Place("hanger", 1, index) for index in range(len(piece.hanger.beads)))
    return Pass(section, loop, True) if turn else PickUp(section, loop)


def _lying_hanger(piece: Piece) -> list[Event]:
    """Inward along a lower row, back out through the stitches under the hanger, and round through those and the hanger."""
    section = Section("hanger", 1)
    inward, under, right = stitch_of(piece).to_hanger(piece, *hanger_stitches(piece))
    events: list[Event] = [through(section, inward, right)] if inward else []
    events.append(through(section, under, not right))
    for turn in range(HANGER_PASSES):
        events += [_over(piece, section, turn), through(section, under, not right)]
    return events


def hanger_side(piece: Piece) -> str:
    """Where beads lie along the row: the side of the carrying stitches at which the thread exits for the hanger."""
    return LEFT if stitch_of(piece).to_hanger(piece, *hanger_stitches(piece))[2] else RIGHT


def _climb(piece: Piece, section: Section) -> list[Event]:
    """From the end of the last row below the base, through the edge stitches, up to the top row."""
    side = piece.rows[-1].direction
    rows = sorted(piece.rows, key=lambda row: row.level)
    climb = []
    for row in rows:
        # Low is next to the base row, so on the way to the base the beads of lower rows are met high bead first.
        climb.append(Pass(section, stitch_places(row, edge_index(row, side), row.level >= 0), row.level >= 0))
    return climb


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
        events.append(Under(section, under.number, left))
    return [*events, Pass(section, stitch_places(top, goal, True), True)]
