"""The largest scale at which a chart fits a box."""

from __future__ import annotations

from collections.abc import Callable
from math import floor

from msgspec import Struct

LEAST_BEAD = 2.4    # mm: no bead is printed narrower, so that its letter can be read
GUESSES = 5         # after so many the range is halved, whatever the picture
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
    """The largest scale in steps of `STEP`, up to `most`, at which size_at(bead) is within width x height mm.

    A chart grows almost evenly with its beads, so its sizes at two scales tell nearly which one fits.
    """
    low, high, fit = 0, round(most / STEP), Fit(0.0, 0.0, 0.0)
    tried, guess, was, before = 0, (high + 1) // 2, 0, (0.0, 0.0)
    while low < high:
        middle = min(max(guess, low + 1), high) if tried < GUESSES else (low + high + 1) // 2
        bead = round(middle * STEP, 2)
        size = size_at(bead)
        if size[0] <= width and size[1] <= height:
            low, fit = middle, Fit(bead, *size)
        else:
            high = middle - 1
        reached = [middle + (box - now) * (middle - was) / (now - then) for box, now, then in zip((width, height), size, before) if (now - then) * (middle - was) > 0]
        tried, guess, was, before = tried + 1, floor(min(reached, default=high)), middle, size
    return fit
