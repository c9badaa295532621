"""What the needle can do, one event after the other, and where.

Up is away from the base row, towards the next row to be worked; it holds for the rows below the base row too,
because the piece is turned top to bottom for them.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from functools import cached_property, lru_cache
from itertools import chain
from typing import NamedTuple

from msgspec import Struct

from .piece import RIGHT, Row


class Section(NamedTuple):
    """The part of the work an event belongs to: ("row", 3), ("row", 5, "b"), ("strand", 2), ("lower", 1) or ("hanger", 2)."""

    kind: str
    number: int
    part: str = ""   # of a row that has parts


class Place(NamedTuple):
    """One bead of the piece.

    part "row": line is the row number, index the stitch of the whole chart row from the left (0 first), level the bead from low (0),
    or from the left where the beads of a stitch lie side by side.
    part "strand": line is the strand number, index the bead from the top. part "hanger": line is the number of the hanger, index
    the bead along the loop.
    """

    part: str
    line: int
    index: int
    level: int = 0


class PickUp(Struct, frozen=True):
    """New beads, in the order in which the needle takes them."""

    section: Section
    places: tuple[Place, ...]


class Pass(Struct, frozen=True):
    """Through beads that are already there, in the order in which the needle meets them.

    Through body beads whose holes lie along the row, up means to the right as the piece hangs.
    """

    section: Section
    places: tuple[Place, ...]
    up: bool


class Under(Struct, frozen=True):
    """Under the thread bridge between stitches `left` and `left` + 1 of row `row`.

    `foot`: the bridge at the lower ends of those stitches, next to the base row; of the base row, the one below it as it hangs.
    """

    section: Section
    row: int
    left: int
    foot: bool = False


class Guard(Struct, frozen=True):
    """Through a thread guard, which keeps the thread off the ear wire."""

    section: Section


class Ring(Struct, frozen=True):
    """Through a closed ring that carries the piece."""

    section: Section


class Through(Struct, frozen=True):
    """Through the ring of a charm."""

    section: Section
    name: str


class Anchor(Struct, frozen=True):
    """A thread begins; its tail is woven in later."""

    section: Section


class WeaveIn(Struct, frozen=True):
    """A thread ends: it is woven in and trimmed."""

    section: Section


Event = PickUp | Pass | Under | Guard | Ring | Through | Anchor | WeaveIn


class Path(Struct, frozen=True, dict=True):
    """What the body thread and then the fringe thread do; the fringe is empty where there is none."""

    body: tuple[Event, ...]
    fringe: tuple[Event, ...]

    @property
    def events(self) -> tuple[Event, ...]:
        return self.body + self.fringe

    def passes(self) -> dict[Place, int]:
        """How often the thread goes through each bead, threading counted."""
        return passes(self.events)

    def picked_up(self, *sections: Section) -> tuple[Place, ...]:
        """Every bead of these sections in the order of picking up."""
        return tuple(place for _, places in sorted(found for section in sections for found in self._picked_up.get(section, ())) for place in places)

    @cached_property
    def _picked_up(self) -> dict[Section, list[tuple[int, tuple[Place, ...]]]]:
        """Beads picked up in each section, with the number of the event: sections can take turns."""
        found: dict[Section, list[tuple[int, tuple[Place, ...]]]] = {}
        for number, event in enumerate(self.events):
            if isinstance(event, PickUp):
                found.setdefault(event.section, []).append((number, event.places))
        return found


def passes(events: Iterable[Event]) -> dict[Place, int]:
    """How often the thread goes through each bead, threading counted."""
    return Counter(chain.from_iterable(event.places for event in events if isinstance(event, (PickUp, Pass))))


def row_section(row: Row) -> Section:
    """The section of a row or part of a row."""
    return Section("row", row.number, row.part)


def row_place(row: Row, index: int, level: int = 0) -> Place:
    """One bead of a row; `index` counts in this part of the row."""
    return Place("row", row.number, row.before + index, level)


def stitch_places(row: Row, index: int, up: bool) -> tuple[Place, ...]:
    """The beads of one stitch in the order of a pass through it."""
    return _stitch_places(row.number, row.before + index, len(row.stitches[index].beads), up)


@lru_cache(maxsize=4096)   # a stitch is passed again and again
def _stitch_places(number: int, index: int, drop: int, up: bool) -> tuple[Place, ...]:
    places = tuple(Place("row", number, index, level) for level in range(drop))
    return places if up else places[::-1]


@lru_cache(maxsize=256)   # strands are passed down and up, and laid out
def strand_places(number: int, count: int) -> tuple[Place, ...]:
    """The beads of a strand from the first to the last that is picked up."""
    return tuple(Place("strand", number, index) for index in range(count))


def through(section: Section, row: Row, index: int, up: bool) -> Pass:
    """A pass through one stitch."""
    return Pass(section, stitch_places(row, index, up), up)


def bridge(section: Section, row: Row, left: int, foot: bool = False) -> Under:
    """Under the bridge between stitches `left` and `left` + 1 of this part of a row."""
    return Under(section, row.number, row.before + left, foot)


def worked_indexes(row: Row) -> list[int]:
    """Stitch indexes (from the left) in working order."""
    indexes = list(range(len(row.stitches)))
    return indexes if row.direction == RIGHT else indexes[::-1]


def edge_index(row: Row, side: str) -> int:
    """Index of the outermost stitch on a side."""
    return len(row.stitches) - 1 if side == RIGHT else 0
