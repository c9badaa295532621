"""How many passes of a thread the hole of a bead can hold, and whether the needle still comes through."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence

# Circles of diameter 1 that lie side by side in a circle: the least diameter of that circle for 1, 2, 3 ... of them.
# Published as "Circle packing in a circle" (encyclopedia).
LEAST_HOLE = (1.0, 2.0, 2.155, 2.414, 2.701, 3.0, 3.0, 3.304, 3.613, 3.813, 3.923, 4.029, 4.236)
ROUNDING = 1e-9

# The part of a hole's area that needle and threads may fill on the last pass. Thread does not lie in order, and a needle that
# has to be forced breaks beads. A published limit sets it: "Choosing Thread" goes not more than 3 times through 11/0 with
# nylon D, which by our figures fills 0.51 of the hole with a needle of size 12; a fourth pass would fill 0.65.
MOST_FILLED = 0.57

# Thread gives way, and published sizes of holes and threads spread by 10 to 25 %. What is called impossible is so even with every
# thread pressed to this part of its thickness.
PRESSED = 0.8


def most_passes(hole: float, thread: float) -> int:
    """The most passes of a round thread of `thread` mm that a hole of `hole` mm has room for; never more than 13.

    The real limit is lower: the needle has to come through on the last pass, and thread does not lie in order.
    """
    return bisect_right(LEAST_HOLE, hole / thread + ROUNDING)


def can_hold(hole: float, threads: Sequence[float]) -> bool:
    """False where threads of these diameters (mm) cannot lie side by side in the hole, however they are laid.

    It tells impossible from possible only one way: the thickest k of them need the room of k as thin as the thinnest of
    these k, and all of them together no more than the area of the hole.
    """
    thick = sorted(threads, reverse=True)
    if sum(thread**2 for thread in thick) > hole**2 + ROUNDING:
        return False
    return all(most_passes(hole, thread) >= count for count, thread in enumerate(thick[:len(LEAST_HOLE)], 1))


def filled(hole: float, needle: float, threads: Sequence[float]) -> float:
    """The part of the hole's area that a needle fills with the threads (diameters in mm) that are in the hole already."""
    return (needle**2 + sum(thread**2 for thread in threads)) / hole**2


def comfortable(hole: float, needle: float, threads: Sequence[float]) -> bool:
    """Whether a needle still goes through a hole with these threads in it without being forced."""
    return needle <= hole and filled(hole, needle, threads) <= MOST_FILLED + ROUNDING
