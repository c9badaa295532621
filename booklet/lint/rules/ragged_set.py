"""The lines of one row do not have their beads in the same columns.

With drop 2 or more, the beads of a stitch stand one above the other. A set with a bead missing, or one too
many, can be neither counted nor worked.

Bad:

    body:
      drop: 2
      chart: |
        2 |  B B
          |  W W
        1 | W B W
          | W B

Bad:

    body:
      drop: 2
      chart: |
        2 |  B B
          |  W W
        1 | W B W
          |  W B W

Good:

    body:
      drop: 2
      chart: |
        2 |  B B
          |  W W
        1 | W B W
          | W B W
"""

from __future__ import annotations

from collections.abc import Iterator

from ...findings import Finding, Severity
from ...source.chart import DrawnRow
from ..subject import Subject

ID, SEVERITY, NEEDS = "ragged-set", Severity.ERROR, "pattern"


def check(subject: Subject) -> Iterator[Finding]:
    """The first thing wrong with each such row: a line that is shifted, or a stitch that is not whole."""
    for row in subject.pattern.chart.rows:
        columns = [{bead.at for bead in line} for line in row.lines]
        if any(other != columns[0] for other in columns):
            yield _shifted(row) or _not_whole(row, columns)


def _shifted(row: DrawnRow) -> Finding | None:
    first = row.lines[0]
    for line in row.lines[1:]:
        shifts = {bead.at - above.at for above, bead in zip(first, line)}
        if len(line) == len(first) and len(shifts) == 1 and shifts != {0}:
            shift = shifts.pop()
            signs = "1 character" if abs(shift) == 1 else f"{abs(shift)} characters"
            return Finding(line[0].mark, SEVERITY, ID,
                           f"this line stands {signs} to the {'right' if shift > 0 else 'left'} of the first line of its row")
    return None


def _not_whole(row: DrawnRow, columns: list[set[int]]) -> Finding:
    every = sorted(set.union(*columns))
    at = min(set(every) - set.intersection(*columns))
    beads = [bead for line in row.lines for bead in line if bead.at == at]
    return Finding(beads[0].mark, SEVERITY, ID,
                   f"stitch {every.index(at) + 1} from the left of this row has {len(beads)} of its {len(row.lines)} beads")
