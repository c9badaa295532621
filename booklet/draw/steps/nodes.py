"""Where the thread goes in and out: one node for each stretch of beads that it passes straight through, each bridge and each finding.

Two passes through one bead run beside each other in lanes, the earlier one on the side from which the work comes,
or below where holes lie along the row.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from msgspec import Struct
from msgspec.structs import replace

from ...craft.events import Event, Guard, Pass, PickUp, Place, Ring, Through, Under
from ..picture import Point
from .opened import Cell, Opened

LOW = 1.55     # how far a curve between neighbouring stitches reaches out at most, so that it keeps clear of the next row
LANE = 0.85    # from lane to lane
HOOK = 0.62    # half the width of the turn round a thread bridge
DEEP = 1.1     # how far that turn reaches below the bridge


class Node(Struct, frozen=True):
    """The thread from `start`, where it arrives in direction `into`, to `end`, where it leaves in direction `out`."""

    event: int                  # index of the event in its scene
    kind: str                   # beads | bridge | finding
    start: Point
    into: Point
    end: Point
    out: Point
    places: tuple[Place, ...] = ()
    wide: float = 0.0           # of the beads passed
    lane: tuple = ()            # passes with the same one run beside each other
    bridge: tuple[Point, Point, Point] | None = None   # of a node under one: its ends and the direction away from its row

    def moved(self, across: float) -> Node:
        """The same node in another lane, `across` mm to the right of the hole's direction upward (or down, of a hole that lies)."""
        aside = (abs(self.into[1]), abs(self.into[0]))
        dx, dy = aside[0] * across, aside[1] * across
        return replace(self, start=(self.start[0] + dx, self.start[1] + dy), end=(self.end[0] + dx, self.end[1] + dy))


def nodes(opened: Opened, events: Sequence[Event], here: Point | None = None) -> list[Node]:
    """The nodes of some events; `here` is where the thread comes from."""
    found: list[Node] = []
    for index, event in enumerate(events):
        point = found[-1].end if found else here
        if isinstance(event, (PickUp, Pass)):
            found += _through(opened, events, index, point)
        elif isinstance(event, Under):
            found.append(_under(opened, event, index, point))
        elif isinstance(event, (Guard, Ring)):
            found.append(_finding(opened, event, index, point))
        elif isinstance(event, Through) and found:
            found.append(_charm(found[-1], index))
    return found


def in_lanes(found: Sequence[Node], run: float) -> list[Node]:
    """Nodes that share beads, beside each other; `run` is 1 where the work goes to the right, -1 to the left."""
    shared: dict[tuple, list[int]] = {}
    for index, node in enumerate(found):
        if node.lane:
            shared.setdefault(node.lane, []).append(index)
    moved = list(found)
    for indexes in shared.values():
        step = min(LANE, 3.0 / max(len(indexes), 1))
        for lane, index in enumerate(indexes):
            across = (lane - (len(indexes) - 1) / 2) * step
            moved[index] = found[index].moved(across * run if found[index].into[0] == 0 else -across)
    return [_hooked(moved, index) if node.kind == "bridge" else node for index, node in enumerate(moved)]


def _through(opened: Opened, events: Sequence[Event], index: int, point: Point | None) -> list[Node]:
    """One node for each stretch of beads whose holes are in line."""
    places = [place for place in events[index].places if place in opened.cells]
    lanes, found, first = [_lane(opened, place) for place in places], [], 0
    while first < len(places):
        after = next((at for at in range(first + 1, len(places)) if lanes[at] != lanes[first]), len(places))
        cells = [opened.cells[place] for place in places[first:after]]
        way = _way(opened, events, index, cells, (places[max(0, first - 1)], places[min(len(places) - 1, after)]), found[-1].end if found else point)
        found.append(Node(index, "beads", _end(cells[0], way, -1), way, _end(cells[-1], way, 1), way,
                          tuple(places[first:after]), max(cell.wide for cell in cells), lanes[first]))
        first = after
    return found


def _lane(opened: Opened, place: Place) -> tuple:
    """What two beads share through which the thread goes straight on."""
    cell = opened.cells[place]
    if place.part == "row":
        return place[:3]
    return (place.part, place.line, round(cell.x, 2)) if cell.axis == (0.0, -1.0) else tuple(place)


def _way(opened: Opened, events: Sequence[Event], index: int, cells: Sequence[Cell], around: Sequence[Place], point: Point | None) -> Point:
    """In which direction the thread goes through a stretch of beads."""
    event, axis = events[index], cells[0].axis
    before, after = (opened.cells[place] for place in around)
    if len(cells) > 1:
        before, after = cells[0], cells[-1]
    known = (after.x - before.x) * axis[0] + (after.y - before.y) * axis[1]
    if len(cells) == 1 and around[0].part == "row":
        known = 0.0       # neighbouring stitches of a pick-up stand side by side
    if known:
        forward = known > 0
    elif isinstance(event, Pass):
        forward = event.up
    else:
        forward = _picked_forward(events, index, cells[0], point, around)
    return axis if forward else (-axis[0], -axis[1])


def _picked_forward(events: Sequence[Event], index: int, cell: Cell, point: Point | None, around: Sequence[Place]) -> bool:
    """Whether a single bead is picked up along its axis: it is entered at the end that is nearer to where the thread is."""
    if around[0].part == "strand":
        return False
    following = events[index + 1:index + 3]
    if len(following) == 2 and isinstance(following[0], Under) and around[0] == around[1] and isinstance(following[1], Pass):
        return not following[1].up      # hung on a bridge, it is passed the other way afterwards
    if point is None:
        later = [event.up for event in events[index + 1:] if isinstance(event, Pass) and event.places[0] == events[index].places[0]]
        return later[0] if later else True
    low, high = _end(cell, cell.axis, -1), _end(cell, cell.axis, 1)
    return _far(low, point) <= _far(high, point)


def _far(one: Point, other: Point) -> float:
    return (one[0] - other[0]) ** 2 + (one[1] - other[1]) ** 2


def _end(cell: Cell, way: Point, side: int) -> Point:
    return cell.x + way[0] * cell.long / 2 * side, cell.y + way[1] * cell.long / 2 * side


def bridge_of(opened: Opened, event: Under) -> tuple[Point, Point, Point]:
    """Both ends of a thread bridge, and the direction away from the row it belongs to."""
    pair = []
    level = next(row.level for row in opened.piece.rows if row.number == event.row)
    below = (level < 0) != event.foot
    away = (0.0, 1.0) if below else (0.0, -1.0)
    for index in (event.left, event.left + 1):
        stitch = opened.stitches["row", event.row, index]
        outer = max(stitch, key=lambda cell: cell.y * away[1])
        pair.append((outer.x, outer.y + away[1] * outer.long / 2))
    return pair[0], pair[1], away


def _under(opened: Opened, event: Under, index: int, point: Point | None) -> Node:
    left, right, away = bridge_of(opened, event)
    x, y = (left[0] + right[0]) / 2, (left[1] + right[1]) / 2 + away[1] * bulge(left, right)
    back = (-away[0], -away[1])
    return Node(index, "bridge", (x, y), back, (x, y), away, bridge=(left, right, away))


def bulge(left: Point, right: Point) -> float:
    """How far a thread bridge stands out in its middle."""
    return 0.75 * min(0.42 * abs(right[0] - left[0]), LOW)


def _hooked(found: Sequence[Node], index: int) -> Node:
    """A turn round a bridge, its two sides apart; or a way straight past it, where the thread goes on to the other side."""
    node = found[index]
    left, right, away = node.bridge
    (x, y), before = node.start, found[index - 1] if index else None
    after = found[index + 1] if index + 1 < len(found) else None
    above = before is None or (before.end[1] - y) * away[1] > 0
    toward = (0.0, -away[1] if above else away[1])
    if after is not None and ((after.start[1] - y) * away[1] > 0) != above:
        return replace(node, start=(x, y - toward[1] * HOOK), into=toward, end=(x, y + toward[1] * HOOK), out=toward)
    come = before.end[0] if before else x
    go = after.start[0] if after else x + (x - come or 1.0)
    side = HOOK if come > go else -HOOK
    return replace(node, start=(x + side, y - toward[1] * 0.45), into=toward, end=(x - side, y - toward[1] * 0.45), out=(0.0, -toward[1]))


def _finding(opened: Opened, event: Guard | Ring, index: int, point: Point | None) -> Node:
    """Up one leg of a guard and down the other, or over the wire of a ring, from the nearer side."""
    left, right, y = guard_feet(opened, event.section.number)
    if point is not None and abs(point[0] - right) < abs(point[0] - left):
        left, right = right, left
    return Node(index, "finding", (left, y), (0.0, -1.0), (right, y), (0.0, 1.0))


def _charm(before: Node, index: int) -> Node:
    """Through the ring of a charm, which hangs where the thread has just come out."""
    out = before.out
    start, end = ((before.end[0] + out[0] * far, before.end[1] + out[1] * far) for far in (0.5, 1.3))
    return Node(index, "charm", start, out, end, out)


def guard_feet(opened: Opened, number: int) -> tuple[float, float, float]:
    """Where the thread enters and leaves a guard or ring: x of its feet and their y."""
    hanger = opened.piece.hangers[number - 1]
    left, right, y = opened.carried(hanger)
    middle, half = (left + right) / 2, max(min(right - left, 8.0), 3.4) / 2
    return (middle - 1.0, middle + 1.0, y - 2.2) if hanger.kind == "ring" else (middle - half, middle + half, y - 1.4)


def mean_run(found: Iterable[Node]) -> float:
    """1 where the nodes go to the right on the whole, -1 to the left."""
    xs = [node.start[0] for node in found]
    return 1.0 if not xs or xs[-1] >= xs[0] else -1.0
