"""The path of the needle through the fringe.

The thread is anchored in the body and comes out at the first place. A straight strand goes down, turns round its end
beads and comes back; a loop and a twist come up without passing back. Between two places the needle goes through
worked stitches; on thread bridges it passes under one bridge after the other.
"""

from __future__ import annotations

from msgspec import Struct

from .events import Anchor, Event, Pass, PickUp, Place, Section, Through, WeaveIn, bridge, strand_places
from .piece import RIGHT, Piece
from .places import HangingPlace, places
from .stitches import stitch_of
from .strand import STRAIGHT, Charm, Strand, Twig
from .travel import Worked, all_worked, hanging, passed


class Journey(Struct, frozen=True):
    """One strand on the needle's way through the fringe."""

    strand: Strand
    here: HangingPlace | None     # where the needle was before: None at the anchor
    start: HangingPlace           # where it goes down for the strand
    stop: HangingPlace            # where it comes up again
    way: tuple[Event, ...]        # that leads to the start: passes, and bridges where the needle turns


def journeys(piece: Piece) -> list[Journey]:
    """Every strand in working order, with the way to it. Raises ValueError where there is none."""
    there, ways = places(piece), all_worked(piece)
    found: list[Journey] = []
    for strand in piece.worked_strands:
        start, stop = (there[number - 1] for number in strand.span(piece.along))
        here = found[-1].stop if found else None
        way = _way(piece, ways, here, start, Section("strand", strand.number))
        found.append(Journey(strand, here, start, stop, tuple(way)))
    return found


def fringe(piece: Piece) -> list[Event]:
    """From the anchor to weaving in; nothing where there are no strands."""
    if not piece.strands:
        return []
    events: list[Event] = []
    for journey in journeys(piece):
        section = Section("strand", journey.strand.number)
        events += journey.way if events else (Anchor(section), *journey.way)
        events += _round(journey.start, section)
        events += worked(journey.strand, section, piece.along)
        events += _round(journey.stop, section) or _up(piece, journey.stop, section)
    return [*events, WeaveIn(section)]


def _round(place: HangingPlace, section: Section) -> list[Event]:
    """Under the thread bridge, where the place is one."""
    return [bridge(section, place.row, place.index, foot=place.row.level == 0)] if place.bridge else []


def _up(piece: Piece, place: HangingPlace, section: Section) -> list[Event]:
    """Into the body again at a stitch: up through it, or along through it where its beads lie."""
    stitch = stitch_of(piece)
    return stitch.from_strand(piece, section, place.index) if stitch.LYING else [passed(section, hanging(place.row, place.index, lower_end=False))]


def _way(piece: Piece, ways: Worked, here: HangingPlace | None, there: HangingPlace, section: Section) -> list[Event]:
    """From where a strand ended, or from the anchor, to where the next one hangs, coming out downward."""
    if stitch_of(piece).LYING:
        return stitch_of(piece).to_strand(piece, section, there.index, here.index if here else None)
    if here is None:
        beside = there.bridge and piece.along != RIGHT
        return [passed(section, hanging(there.row, there.index + beside, lower_end=True))]
    if not there.bridge:
        return ways.way(section, hanging(here.row, here.index, lower_end=False), hanging(there.row, there.index, lower_end=True))
    if there.row == here.row and abs(there.index - here.index) <= 1:   # from one bridge to the next the needle goes straight on
        return []
    rightward = there.at > here.at
    start = hanging(here.row, here.index + rightward, lower_end=False)        # up through the stitch between the two bridges,
    goal = hanging(there.row, there.index + (not rightward), lower_end=True)  # and down next to the other one
    return [passed(section, start), *ways.way(section, start, goal)]


def worked(strand: Strand, section: Section, hand: str) -> list[Event]:
    """What is picked up for a strand, and the ways back through it."""
    taking = _Taking(strand, section)
    if strand.kind == STRAIGHT:
        taking.line(strand)
    else:
        taking.line(strand, back=False)
        taking.take(len(strand.second))
        taking.gather()
    against = strand.to and strand.span(hand)[0] != strand.number
    return [_reversed(event) for event in reversed(taking.events)] if against else taking.events


def _reversed(event: Event) -> Event:
    return PickUp(event.section, event.places[::-1]) if isinstance(event, PickUp) else event


class _Taking:
    """Takes up one strand; beads that follow each other make one event."""

    def __init__(self, strand: Strand, section: Section) -> None:
        self.strand, self.section = strand, section
        self.events: list[Event] = []
        self._places = strand_places(strand.number, len(strand.all))
        self._taken = 0
        self._pending: list[Place] = []

    def line(self, line: Strand | Twig, back: bool = True) -> None:
        """Pick up a line with all that hangs on it and its end beads, then pass back through it."""
        way: list[Place | Charm] = []
        done = 0
        for thing in line.hung:
            way += self.take(thing.at - done)
            done = thing.at
            if isinstance(thing, Twig):
                self.line(thing)
            else:
                self._through(thing)
                way.append(thing)
        way += self.take(len(line.beads) - done)
        self._end(line)
        if back:
            self.gather()
            self._back(way)

    def take(self, count: int) -> tuple[Place, ...]:
        """Pick up the next beads."""
        taken = self._places[self._taken:self._taken + count]
        self._taken += count
        self._pending += taken
        return taken

    def gather(self) -> None:
        """Close the event of picking up."""
        if self._pending:
            self.events.append(PickUp(self.section, tuple(self._pending)))
            self._pending = []

    def _through(self, charm: Charm) -> None:
        self.gather()
        self.events.append(Through(self.section, charm.name))

    def _end(self, line: Strand | Twig) -> None:
        done = 0
        for charm in line.turned:
            self.take(charm.at - done)
            self._through(charm)
            done = charm.at
        self.take(len(line.end) - done)

    def _back(self, way: list[Place | Charm]) -> None:
        beads: list[Place] = []
        for thing in (*way[::-1], None):
            if isinstance(thing, Place):
                beads.append(thing)
                continue
            if beads:
                self.events.append(Pass(self.section, tuple(beads), True))
                beads = []
            if thing is not None:
                self.events.append(Through(self.section, thing.name))
