"""The number that stands before a row is not the number of that row.

Rows are numbered from the base row, 1, in the order in which they are worked: up to the top row, then from the
base row down. A number that is off by one is often all that shows of a row left out of the drawing.

Bad:

    body:
      chart: |
        3 |  B B
        1 | W B W

Good:

    body:
      chart: |
        2 |  B B
        1 | W B W
"""

from __future__ import annotations

from collections.abc import Iterator

from ...findings import Finding, Severity
from ..subject import Subject

ID, SEVERITY, NEEDS = "wrong-row-number", Severity.ERROR, "piece"


def check(subject: Subject) -> Iterator[Finding]:
    """Every number that is wrong."""
    for number, row in subject.drawn_rows.items():
        if row.number_mark is not None and row.written != number:
            yield Finding(row.number_mark, SEVERITY, ID, f"this row is numbered {row.written}, but it is row {number}")
