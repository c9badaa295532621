"""The hangers of a piece: which stitches of the top row carry them, and the path of the needle through guard, ring or loop."""

from __future__ import annotations

from .events import Event, Guard, Pass, PickUp, Place, Ring, Section, Under, edge_index, stitch_places
from .piece import LEFT, RIGHT, Hanger, Piece, Row
from .stitches import stitch_of
from .stitches.lying import through


def top_row(piece: Piece) -> Row:
    """The highest row as the piece hangs, which carries the hangers."""
    return max(piece.rows, key=lambda row: row.level)


def across(piece: Piece) -> float:
    """mm across the widest bead of the body."""
    return max(piece.legend[key].kind.diameter for row in piece.rows for stitch in row.stitches for key in stitch.beads)


def cell(piece: Piece) -> float:
    """mm along a row that a stitch takes: its widest bead, or the length of its beads where they lie along the row."""
    if not stitch_of(piece).LYING:
        return across(piece)
    return max(sum(piece.legend[key].kind.length for key in stitch.beads) for row in piece.rows for stitch in row.stitches)


def pitch(piece: Piece) -> float:
    """mm from stitch to stitch of a row; where rows interlock, a stitch of another row stands between the two."""
    return cell(piece) * (2 if stitch_of(piece).INTERLOCKED else 1)


def top_width(piece: Piece) -> float:
    """mm from edge to edge of the top row."""
    return (len(top_row(piece).stitches) - 1) * pitch(piece) + cell(piece)


def carriers(piece: Piece, hanger: Hanger) -> tuple[int, int]:
    """Indexes of the two stitches of the top row that carry a hanger, left then right; equal in a row of one.

    A guard sits on the two whose distance is nearest to its span, a ring or a loop on two that are as near as can be. In the
    middle of the row both stand equally far from its edges.
    """
    last = len(top_row(piece).stitches) - 1
    step = 2 if hanger.at == "middle" else 1
    apart = range(last % 2 if step == 2 else 1, last + 1, step)
    apart = [count for count in apart if count] or [0]
    span = hanger.span / pitch(piece) if hanger.kind == "guard" else 0.0
    between = min(apart, key=lambda count: abs(count - span))
    left = {LEFT: 0, RIGHT: last - between}.get(hanger.at, (last - between) // 2)
    return left, left + between


def hangers(piece: Piece) -> list[Event]:
    """Up to the top row, along it to each hanger in turn, and round through it."""
    if not piece.hangers:
        return []
    if stitch_of(piece).LYING:
        return _lying_hangers(piece)
    order = working_order(piece)
    events = _climb(piece, Section("hanger", order[0])) if piece.lower else []
    at, on_top = edge_index(top_row(piece), piece.rows[-1].direction), True
    for number in order:
        section, hanger = Section("hanger", number), piece.hangers[number - 1]
        left, right = carriers(piece, hanger)
        near, far = (left, right) if abs(at - left) <= abs(at - right) else (right, left)
        events += _travel(piece, section, at, on_top, near)
        for turn in range(hanger.passes):
            events += _up_again(piece, section, near, far) if turn else []
            events += [_over(hanger, section, turn), Pass(section, stitch_places(top_row(piece), far, False), False)]
        at, on_top = far, False
    return events


def working_order(piece: Piece) -> list[int]:
    """Numbers of the hangers in working order: from the side on which the last row ends to the other."""
    numbers = sorted(range(1, len(piece.hangers) + 1), key=lambda number: carriers(piece, piece.hangers[number - 1]))
    if stitch_of(piece).LYING:
        return numbers if hanger_side(piece, numbers[0]) == LEFT else numbers[::-1]
    return numbers[::-1] if piece.rows[-1].direction == RIGHT else numbers


def hanger_side(piece: Piece, number: int) -> str:
    """Where beads lie along the row: the side of the carrying stitches at which the thread exits for a hanger."""
    return LEFT if stitch_of(piece).to_hanger(piece, *carriers(piece, piece.hangers[number - 1]))[2] else RIGHT


def _over(hanger: Hanger, section: Section, turn: int) -> Event:
    """Through the guard or the ring, or through the beads of the loop."""
    if hanger.kind != "loop":
        return Guard(section) if hanger.kind == "guard" else Ring(section)
    loop = tuple(Place("hanger", section.number, index) for index in range(len(hanger.beads)))
    return Pass(section, loop, True) if turn else PickUp(section, loop)


def _lying_hangers(piece: Piece) -> list[Event]:
    """Inward along a lower row, back out through the stitches under a hanger, and round through those and the hanger."""
    events: list[Event] = []
    here: int | None = None   # where the stitches under the hanger before end
    for number in working_order(piece):
        section, hanger = Section("hanger", number), piece.hangers[number - 1]
        way, under, right = stitch_of(piece).to_hanger(piece, *carriers(piece, hanger))
        ahead = [(row, index) for row, index in way if here is None or (row.stitches[index].at - here) * (1 if right else -1) >= 0]
        events += [through(section, ahead, right)] if ahead else []
        events.append(through(section, under, not right))
        for turn in range(hanger.passes):
            events += [_over(hanger, section, turn), through(section, under, not right)]
        here = under[-1][0].stitches[under[-1][1]].at
    return events


def _climb(piece: Piece, section: Section) -> list[Event]:
    """From the end of the last row below the base, through the edge stitches, up to the top row."""
    side = piece.rows[-1].direction
    rows = sorted(piece.rows, key=lambda row: row.level)
    climb = []
    for row in rows:
        # Low is next to the base row, so on the way to the base the beads of lower rows are met high bead first.
        climb.append(Pass(section, stitch_places(row, edge_index(row, side), row.level >= 0), row.level >= 0))
    return climb


def _travel(piece: Piece, section: Section, at: int, on_top: bool, goal: int) -> list[Event]:
    """Along the top row, down one stitch and up the next, so that the needle leaves the goal at its top."""
    top, events = top_row(piece), []
    while at != goal:
        at, on_top = at + (1 if goal > at else -1), not on_top
        events.append(Pass(section, stitch_places(top, at, on_top), on_top))
    return events if on_top else [*events, *_up_again(piece, section, goal, goal)]


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
