"""How strands hang: almost straight, swaying together a little, and spread where their ends are wide."""

from __future__ import annotations

from math import cos, sin

from msgspec import Struct

from ..craft.piece import Strand
from .beads import Track
from .picture import Point

SWAY = 0.035     # radians from upright at most
WAVE = 13.0      # mm of strand for a radian of the wave
LAG = 0.3        # radians by which each strand's wave is behind its left neighbour's, so that they do not cross
SPREAD = 0.06    # radians that the outermost strands lean outward where the end beads need room
BEND = 3         # beads from one bend of the drawn line to the next


class Hung(Struct, frozen=True):
    """One bead on a hanging line: both ends of its hole."""

    key: str
    head: Point
    foot: Point

    @property
    def middle(self) -> Point:
        return (self.head[0] + self.foot[0]) / 2, (self.head[1] + self.foot[1]) / 2


def hang(strand: Strand, x: float, y: float, lengths: dict[str, float], scale: float,
         outward: float = 0.0) -> list[Hung]:
    """The beads of a strand without its end beads, hung from (x, y); lengths in drawn mm.

    `outward` is the lean of the whole strand in radians, to the right where positive.
    """
    beads, done = [], 0.0
    for index, key in enumerate(strand.beads):
        if index % BEND == 0:
            lean = outward + SWAY * sin(done / (WAVE * scale) - LAG * strand.number) * min(1.0, done / (6 * scale))
        head, step = (x, y), lengths[key]
        x, y, done = x + step * sin(lean), y + step * cos(lean), done + step
        beads.append(Hung(key, head, (x, y)))
    return beads


def track(beads: list[Hung], pitch: float) -> Track:
    """The line of a run of equal beads."""
    return Track((*(bead.head for bead in beads[::BEND]), beads[-1].foot), pitch)
