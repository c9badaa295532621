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
    columns: defaultdict[int, list[float]] = defaultdict(list)   # heights of the one key, by quarters of a stitch from the left
    found = [(round(spot.x / placed.pitch * 4), spot.y) for spot in placed.spots.values() if spot.key == other]
    for spot in placed.spots.values():
        if spot.key == one:
            columns[round(spot.x / placed.pitch * 4)].append(spot.y)
    for column in columns.values():
        column.sort()
    length = (legend[one].kind.length + legend[other].kind.length) / 2 * TOUCH
    count = 0
    for place, y in found:
        for aside in range(-4, 5):
            column, reach = columns.get(place + aside), length * REACH[abs(aside)]
            if column:
                count += bisect_right(column, y + reach) - bisect_left(column, y - reach)
    return count
