"""The hangers of a piece: which stitches of the top row carry them, and the path of the needle through guard, ring or loop."""

from __future__ import annotations

from .events import Event, Guard, Pass, PickUp, Place, Ring, Section, bridge, through, worked_indexes
from .kept import kept
from .piece import LEFT, RIGHT, Hanger, Piece, Row
from .stitches import stitch_of
from .travel import Spot, all_worked


def top_row(piece: Piece, at: str = "middle") -> Row:
    """The row, or the part of one, that carries a hanger at the left, in the middle or at the right.

    It is the highest row as the piece hangs. Where that has parts, a hanger at the left or right sits on the outermost one; in the
    middle it sits on the highest row that has one part, or a part in its middle.
    """
    levels = sorted({row.level for row in piece.rows}, reverse=True)
    if at != "middle":
        parts = piece.at_level(levels[0])
        return min(parts, key=lambda part: part.first) if at == LEFT else max(parts, key=lambda part: part.last)
    for level in levels:
        parts = piece.at_level(level)
        middle = (min(part.first for part in parts) + max(part.last for part in parts)) / 2
        for part in parts:
            if len(parts) == 1 or part.first <= middle <= part.last:
                return part
    return piece.base


@kept
def across(piece: Piece) -> float:
    """mm across the widest bead of the body."""
    return max(piece.legend[key].kind.diameter for row in piece.rows for stitch in row.stitches for key in stitch.beads)


@kept
def cell(piece: Piece) -> float:
    """mm along a row that a stitch takes: its widest bead, or the length of its beads where they lie along the row."""
    if not stitch_of(piece).LYING:
        return across(piece)
    return max(sum(piece.legend[key].kind.length for key in stitch.beads) for row in piece.rows for stitch in row.stitches)


def pitch(piece: Piece) -> float:
    """mm from stitch to stitch of a row; where rows interlock, a stitch of another row stands between the two."""
    return cell(piece) * (2 if stitch_of(piece).INTERLOCKED else 1)


def top_width(piece: Piece, at: str = "middle") -> float:
    """mm from edge to edge of the row, or part of one, that carries a hanger."""
    return (len(top_row(piece, at).stitches) - 1) * pitch(piece) + cell(piece)


def carriers(piece: Piece, hanger: Hanger) -> tuple[int, int]:
    """Indexes of the two stitches of the top row that carry a hanger, left then right; equal in a row of one.

    A guard sits on the two whose distance is nearest to its span, a ring or a loop on two that are as near as can be. In the
    middle of the row both stand equally far from its edges.
    """
    last = len(top_row(piece, hanger.at).stitches) - 1
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
    events: list[Event] = []
    last, worked = piece.rows[-1], all_worked(piece)
    here = Spot(last, worked_indexes(last)[-1], True)
    for number in working_order(piece):
        section, hanger = Section("hanger", number), piece.hangers[number - 1]
        top, (near, far) = top_row(piece, hanger.at), _near_first(piece, hanger, here)
        events += worked.way(section, here, Spot(top, near, True))
        for turn in range(hanger.passes):
            events += _up_again(piece, top, section, near, far) if turn else []
            events += [_over(hanger, section, turn), through(section, top, far, False)]
        here = Spot(top, far, False)
    return events


def _near_first(piece: Piece, hanger: Hanger, here: Spot) -> tuple[int, int]:
    """The two stitches that carry a hanger, the one nearer to the needle first."""
    top, at = top_row(piece, hanger.at), here.row.stitches[here.index].at
    left, right = carriers(piece, hanger)
    return (left, right) if abs(at - top.stitches[left].at) <= abs(at - top.stitches[right].at) else (right, left)


def working_order(piece: Piece) -> list[int]:
    """Numbers of the hangers in working order: from the side on which the last row ends to the other."""
    numbers = sorted(range(1, len(piece.hangers) + 1), key=lambda number: _reach(piece, piece.hangers[number - 1]))
    if stitch_of(piece).LYING:
        return numbers if hanger_side(piece, numbers[0]) == LEFT else numbers[::-1]
    at, last = piece.rows[-1].worked[-1].at, piece.rows[-1]
    away = [abs(_reach(piece, piece.hangers[number - 1])[0] - at) for number in (numbers[0], numbers[-1])]
    rightmost_first = last.direction == RIGHT if away[0] == away[1] else away[1] < away[0]
    return numbers[::-1] if rightmost_first else numbers


def _reach(piece: Piece, hanger: Hanger) -> tuple[int, int]:
    """Positions of the two stitches that carry a hanger."""
    top = top_row(piece, hanger.at)
    left, right = carriers(piece, hanger)
    return top.stitches[left].at, top.stitches[right].at


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
    from .stitches.lying import through as along   # loaded here, because most bodies stand

    events: list[Event] = []
    here: int | None = None   # where the stitches under the hanger before end
    for number in working_order(piece):
        section, hanger = Section("hanger", number), piece.hangers[number - 1]
        way, under, right = stitch_of(piece).to_hanger(piece, *carriers(piece, hanger))
        ahead = [(row, index) for row, index in way if here is None or (row.stitches[index].at - here) * (1 if right else -1) >= 0]
        events += [along(section, ahead, right)] if ahead else []
        events.append(along(section, under, not right))
        for turn in range(hanger.passes):
            events += [_over(hanger, section, turn), along(section, under, not right)]
        here = under[-1][0].stitches[under[-1][1]].at
    return events


def _up_again(piece: Piece, top: Row, section: Section, goal: int, at: int) -> list[Event]:
    """From under stitch `at` of the top row up through stitch `goal`; where it is the same one, round a thread bridge."""
    events: list[Event] = []
    under = piece.under(top)
    if goal == at and under is not None:
        position = top.stitches[goal].at
        left = max(i for i, stitch in enumerate(under.stitches[:-1]) if stitch.at < position or i == 0)
        events.append(bridge(section, under, left))
    return [*events, through(section, top, goal, True)]
