"""Two rows of the body have changed places.

Each of the two can still be worked, with steps at its ends, but the rows would widen and narrow evenly, or be like the rows on the other side
of the base row, if they stood the other way round.

Bad:

    body:
      chart: |
        7 |       B
        6 |      B B
        5 |   B B B B B
        4 |    B B B B
        3 |     B B B
        2 |  B B B B B B
        1 | B W B W B W B

Good:

    body:
      chart: |
        7 |       B
        6 |      B B
        5 |     B B B
        4 |    B B B B
        3 |   B B B B B
        2 |  B B B B B B
        1 | B W B W B W B
"""

from __future__ import annotations

from collections.abc import Iterator

from ...findings import Finding, Severity
from ..mirrors import exchanged_rows
from ..progressions import swapped
from ..subject import Subject

ID, SEVERITY, NEEDS = "rows-out-of-order", Severity.WARNING, "path"


def check(subject: Subject) -> Iterator[Finding]:
    """The two rows, at the one that is worked later."""
    rows = subject.piece.drawn
    places = swapped([len(row.stitches) for row in rows])
    pair = tuple(rows[index] for index in places) if places else exchanged_rows(subject.piece)
    if pair:
        why = "the rows would widen and narrow evenly" if places else "the rows above and below the base row would be mirror pictures"
        first, last = sorted(row.number for row in pair)
        yield Finding(subject.pattern.mark("row", last), SEVERITY, ID, f"rows {first} and {last} seem to have changed places: the other way round {why}")
