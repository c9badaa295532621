"""How many passes of a thread a bead's hole can hold at the very most."""

from __future__ import annotations

from bisect import bisect_right

# Circles of diameter 1 that lie side by side in a circle: the least diameter of that circle for 1, 2, 3 ... of them.
# Published as "Circle packing in a circle" (encyclopedia).
LEAST_HOLE = (1.0, 2.0, 2.155, 2.414, 2.701, 3.0, 3.0, 3.304, 3.613, 3.813, 3.923, 4.029, 4.236)
ROUNDING = 1e-9


def most_passes(hole: float, thread: float) -> int:
    """The most passes of a round thread of `thread` mm that a hole of `hole` mm has room for; never more than 13.

    The real limit is lower: the needle has to come through on the last pass, and thread does not lie in order.
    """
    return bisect_right(LEAST_HOLE, hole / thread + ROUNDING)
