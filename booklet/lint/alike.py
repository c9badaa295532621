"""Beads that lie side by side and look alike to some eye, in the legend and in each colourway."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import combinations

from msgspec import Struct

from ..craft.beads import Bead
from ..findings import Mark
from .neighbours import touching
from .sight import difference, seen
from .subject import Subject

PLAIN = "plain"   # sight that takes a colour as it is
LEAST = {PLAIN: 5.0, "red-blind": 4.0, "green-blind": 4.0, "blue-blind": 4.0, "grey": 2.5}   # CIEDE2000; common practice, no source


class Alike(Struct, frozen=True):
    """Two beads that one of these sights can hardly tell apart."""

    one: Bead
    other: Bead
    where: str          # "" in the legend, " in the colourway dusk" in a colourway
    places: int         # where they touch
    sights: tuple[str, ...]
    difference: float   # the least
    mark: Mark

    @property
    def names(self) -> str:
        return f"{self.one.key} ({self.one.name}) and {self.other.key} ({self.other.name})"

    @property
    def often(self) -> str:
        return f"in {self.places} places" if self.places > 1 else "in one place"


def alike(subject: Subject, *sights: str) -> Iterator[Alike]:
    """Pairs of one kind of bead that touch and look alike to one of these sights, and not already without it.

    Beads of two kinds differ in shape or size and need no colour to be told apart.
    """
    pattern = subject.pattern
    ways = {"": pattern.legend} | {name: {**pattern.legend, **changed} for name, changed in pattern.colourways.items()}
    for way, legend in ways.items():
        changed = set(pattern.colourways.get(way, legend))
        for one, other in combinations(legend.values(), 2):
            found = _close(one, other, sights)
            if found and changed & {one.key, other.key}:
                places = touching(subject.layout, legend, one.key, other.key)
                if places:
                    yield Alike(one, other, f" in the colourway {way}" if way else "", places, tuple(found), min(found.values()),
                                _mark(subject, way, changed, one, other))


def _close(one: Bead, other: Bead, sights: tuple[str, ...]) -> Mapping[str, float]:
    """The sights to which two beads of a kind look alike, with the difference that they see."""
    if one.kind != other.kind:
        return {}
    plain = difference(one.colour, other.colour)
    if (PLAIN in sights) != (plain < LEAST[PLAIN]):
        return {}
    if PLAIN in sights:
        return {PLAIN: plain}
    differences = {sight: difference(seen(one.colour, sight), seen(other.colour, sight)) for sight in sights}
    return {sight: value for sight, value in differences.items() if value < LEAST[sight]}


def _mark(subject: Subject, way: str, changed: set[str], one: Bead, other: Bead) -> Mark:
    """The colour of the later bead, where it is written."""
    key = other.key if other.key in changed else one.key
    return subject.pattern.mark("colourways", way, key, "colour") if way else subject.pattern.mark("beads", key, "colour")
