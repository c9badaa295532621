"""Chart text of a body whose beads lie along the row: peyote, square stitch and loom work.

A row is one line. The beads of a set stand without a space between them, and the next set of the row as far on as a set is
wide, so that the sets of the rows above and below have their columns between.
"""

from __future__ import annotations

from itertools import groupby

from ..findings import Finding
from .chart import DrawnBead, DrawnChart, DrawnRow, Line, error, read_lines
from .written import Written


def read_lying_chart(written: Written, drop: int) -> tuple[DrawnChart, list[Finding]]:
    """Rows of such a chart. A row has `drop` lines as if sets stood upright: the first, second ... bead of each set, with the
    position of their set."""
    lines, found = read_lines(written, numbers=True)
    zero = min((line.beads[0].at for line in lines if line.beads), default=0)
    rows = []
    for line in lines:
        sets = _sets(line)
        slips = _slips(sets, drop, zero)
        found += slips
        beads = [[DrawnBead(bead.key, bead.mark, zero + (each[0].at - zero) // drop) for bead in each] for each in sets]
        rows.append(DrawnRow((line.beads,) if slips else tuple(zip(*beads)), line.number, line.number_mark, line.mark))
    return DrawnChart(tuple(rows), broken=bool(found)), found


def _sets(line: Line) -> list[list[DrawnBead]]:
    """Beads without a space between them."""
    apart = [bead.at - index for index, bead in enumerate(line.beads)]
    return [[bead for bead, _ in same] for _, same in groupby(zip(line.beads, apart), lambda pair: pair[1])]


def _slips(sets: list[list[DrawnBead]], drop: int, zero: int) -> list[Finding]:
    found = []
    for each in sets:
        if len(each) != drop:
            found.append(error(each[0].mark, f"{len(each)} bead{'s' * (len(each) > 1)} stand{'s' * (len(each) == 1)} here side by side, but drop is {drop}",
                               "two neighbours of a row stand two characters apart" if drop == 1 else
                               f"the {drop} beads of a set stand without a space, with {drop} spaces before the next set"))
    if found:
        return found
    for left, right in zip(sets, sets[1:]):
        apart = right[0].at - left[0].at
        if apart % (2 * drop):
            found.append(error(right[0].mark, f"{left[0].key} and {right[0].key} begin {apart} characters apart",
                               f"two neighbours of a row begin {2 * drop} characters apart"))
    if not found and sets and (sets[0][0].at - zero) % drop:
        found.append(error(sets[0][0].mark, "the sets of this row stand between two columns", f"a row begins a multiple of {drop} characters from the leftmost one"))
    return found
