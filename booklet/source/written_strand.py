"""A strand as written: beads with their places, twigs and charms."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct
from msgspec.structs import replace

from ..craft.strand import STRAIGHT, Charm, Strand, Twig
from ..findings import Mark
from .chart import DrawnBead

Beads = tuple[DrawnBead, ...]


class DrawnCharm(Struct, frozen=True):
    """A charm or ring, after so many beads of its line or of the end beads."""

    at: int
    name: str
    mark: Mark

    @property
    def made(self) -> Charm:
        return Charm(self.at, self.name)


class DrawnTwig(Struct, frozen=True):
    """A twig, after so many beads of its strand."""

    at: int
    beads: Beads
    end: Beads
    mark: Mark
    hung: tuple[DrawnCharm, ...] = ()
    turned: tuple[DrawnCharm, ...] = ()

    @property
    def made(self) -> Twig:
        return Twig(self.at, keys_of(self.beads), keys_of(self.end), _made(self.hung), _made(self.turned))


class WrittenStrand(Struct, frozen=True):
    """The beads of a strand from the top down, runs written out. Mirrored strands share their marks."""

    beads: Beads
    end: Beads
    mark: Mark
    kind: str = STRAIGHT
    to: int = 0                                       # as in craft.strand.Strand
    second: Beads = ()
    hung: tuple[DrawnTwig | DrawnCharm, ...] = ()
    turned: tuple[DrawnCharm, ...] = ()
    place: int = 0                                    # from the left, 1 first

    @property
    def every(self) -> Iterator[DrawnBead]:
        """All beads, wherever they stand."""
        yield from (*self.beads, *self.end, *self.second)
        for thing in self.hung:
            if isinstance(thing, DrawnTwig):
                yield from (*thing.beads, *thing.end)

    @property
    def charms(self) -> Iterator[DrawnCharm]:
        """All charms, wherever they stand."""
        for line in (self, *(thing for thing in self.hung if isinstance(thing, DrawnTwig))):
            yield from (thing for thing in (*line.hung, *line.turned) if isinstance(thing, DrawnCharm))

    @property
    def made(self) -> Strand:
        """The strand of the piece."""
        return Strand(self.place, keys_of(self.beads), keys_of(self.end), self.kind, self.to, keys_of(self.second),
                      _made(self.hung), _made(self.turned))

    def mirrored(self) -> WrittenStrand:
        """The same strand on the other side."""
        return replace(self, to=-self.to)


def keys_of(beads: Beads) -> tuple[str, ...]:
    return tuple(bead.key for bead in beads)


def _made(things: tuple) -> tuple:
    return tuple(thing.made for thing in things)
