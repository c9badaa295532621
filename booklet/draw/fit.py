"""The largest scale at which a chart fits a box."""

from __future__ import annotations

from collections.abc import Callable

from msgspec import Struct

LEAST_BEAD = 2.4    # mm: no bead is printed narrower, so that its letter can be read
STEP = 0.05         # mm: scales are multiples of this, so that half a bead is still a round figure


class Fit(Struct, frozen=True):
    """The scale that fits a box, and what comes of it."""

    bead: float      # mm across a bead; 0 when not even the smallest fits
    width: float     # of the whole picture, mm
    height: float

    @property
    def legible(self) -> bool:
        """Whether beads are wide enough to print."""
        return self.bead >= LEAST_BEAD


def largest(size_at: Callable[[float], tuple[float, float]], width: float, height: float, most: float = 8.0) -> Fit:
    """The largest scale in steps of `STEP`, up to `most`, at which size_at(bead) is within width x height mm."""
    low, high = 0, round(most / STEP)
    while low < high:
        middle = (low + high + 1) // 2
        across, down = size_at(middle * STEP)
        low, high = (middle, high) if across <= width and down <= height else (low, middle - 1)
    bead = round(low * STEP, 2)
    return Fit(bead, *size_at(bead)) if bead else Fit(0.0, 0.0, 0.0)
