"""One row of the body lies aside, and all others lie evenly about one middle.

A row that was drawn a whole stitch too far to the side still stands on thread bridges and can be worked, with a step at each end, so
nothing else shows the slip.

Bad:

    body:
      chart: |
        5 |     B B
        4 |    B W B
        3 |     B W W B
        2 |  B W W W B
        1 | B W W W W B

Good:

    body:
      chart: |
        5 |     B B
        4 |    B W B
        3 |   B W W B
        2 |  B W W W B
        1 | B W W W W B
"""

from __future__ import annotations

from collections.abc import Iterator

from ...craft.stitches import stitch_of
from ...findings import Finding, Severity
from ..mirrors import middle_of
from ..subject import Subject

ID, SEVERITY, NEEDS = "row-off-centre", Severity.WARNING, "path"

FEWEST = 5   # rows in all; of fewer nothing can be said


def check(subject: Subject) -> Iterator[Finding]:
    """The row, how far it lies aside and on which side. Rows that interlock have no middle in common."""
    piece = subject.piece
    rows, middle = piece.drawn, middle_of(piece)
    aside = [row for row in rows if row.first + row.last != middle]
    if len(rows) < FEWEST or len(aside) != 1 or stitch_of(piece).INTERLOCKED:
        return
    stitches, rest = divmod(abs(aside[0].first + aside[0].last - middle), 4)   # both ends a whole stitch aside
    if rest == 0:
        side = "right" if aside[0].first + aside[0].last > middle else "left"
        yield Finding(subject.pattern.mark("row", aside[0].number), SEVERITY, ID,
                      f"row {aside[0].number} lies {stitches} stitch{'es' if stitches > 1 else ''} too far to the {side}; all other rows lie evenly about one middle")
