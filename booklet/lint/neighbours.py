"""How often beads of two keys lie side by side in the finished piece: in a row, one upon the other, along a strand, strand by strand."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections import defaultdict
from collections.abc import Mapping

from ..craft.beads import Bead
from ..craft.layout import Layout

TOUCH = 1.1   # of the distance at which two beads touch
# How much of their lengths two beads must share to touch, by the quarters of a stitch between them: one upon the other; half a
# stitch aside, as from row to row; a whole stitch aside, as in a row.
REACH = {0: 1.0, 1: 1.0, 2: 1.0, 3: 1.0, 4: 0.5}


def touching(placed: Layout, legend: Mapping[str, Bead], one: str, other: str) -> int:
    """How many pairs of a bead of each key touch."""
    length = (legend[one].kind.length + legend[other].kind.length) / 2 * TOUCH
    spots = [(spot, placed.lying and place.part == "row") for place, spot in placed.spots.items() if spot.key in (one, other)]
    standing = [(spot.x, spot.y, spot.key == one) for spot, lies in spots if not lies]
    # Beads that lie along their row are side by side as beads that stand are, turned a quarter.
    lying = [(spot.y, spot.x, spot.key == one) for spot, lies in spots if lies]
    return sum(_touching(beads, placed.pitch, length) for beads in (standing, lying))


def _touching(beads: list[tuple[float, float, bool]], pitch: float, length: float) -> int:
    """Pairs among beads whose holes are upright, given as x, y and whether they are of the one key."""
    columns: defaultdict[int, list[float]] = defaultdict(list)   # heights of the one key, by quarters of a stitch from the left
    for x, y, is_one in beads:
        if is_one:
            columns[round(x / pitch * 4)].append(y)
    for column in columns.values():
        column.sort()
    count = 0
    for place, y in [(round(x / pitch * 4), y) for x, y, is_one in beads if not is_one]:
        for aside in range(-4, 5):
            column, reach = columns.get(place + aside), length * REACH[abs(aside)]
            if column:
                count += bisect_right(column, y + reach) - bisect_left(column, y - reach)
    return count
