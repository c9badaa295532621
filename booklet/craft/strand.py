"""A strand of fringe: its beads, its twigs, and what it passes on its way.

A strand is straight (down, skip the end beads, back up), a loop (down at one place, up at another), or a twist (down one
line and up another, the two twisted round each other). Straight strands may bear twigs; every strand may pass charms.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import cached_property
from itertools import accumulate

from msgspec import Struct
from msgspec.structs import replace

STRAIGHT, LOOP, TWIST = "straight", "loop", "twist"


class Charm(Struct, frozen=True):
    """A charm or ring that the thread passes; the maker finds it among the findings."""

    at: int     # beads of its line, or of the end beads where it hangs among those, that come before it
    name: str   # the item of a finding


class Twig(Struct, frozen=True):
    """A short line of beads beside a strand, with end beads of its own."""

    at: int                            # beads of the strand that come before it
    beads: tuple[str, ...]
    end: tuple[str, ...]
    hung: tuple[Charm, ...] = ()
    turned: tuple[Charm, ...] = ()


class Strand(Struct, frozen=True, dict=True):
    """One line of fringe. Keys run from the top down; those of a loop from the place `number` to the other one."""

    number: int                           # its place from the left as it hangs, 1 first, whichever hand works it
    beads: tuple[str, ...]                # without the end beads
    end: tuple[str, ...]                  # the end beads, which the needle skips on its way back
    kind: str = STRAIGHT
    to: int = 0                           # of a loop: places from `number` to where it comes up, to the right if positive
    second: tuple[str, ...] = ()          # of a twist: the line that leads back up
    hung: tuple[Twig | Charm, ...] = ()   # twigs and charms of the line, in the order of picking up
    turned: tuple[Charm, ...] = ()        # charms among the end beads

    @cached_property
    def all(self) -> tuple[str, ...]:
        """Every bead in the order of picking up: twigs at their places, a second line from the bottom up."""
        return (*_keys(self), *self.second[::-1])

    @property
    def twigs(self) -> tuple[Twig, ...]:
        return tuple(thing for thing in self.hung if isinstance(thing, Twig))

    @property
    def charms(self) -> tuple[str, ...]:
        """The name of every charm, twigs included."""
        return tuple(charm.name for line in (self, *self.twigs) for charm in (*line.hung, *line.turned) if isinstance(charm, Charm))

    def span(self, hand: str) -> tuple[int, int]:
        """The places at which the needle goes down and comes up; a loop is worked the way the fringe is worked."""
        ends = sorted((self.number, self.number + self.to))
        return (ends[0], ends[1]) if hand == "right" else (ends[1], ends[0])

    def turned_over(self, places: int) -> Strand:
        """The same strand where left and right of a fringe of so many places are exchanged."""
        return replace(self, number=places + 1 - self.number, to=-self.to)


def _keys(line: Strand | Twig) -> Iterator[str]:
    done = 0
    for thing in line.hung:
        yield from line.beads[done:thing.at]
        done = thing.at
        if isinstance(thing, Twig):
            yield from _keys(thing)
    yield from line.beads[done:]
    yield from line.end


def middles(lengths: Sequence[float]) -> list[float]:
    """Where the middle of each bead is on its line, from its length and those of the beads before it."""
    return [end - length / 2 for end, length in zip(accumulate(lengths), lengths)]


class Laid(Struct, frozen=True):
    """A line and where its beads stand in the strand's order of picking up."""

    line: Strand | Twig
    beads: tuple[int, ...]
    end: tuple[int, ...]


def laid(strand: Strand) -> tuple[Laid, ...]:
    """The strand's own line first, then its twigs from the top down."""
    own: list[int] = []
    twigs, following, done = [], 0, 0
    for twig in strand.twigs:
        own += range(following, following + twig.at - done)
        following, done = following + twig.at - done, twig.at
        foot = following + len(twig.beads)
        twigs.append(Laid(twig, tuple(range(following, foot)), tuple(range(foot, foot + len(twig.end)))))
        following = foot + len(twig.end)
    foot = following + len(strand.beads) - done
    own += range(following, foot)
    return (Laid(strand, tuple(own), tuple(range(foot, foot + len(strand.end)))), *twigs)
