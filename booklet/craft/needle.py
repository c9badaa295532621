"""The path of the needle through a piece, as a list of events.

Up is away from the base row, towards the next row to be worked; it holds for the rows below the base row too,
because the piece is turned top to bottom for them. Everything that is said about working a piece (pick-up order,
passes through a bead, thread length, steps) is read from this path.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import NamedTuple

from .piece import RIGHT, Piece, Row, faults

HANGER_PASSES = 3  # through a guard or loop; common practice, no source


class Section(NamedTuple):
    """The part of the work an event belongs to: ("row", 3), ("strand", 2), ("lower", 1) or ("hanger", 1)."""

    kind: str
    number: int


class Place(NamedTuple):
    """One bead of the piece.

    part "row": line is the row number, index the stitch from the left (0 first), level the bead from low (0).
    part "strand": line is the strand number, index the bead from the top. part "hanger": index along the loop.
    """

    part: str
    line: int
    index: int
    level: int = 0


@dataclass(frozen=True)
class PickUp:
    """New beads, in the order in which the needle takes them."""

    section: Section
    places: tuple[Place, ...]


@dataclass(frozen=True)
class Pass:
    """Through beads that are already there, in the order in which the needle meets them."""

    section: Section
    places: tuple[Place, ...]
    up: bool


@dataclass(frozen=True)
class Under:
    """Under the thread bridge between stitches `left` and `left` + 1 of row `row`."""

    section: Section
    row: int
    left: int


@dataclass(frozen=True)
class Guard:
    """Through a thread guard, which keeps the thread off the ear wire."""

    section: Section


@dataclass(frozen=True)
class Anchor:
    """A thread begins; its tail is woven in later."""

    section: Section


@dataclass(frozen=True)
class WeaveIn:
    """A thread ends: it is woven in and trimmed."""

    section: Section


Event = PickUp | Pass | Under | Guard | Anchor | WeaveIn


@dataclass(frozen=True)
class Path:
    """What the body thread and then the fringe thread do; the fringe is empty where there is none."""

    body: tuple[Event, ...]
    fringe: tuple[Event, ...]

    @property
    def events(self) -> tuple[Event, ...]:
        return self.body + self.fringe

    def passes(self) -> dict[Place, int]:
        """How often the thread goes through each bead, threading counted."""
        counts: dict[Place, int] = {}
        for event in self.events:
            for place in getattr(event, "places", ()):
                counts[place] = counts.get(place, 0) + 1
        return counts

    def picked_up(self, section: Section) -> tuple[Place, ...]:
        """Every bead of a section in the order of picking up."""
        return tuple(place for event in self.events
                     if isinstance(event, PickUp) and event.section == section for place in event.places)


def path(piece: Piece) -> Path:
    """The whole path. Raises ValueError for a piece with faults, or with strands that do not match its base row."""
    if faults(piece):
        raise ValueError("the piece cannot be worked; see craft.piece.faults")
    if piece.strands and len(piece.strands) != len(piece.base.stitches):
        raise ValueError("the number of strands differs from the number of base stitches")
    first = Section("row", 1)
    body: list[Event] = [Anchor(first), *ladder(piece.base)]
    for row in piece.upper:
        body += brick_row(row, piece.under(row))
    if piece.lower:
        body += _to_lower_rows(piece)
        for row in piece.lower:
            body += brick_row(row, piece.under(row))
    body += _hanger(piece)
    body.append(WeaveIn(body[-1].section))
    return Path(tuple(body), tuple(_fringe(piece)))


def stitch_places(row: Row, index: int, up: bool) -> tuple[Place, ...]:
    """The beads of one stitch in the order of a pass through it."""
    places = tuple(Place("row", row.number, index, level) for level in range(len(row.stitches[index].beads)))
    return places if up else places[::-1]


def worked_indexes(row: Row) -> list[int]:
    """Stitch indexes (from the left) in working order."""
    indexes = list(range(len(row.stitches)))
    return indexes if row.direction == RIGHT else indexes[::-1]


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


def _edge(row: Row, side: str) -> int:
    return len(row.stitches) - 1 if side == RIGHT else 0


def _to_lower_rows(piece: Piece) -> list[Event]:
    """Down the edge on which the last upper row ended, out under the base row's stitch there."""
    section, rows = Section("lower", 1), (piece.base, *piece.upper)
    side = rows[-1].direction
    return [Pass(section, stitch_places(row, _edge(row, side), False), False) for row in reversed(rows)]


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


def _hanger(piece: Piece) -> list[Event]:
    """Along the top row to the middle, then round through guard or loop, `HANGER_PASSES` times."""
    if piece.hanger.kind == "none":
        return []
    section, top = Section("hanger", 1), top_row(piece)
    last = piece.rows[-1]
    events = _climb(piece, section) if piece.lower else []
    edge = _edge(top, last.direction)
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
    """From the end of the last row below the base, through the edge stitches, up to the top row."""
    side = piece.rows[-1].direction
    rows = sorted(piece.rows, key=lambda row: row.level)
    climb = []
    for row in rows:
        # Low is next to the base row, so on the way to the base the beads of lower rows are met high bead first.
        climb.append(Pass(section, stitch_places(row, _edge(row, side), row.level >= 0), row.level >= 0))
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


def _fringe(piece: Piece) -> list[Event]:
    """Down out of the first base stitch; each strand down and back, up its base stitch, down through the next."""
    if not piece.strands:
        return []
    base, order = piece.base, worked_indexes(piece.base)
    sections = [Section("strand", strand.number) for strand in piece.worked_strands]
    events: list[Event] = [Anchor(sections[0]), Pass(sections[0], stitch_places(base, order[0], False), False)]
    for k, strand in enumerate(piece.worked_strands):
        section = sections[k]
        places = tuple(Place("strand", strand.number, index) for index in range(len(strand.all)))
        events.append(PickUp(section, places))
        if strand.beads:
            events.append(Pass(section, places[:len(strand.beads)][::-1], True))
        events.append(Pass(section, stitch_places(base, order[k], True), True))
        if k + 1 < len(sections):
            events.append(Pass(sections[k + 1], stitch_places(base, order[k + 1], False), False))
    return [*events, WeaveIn(sections[-1])]
