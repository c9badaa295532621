"""How the fringe chart lays out one strand: in columns that are read from the top down, so that every letter can stand.

A twig stands in a column of its own beside the strand; the two sides of a loop, and the two lines of a twisted pair,
stand next to each other. Lengths are mm as drawn; x is measured from the middle of the strand's place and y from where
strands begin.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import cached_property

from msgspec import Struct, field
from msgspec.structs import replace

from ..craft.beads import Bead
from ..craft.drape import twig_side
from ..craft.strand import LOOP, TWIST, Charm, Laid, Strand, Twig, laid
from .picture import Point
from .strands import end_offsets


class Placed(Struct, frozen=True):
    """One bead, centred on (x, y)."""

    key: str
    x: float
    y: float
    end: bool = False
    number: int = 0     # in counting along its line, 1 first; 0 where beads are not counted


class PlacedCharm(Struct, frozen=True):
    """A charm or ring, hanging from (x, y)."""

    name: str
    x: float
    y: float


class Columns(Struct):
    """Everything of one strand."""

    runs: list[list[Placed]] = field(default_factory=list)      # beads one below the other
    ends: list[Placed] = field(default_factory=list)
    threads: list[list[Point]] = field(default_factory=list)
    charms: list[PlacedCharm] = field(default_factory=list)

    @property
    def beads(self) -> list[Placed]:
        return [*(bead for run in self.runs for bead in run), *self.ends]


class Columnist(Struct, frozen=True, dict=True):
    """Lays out strands at one scale; `bead` is the mm of a body bead and `gap` what parts two beads."""

    legend: Mapping[str, Bead]
    scale: float
    bead: float
    gap: float

    def columns(self, strand: Strand, hand: str) -> Columns:
        """The strand's beads at their places."""
        if strand.kind == LOOP:
            return self._loop(strand, hand)
        return self._twist(strand) if strand.kind == TWIST else self._straight(strand)

    @cached_property
    def lengths(self) -> dict[str, float]:
        """mm that each bead takes along its hole."""
        return {key: bead.kind.length * self.scale for key, bead in self.legend.items()}

    @cached_property
    def widths(self) -> dict[str, float]:
        """mm that it takes across."""
        return {key: bead.kind.diameter * self.scale for key, bead in self.legend.items()}

    def length(self, key: str) -> float:
        return self.lengths[key]

    def width(self, key: str) -> float:
        return self.widths[key]

    def _straight(self, strand: Strand) -> Columns:
        found, joints = Columns(), []
        own, *twigs = laid(strand)
        foot = self._line(found, strand.beads, strand.hung, 0.0, 0.0, joints)
        found.threads.append([(0.0, 0.0), (0.0, foot)])
        self._end(found, strand, 0.0, foot)
        half = max((self.width(key) for key in strand.beads), default=self.bead) / 2
        ends = max((abs(bead.x) + self.width(bead.key) / 2 for bead in found.ends), default=0.0), foot
        taken: dict[tuple[int, int], float] = {}
        for number, (twig, joint) in enumerate(zip(twigs, joints)):
            self._twig(found, twig, twig_side(number), joint, half, taken, ends)
        return found

    def _line(self, found: Columns, beads: tuple[str, ...], hung: tuple[Twig | Charm, ...], x: float, y: float, joints: list[float] | None = None,
              counted: bool = True) -> float:
        """Beads from y down, parted by charms; notes where twigs begin. Returns the foot."""
        done = 0
        for thing in (*hung, None):
            stop = len(beads) if thing is None else thing.at
            run = []
            for index in range(done, stop):
                key = beads[index]
                length = self.lengths[key]
                run.append(Placed(key, x, y + length / 2, False, index + 1 if counted else 0))
                y += length
            found.runs += [run] if run else []
            done = stop
            if isinstance(thing, Charm):
                found.charms.append(PlacedCharm(thing.name, x, y + self.bead / 2))
                y += self.bead
            elif thing is not None:
                joints.append(y)
        return y

    def _end(self, found: Columns, line: Strand | Twig, x: float, foot: float) -> float:
        """End beads, and below them the charms that hang there. Returns the lowest point."""
        offsets = end_offsets([self.legend[key].kind for key in line.end], 2.2 * self.gap, self.scale)
        ends = [Placed(key, x + dx, foot + dy, end=True) for key, (dx, dy) in zip(line.end, offsets)]
        found.ends += ends
        if ends:
            found.threads.append([(x, foot), *((bead.x, bead.y) for bead in ends), (x, foot)])
        low = max((bead.y + self.length(bead.key) / 2 for bead in ends), default=foot)
        for charm in line.turned:
            found.charms.append(PlacedCharm(charm.name, x, low + self.bead / 2))
            found.threads.append([(x, low), (x, low + self.bead / 2)])
            low += self.bead
        return low

    def _twig(self, found: Columns, twig: Laid, side: int, joint: float, half: float, taken: dict[tuple[int, int], float],
              ends: tuple[float, float]) -> None:
        """A twig in the nearest column that is free there, on its own side if it can be; clear of the strand's end beads (half width, top)."""
        alone = Columns()
        foot = self._end(alone, twig.line, 0.0, self._line(alone, twig.line.beads, twig.line.hung, 0.0, 0.0, counted=False))
        wide = max([abs(bead.x) + self.width(bead.key) / 2 for bead in alone.beads] + [self.bead / 2]) + 1.1 * self.gap
        top, level = joint + 0.35 * self.bead, 1
        while taken.get((side, level), 0.0) > top:
            side, level = (-side, level) if taken.get((-side, level), 0.0) <= top else (side, level + 1)
        taken[side, level] = top + foot + self.gap
        half = max(ends[0], half) if top + foot > ends[1] else half
        x = side * (half + 1.1 * self.gap + (2 * level - 1) * wide)
        found.threads.append([(0.0, joint), (x, top), (x, top + foot)])
        found.runs += [[_moved(bead, x, top) for bead in run] for run in alone.runs]
        found.ends += [_moved(bead, x, top) for bead in alone.ends]
        found.threads += [[(px + x, py + top) for px, py in line] for line in alone.threads]
        found.charms += [replace(charm, x=charm.x + x, y=charm.y + top) for charm in alone.charms]

    def _aside(self, keys: tuple[str, ...]) -> float:
        """How far the two sides of a pair stand from the middle."""
        return max(map(self.width, keys)) / 2 + 0.8 * self.gap

    def _twist(self, strand: Strand) -> Columns:
        found, aside = Columns(), self._aside(strand.beads + strand.second)
        feet = []
        for x, beads in ((-aside, strand.beads), (aside, strand.second)):
            feet.append(self._line(found, beads, (), x, 0.0))
            found.threads.append([(x, 0.0), (x, feet[-1]), (0.0, max(feet) + self.gap)])
        self._end(found, strand, 0.0, max(feet))
        return found

    def _loop(self, strand: Strand, hand: str) -> Columns:
        found, count, aside = Columns(), len(strand.beads), self._aside(strand.beads)
        backwards = strand.to < 0     # written from the right
        keys = strand.beads[::-1] if backwards else strand.beads
        charms = {count - charm.at if backwards else charm.at: charm.name for charm in strand.hung}
        numbers = list(range(1, count + 1)) if hand == "right" else list(range(count, 0, -1))
        left, low = self._half(keys)
        feet = []
        for x, indexes in ((-aside, range(left)), (aside, range(count - 1, left + low - 1, -1))):
            y, run = 0.0, []
            for index in indexes:
                run.append(Placed(keys[index], x, y + self.length(keys[index]) / 2, number=numbers[index]))
                y += self.length(keys[index])
            found.runs += [run] if run else []
            found.threads.append([(x, 0.0), (x, y)])
            feet.append(y)
        foot = max(feet) + (self.gap if low else 0.0)
        if low:
            found.runs.append([Placed(keys[left], 0.0, foot + self.length(keys[left]) / 2, number=numbers[left])])
        found.threads.append([(-aside, feet[0]), (0.0, foot + (self.length(keys[left]) if low else self.gap)), (aside, feet[1])])
        for after, name in charms.items():
            found.charms.append(self._beside(name, after, keys, left, low, aside, foot))
        return found

    def _half(self, keys: tuple[str, ...]) -> tuple[int, int]:
        """Beads of the left side of a loop, and whether one lies at its foot."""
        total, done = sum(map(self.length, keys)), 0.0
        for index, key in enumerate(keys):
            if done + self.length(key) > total / 2 + 1e-9:
                return index, int(done < total / 2 - 1e-9)
            done += self.length(key)
        return len(keys), 0

    def _beside(self, name: str, after: int, keys: tuple[str, ...], left: int, low: int, aside: float, foot: float) -> PlacedCharm:
        """A charm of a loop: at its foot, or outside one of its sides."""
        if left <= after <= left + low:
            return PlacedCharm(name, 0.0, foot + (self.length(keys[left]) if low else 0.0) + self.bead / 2)
        side = -1 if after < left else 1
        above = keys[:after] if side < 0 else keys[after:]
        return PlacedCharm(name, side * (2 * aside + self.bead / 2), sum(map(self.length, above)))


def _moved(bead: Placed, x: float, y: float) -> Placed:
    return replace(bead, x=bead.x + x, y=bead.y + y)
