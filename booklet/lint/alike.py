"""Beads that lie side by side and look alike to some eye, in the legend and in each colourway."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import combinations
from typing import TYPE_CHECKING

from msgspec import Struct

from ..craft.beads import Bead
from ..findings import Mark
from .neighbours import touching
from .sight import difference, is_under, seen

if TYPE_CHECKING:
    from .subject import Subject

PLAIN, GREY = "plain", "grey"   # sight that takes a colour as it is, and what a print without colour shows
LEAST = {PLAIN: 5.0, "red-blind": 4.0, "green-blind": 4.0, "blue-blind": 4.0, GREY: 2.5}   # CIEDE2000; common practice, no source


class Alike(Struct, frozen=True):
    """Two beads that some of these sights can hardly tell apart."""

    one: Bead
    other: Bead
    where: str                       # "" in the legend, " in the colourway dusk" in a colourway
    places: int                      # where they touch
    sights: Mapping[str, float]      # with the difference that each sees: PLAIN alone, or others that see less than that
    mark: Mark

    @property
    def said(self) -> str:
        """The pair, and where it touches."""
        often = f"in {self.places} places" if self.places > 1 else "in one place"
        return f"{self.one.key} ({self.one.name}) and {self.other.key} ({self.other.name}) touch {often}{self.where}"


def alike(subject: Subject) -> Iterator[Alike]:
    """Pairs of one kind of bead that touch and look alike, in the legend and in each colourway.

    Beads of two kinds differ in shape or size and need no colour to be told apart.
    """
    pattern = subject.pattern
    ways = {"": pattern.legend} | {name: {**pattern.legend, **changed} for name, changed in pattern.colourways.items()}
    for way, legend in ways.items():
        changed = set(pattern.colourways.get(way, legend))
        for one, other in combinations(legend.values(), 2):
            sights = _close(one, other) if one.kind == other.kind and changed & {one.key, other.key} else {}
            places = touching(subject.layout, legend, one.key, other.key) if sights else 0
            if places:
                yield Alike(one, other, f" in the colourway {way}" if way else "", places, sights, _mark(subject, way, changed, one, other))


def _close(one: Bead, other: Bead) -> Mapping[str, float]:
    """The sights to which two beads look alike, with the difference that they see."""
    if is_under(one.colour, other.colour, LEAST[PLAIN]):
        return {PLAIN: difference(one.colour, other.colour)}
    pairs = {sight: (seen(one.colour, sight), seen(other.colour, sight)) for sight in LEAST if sight != PLAIN}
    return {sight: difference(*pair) for sight, pair in pairs.items() if is_under(*pair, LEAST[sight])}


def _mark(subject: Subject, way: str, changed: set[str], one: Bead, other: Bead) -> Mark:
    """The colour of the later bead, where it is written."""
    key = other.key if other.key in changed else one.key
    return subject.pattern.mark("colourways", way, key, "colour") if way else subject.pattern.mark("beads", key, "colour")
