"""Which part of the needle's path shows a step: the first place in the work where it is done.

A scene is cut out of the path by what the events themselves say (which row or strand, what is picked up, what is passed and where
it lies), so that it holds for every stitch that lists its events.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator, Sequence
from functools import cached_property
from itertools import groupby

from msgspec import Struct

from .events import Anchor, Event, Guard, Pass, PickUp, Place, Ring, Section, Through, Under, WeaveIn
from .layout import layout
from .needle import path
from .piece import Piece
from .stitches import stitch_of
from .strand import LOOP, TWIST
from .thread import ThreadUse


WHOLE = ("row", "strand")   # scenes of all that is worked of one
MOST_PASSES = 6             # passes one after the other that are numbered one by one
WAY = 3                     # passes shown of a longer way to where something happens


class Scene(Struct, frozen=True):
    """Some events of a path, and what was done before them."""

    step: str                     # the step that it shows, or "row" and "strand" for a whole one
    section: Section
    before: tuple[Event, ...]
    shown: tuple[Event, ...]

    @property
    def actions(self) -> list[list[int]]:
        """Indexes of the events that are told together and bear one number: beads strung in a line, and longer ways through the work.

        Of a whole row or strand only what is picked up is numbered.
        """
        found: list[list[int]] = []
        for kind, same in groupby(range(len(self.shown)), lambda index: type(self.shown[index])):
            run = list(same)
            if kind in (Anchor, WeaveIn) or self.step in WHOLE and kind is not PickUp:
                continue
            together = kind is PickUp or kind is Pass and len(run) > MOST_PASSES
            found += [run] if together else [[index] for index in run]
        return found


class Unit(Struct, frozen=True):
    """Something picked up and what the needle does until the next pick-up; or the way before the first one."""

    start: int
    events: tuple[Event, ...]

    @property
    def section(self) -> Section:
        return self.events[-1].section

    @property
    def stop(self) -> int:
        return self.start + len(self.events)

    @property
    def taken(self) -> tuple[Place, ...]:
        return tuple(place for event in self.events if isinstance(event, PickUp) for place in event.places)

    def has(self, *kinds: type) -> bool:
        return any(isinstance(event, kinds) for event in self.events)


class Scenes:
    """The scenes of one piece."""

    def __init__(self, piece: Piece) -> None:
        self.piece, self.path, self.plan = piece, path(piece), layout(piece)
        self.events = self.path.events
        self._told: dict[str, tuple[int, int]] = {}   # first and last event, by step
        self._on: tuple[int, int] | None = None   # out of a strand, where nothing is passed on the way to the next
        first = {row.number for row in stitch_of(piece).told_together(piece)[0]}
        for units in _sections(self.events, first):
            self._tell(units)
        if self._on:
            self._note("fringe-way", *self._on)

    @cached_property
    def stitches(self) -> dict[tuple, list[Place]]:
        """The beads of each stitch of the body, by the first three fields of their places."""
        found: dict[tuple, list[Place]] = {}
        for place in self.plan.spots:
            if place.part == "row":
                found.setdefault(place[:3], []).append(place)
        return found

    @cached_property
    def centres(self) -> dict[tuple, tuple[float, float]]:
        """Along the hole and across it, the middle of each stitch of the body, mm."""
        found = {}
        for stitch, beads in self.stitches.items():
            spots = [self.plan.spots[place] for place in beads]
            x, y = sum(spot.x for spot in spots) / len(spots), sum(spot.y for spot in spots) / len(spots)
            found[stitch] = (x, y) if self.plan.lying else (y, x)
        return found

    def of(self, step: str, uses: Sequence[ThreadUse] = ()) -> Scene | None:
        """The scene of a step; None where the needle does nothing in it."""
        if step in _MADE:
            return _MADE[step](self, uses)
        return self._scene(step, *self._told[step]) if step in self._told else None

    def whole(self, kind: str, number: int) -> Scene | None:
        """All that is worked of a row (kind "row") or a strand; None if there is none of that number."""
        at = [index for index, event in enumerate(self.events)
              if event.section[:2] == (kind, number) and not isinstance(event, WeaveIn)]
        return self._scene(kind, at[0], at[-1] + 1) if at else None

    def _scene(self, step: str, start: int, stop: int) -> Scene:
        return Scene(step, self.events[stop - 1].section, self.events[:start], self.events[start:stop])

    def _tell(self, units: Sequence[Unit]) -> None:
        """Note which steps these units of one section show, unless an earlier section does."""
        kind, number = units[0].events[0].section[:2]
        if kind == "strand":
            self._tell_strand(units)
        elif kind == "row":
            (self._tell_base if number == 1 else self._tell_lying if self.plan.lying else self._tell_row)(units)
        else:
            self._tell_way(units, {"lower": "lower-rows", "hanger": "hanger"}[kind])

    def _note(self, step: str, start: int, stop: int) -> None:
        stop -= isinstance(self.events[stop - 1], WeaveIn)
        self._told.setdefault(step, (start, stop))

    def _tell_way(self, units: Sequence[Unit], step: str) -> None:
        """The end of a way through worked stitches, and the first round through the hanger that it leads to."""
        start, stop = units[0].start, units[-1].stop
        stop -= isinstance(self.events[stop - 1], WeaveIn)
        over = [index for index in range(start, stop) if isinstance(self.events[index], (Guard, Ring, PickUp)) or self._in_loop(index)]
        first, again = (*over, stop, stop)[:2]
        self._note(step, max(start, first - WAY), again)

    def _in_loop(self, index: int) -> bool:
        return isinstance(self.events[index], Pass) and self.events[index].places[0].part == "hanger"

    def _tell_base(self, units: Sequence[Unit]) -> None:
        begun = next(index for index, unit in enumerate(units) if unit.taken)
        self._note("first-pick-up", units[0].start, units[-1 if self.plan.lying else begun].stop)
        for unit in units[begun + 1:]:
            self._note("ladder", unit.start, unit.stop)

    def _tell_row(self, units: Sequence[Unit]) -> None:
        """A row of brick stitch: the way to it, its start, its stitches, its end."""
        way, hung = [unit for unit in units if not unit.taken], [unit for unit in units if unit.taken]
        if way:
            self._note("row-travel", way[0].start, way[-1].stop)
            self._note("part-start", way[0].start, way[-1].stop)
        first, last = hung[0], hung[-1]
        if len(self._stitches(first)) == 1:
            self._note("one-stitch-row", first.start, first.stop)
            self._ending(first, first)
            return
        self._note("row-start-in" if self._starts_in(first) else "row-start-out", first.start, first.stop)
        for unit in hung[1:]:
            if unit.has(Under):
                self._note("row-stitches", unit.start, unit.stop)
        self._ladders(hung)
        bridged = [unit for unit in hung if unit.has(Under)]
        self._ending(first, bridged[-1] if bridged else last)

    def _tell_lying(self, units: Sequence[Unit]) -> None:
        """A row whose beads lie along it: peyote, square stitch or loom work."""
        way, hung = [unit for unit in units if not unit.taken], [unit for unit in units if unit.taken]
        if way:
            self._note("row-start-in", way[0].start, hung[0].stop)
        typical = hung[min(1, len(hung) - 1)]
        self._note("row-stitches", typical.start, typical.stop)
        xs = [self._x(place[:3]) for unit in hung for place in unit.taken]
        run = 1.0 if xs[-1] >= xs[0] else -1.0
        before = [spot.x for place, spot in self.plan.spots.items() if place[:2] == ("row", units[0].section.number - 1)]
        near, far = (min(before), max(before)) if run > 0 else (max(before), min(before))
        if (xs[0] - near) * run < -0.5 * self.plan.cell:
            self._note("row-start-out", hung[0].start, hung[0].stop)
        if (xs[-1] - far) * run < -0.5 * self.plan.cell:
            self._note("row-end-in", hung[-1].start, hung[-1].stop)
        elif (xs[-1] - far) * run > 0.5 * self.plan.cell:
            loose = [unit for unit in hung if not unit.has(Pass)] or hung[-1:]
            self._note("row-end-out", loose[0].start, loose[-1].stop)
        last = [event for event in hung[-1].events if isinstance(event, Pass)]
        if len(last) == 1 and last[0].up != (run > 0):
            self._note("edge-turn", hung[-1].start, hung[-1].stop)

    def _ladders(self, hung: Sequence[Unit]) -> None:
        """Stitches without a bridge: outward of the first stitch before others are hung, or of the last one after them."""
        loose = [index for index, unit in enumerate(hung) if index and not _bridged(unit)]
        for index in loose:
            later = any(_bridged(unit) for unit in hung[index + 1:])
            start = later or index == 1 and self._outward(hung[index], hung[0])
            self._note("row-start-ladder" if start else "row-end-ladder", hung[index].start, hung[index].stop)

    def _stitches(self, unit: Unit) -> list[tuple]:
        return list(dict.fromkeys(place[:3] for place in unit.taken))

    def _x(self, stitch: tuple) -> float:
        return self.plan.spots[Place(*stitch)].x

    def _run(self, first: Unit) -> float:
        """1 where a row runs to the right as the piece hangs, -1 where to the left."""
        one, two = self._stitches(first)[:2]
        return 1.0 if self._x(two) > self._x(one) else -1.0

    def _outward(self, unit: Unit, first: Unit) -> bool:
        """Whether what a unit takes stands beyond the first stitch of the row, against the way of work."""
        return (self._x(self._stitches(unit)[0]) - self._x(self._stitches(first)[0])) * self._run(first) < 0

    def _exit(self, index: int) -> tuple | None:
        """The stitch that the thread comes out of before an event."""
        passed = next((event for event in reversed(self.events[:index]) if isinstance(event, Pass)), None)
        return passed.places[-1][:3] if passed else None

    def _starts_in(self, first: Unit) -> bool:
        """Whether the first new stitch stands further along than the one that the thread comes out of."""
        return (self._x(self._stitches(first)[0]) - self._x(self._exit(first.start))) * self._run(first) > 0

    def _ending(self, first: Unit, last: Unit) -> None:
        """How a row ends: beyond its last bridge, on it, or before it."""
        under = next((event for event in last.events if isinstance(event, Under)), None)
        if under is None:
            return
        stitches = self._stitches(last)
        left = self._x(("row", under.row, under.left))
        right = self._x(("row", under.row, under.left + 1))
        run = self._run(first) if len(self._stitches(first)) > 1 else 1.0
        beyond = (self._x(stitches[-1]) - (left + right) / 2) * run
        if abs(beyond) > 0.1 * self.plan.pitch:
            self._note("row-end-out", last.start, last.stop) if beyond > 0 else None
            return
        self._note("row-end-in", last.start, last.stop)
        further = Place("row", under.row, under.left + 2 if run > 0 else under.left - 1)
        if further in self.plan.spots:
            self._note("row-end-short", last.start, last.stop)

    def _tell_strand(self, units: Sequence[Unit]) -> None:
        """A strand of its kind, from where the thread comes out above it; and the way to it."""
        start, stop = units[0].start, units[-1].stop
        stop -= isinstance(self.events[stop - 1], WeaveIn)
        strand = next(strand for strand in self.piece.strands if strand.number == units[0].section.number)
        taken = next(index for index in range(start, stop) if isinstance(self.events[index], (PickUp, Through)))
        down = max(start, taken - 1)
        if self.events[down] is self.events[start] and isinstance(self.events[start], Anchor):
            down = taken
        self._note({LOOP: "fringe-loop", TWIST: "fringe-twist"}.get(strand.kind, "fringe"), down, stop)
        if strand.twigs:
            self._note("fringe-twigs", down, stop)
        if strand.charms:
            self._note("fringe-charm", down, stop)
        if taken > start and not isinstance(self.events[start], Anchor):
            self._note("fringe-way", start, taken)
        elif stop - 1 > taken:
            self._on = self._on or (stop - 1, stop)


def _bridged(unit: Unit) -> bool:
    """Whether what a unit takes is hung on a thread bridge at once."""
    return len(unit.events) > 1 and isinstance(unit.events[1], Under)


def _sections(events: Sequence[Event], first: Collection[int]) -> Iterator[list[Unit]]:
    """The units of each section, in working order; `first` are the numbers of the rows that are begun together."""
    at = 0
    for _, same in groupby(events, lambda event: None if event.section.kind == "row" and event.section.number in first else event.section):
        units: list[Unit] = []
        gathered: list[Event] = []
        start = at
        for event in same:
            if isinstance(event, PickUp) and any(not isinstance(earlier, Anchor) for earlier in gathered):
                units.append(Unit(start, tuple(gathered)))
                start, gathered = at, []
            gathered.append(event)
            at += 1
        yield [*units, Unit(start, tuple(gathered))]


def _exit_pass(events: Sequence[Event]) -> Pass:
    """The last pass through the body."""
    return next(event for event in reversed(events) if isinstance(event, Pass) and event.places[0].part == "row")


def _pass_through(scenes: Scenes, section: Section, stitch: tuple, up: bool) -> Pass:
    places = tuple(sorted(scenes.stitches[stitch]))
    return Pass(section, places if up else places[::-1], up)


def neighbour(scenes: Scenes, done: Sequence[Event], passed: Pass) -> Pass:
    """The worked stitch beside the one passed, across its hole, passed the other way."""
    worked = {place[:3] for event in done if isinstance(event, PickUp) for place in event.places if place.part == "row"}
    centres, own = scenes.centres, passed.places[0][:3]
    along, across = centres[own]
    stitch = min(worked - {own}, key=lambda stitch: (round(3 * abs(centres[stitch][0] - along) + abs(centres[stitch][1] - across), 3), stitch), default=own)
    return _pass_through(scenes, passed.section, stitch, not passed.up)


def _anchored(scenes: Scenes, step: str, done: Sequence[Event], passed: Pass) -> Scene:
    """A thread begins: twice round two neighbouring stitches, so that it comes out as `passed` says."""
    beside = neighbour(scenes, done, passed)
    round_twice = (Anchor(passed.section), beside, passed, beside, passed)
    return Scene(step, passed.section, tuple(done), round_twice)


def _change(part: str) -> Callable[[Scenes, Sequence[ThreadUse]], Scene | None]:
    def scene(scenes: Scenes, uses: Sequence[ThreadUse]) -> Scene | None:
        after = next((use.after[0] for use in uses if use.part == part and use.after), None)
        if after is None:
            return None
        stop = max(index for index, event in enumerate(scenes.events) if event.section == after and not isinstance(event, WeaveIn)) + 1
        done = scenes.events[:stop]
        return _anchored(scenes, "thread-change" if part == "body" else "fringe-thread-change", done, _exit_pass(done))

    return scene


def _fringe_start(scenes: Scenes, uses: Sequence[ThreadUse]) -> Scene | None:
    if not scenes.path.fringe:
        return None
    done = scenes.path.body
    first = next(event for event in scenes.path.fringe if isinstance(event, Pass))
    return _anchored(scenes, "fringe-start", done, first)


def _finishing(scenes: Scenes, uses: Sequence[ThreadUse]) -> Scene:
    """A zigzag through the body from where the last thread is, turning twice."""
    done = tuple(event for event in scenes.events)
    return Scene("finishing", done[-1].section, done, (*zigzag(scenes, _exit_pass(done)), done[-1]))


def zigzag(scenes: Scenes, passed: Pass) -> Iterator[Pass]:
    """Passes of two stitches down, two up and two down again, each touching the one before."""
    for _ in range(3):
        passed = neighbour(scenes, scenes.events, passed)
        yield passed
        further = _onward(scenes, passed)
        if further is not None:
            passed = further
            yield passed


def _onward(scenes: Scenes, passed: Pass) -> Pass | None:
    """The stitch that the needle meets next when it goes straight on; None at the edge."""
    centres, heading = scenes.centres, _heading(scenes, passed)
    along, across = centres[passed.places[0][:3]]
    far = {stitch: (round(2 * abs(one - along) + abs(other - across), 3), stitch) for stitch, (one, other) in centres.items()
           if (one - along) * heading > 0.1 and abs(other - across) < 1.2 * scenes.plan.pitch}
    if not far:
        return None
    stitch = min(far, key=far.get)
    if abs(centres[stitch][0] - along) > 2.5 * scenes.plan.cell * max(1, scenes.piece.drop):
        return None
    return _pass_through(scenes, passed.section, stitch, heading * _upright(scenes, stitch) > 0)


def _heading(scenes: Scenes, passed: Pass) -> float:
    """1 where a pass goes up (or to the right) as the piece hangs, -1 where it goes the other way."""
    return (1.0 if passed.up else -1.0) * _upright(scenes, passed.places[0][:3])


def _upright(scenes: Scenes, stitch: tuple) -> float:
    """-1 for stitches of the rows below the base, which are worked upside down."""
    return next(1.0 if row.level >= 0 else -1.0 for row in scenes.piece.rows if row.number == stitch[1])


_MADE: dict[str, Callable[[Scenes, Sequence[ThreadUse]], Scene | None]] = {
    "thread-change": _change("body"), "fringe-thread-change": _change("fringe"), "fringe-start": _fringe_start, "finishing": _finishing}
