"""How often beads of two keys lie side by side in the finished piece: in a row, one upon the other, along a strand, strand by strand."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections import defaultdict
from collections.abc import Mapping

from ..craft.beads import Bead
from ..craft.kept import kept
from ..craft.layout import Layout

TOUCH = 1.1   # of the distance at which two beads touch
# How much of their lengths two beads must share to touch, by the quarters of a stitch between them: one upon the other; half a
# stitch aside, as from row to row; a whole stitch aside, as in a row.
REACH = {0: 1.0, 1: 1.0, 2: 1.0, 3: 1.0, 4: 0.5}


Columns = Mapping[int, list[float]]   # heights from the lowest up, by quarters of a stitch from the left


def touching(placed: Layout, legend: Mapping[str, Bead], one: str, other: str) -> int:
    """How many pairs of a bead of each key touch."""
    length, columns = (legend[one].kind.length + legend[other].kind.length) / 2 * TOUCH, _columns(placed)
    return sum(_touching(columns.get((one, lying), {}), columns.get((other, lying), {}), length) for lying in (False, True))


def _touching(columns: Columns, others: Columns, length: float) -> int:
    """Pairs of a bead of the one columns and one of the others; their holes are upright."""
    count = 0
    for place, heights in others.items():
        for aside in range(-4, 5):
            column, reach = columns.get(place + aside), length * REACH[abs(aside)]
            if column:
                count += sum(bisect_right(column, y + reach) - bisect_left(column, y - reach) for y in heights)
    return count


@kept
def _columns(placed: Layout) -> Mapping[tuple[str, bool], Columns]:
    """The beads of each key, those that stand and those that lie along their row, which are side by side as beads that stand are, turned a quarter."""
    found: defaultdict[tuple[str, bool], defaultdict[int, list[float]]] = defaultdict(lambda: defaultdict(list))
    for place, spot in placed.spots.items():
        lies = placed.lying and place.part == "row"
        across, along = (spot.y, spot.x) if lies else (spot.x, spot.y)
        found[spot.key, lies][round(across / placed.pitch * 4)].append(along)
    for columns in found.values():
        for column in columns.values():
            column.sort()
    return found
