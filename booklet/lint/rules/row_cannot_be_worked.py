"""A row cannot be hung on the row under it, or the base row has a gap.

A row of brick stitch hangs on the thread bridges between the stitches of the row under it, so it stands half a
stitch (one character) to one side of them. It may start and end further in or out and have parts with gaps between them,
but each part needs a thread bridge to hang on, and nothing can carry a row over a gap. The base row is one ladder. Peyote has
the columns of its first two rows all the way up; in square stitch and loom work beads stand straight above one another.

Bad:

    body:
      chart: |
        2 | B B
        1 | W B W

Bad:

    body:
      chart: |
        3 |  B W B W B
        2 | W B     B W
        1 |  W B W B W

Bad:

    body:
      chart: |
        1 | W B   B W

Bad:

    body:
      stitch: peyote
      chart: |
        4 |  B
        3 | W B W
        2 |  W B
        1 | B W B

Bad:

    body:
      stitch: square
      chart: |
        2 |  W B
        1 | W B W

Good:

    body:
      chart: |
        4 |  W         W
        3 | B B       B B
        2 |  B W B W B W
        1 |   W B W B W

Good:

    body:
      stitch: peyote
      drop: 2
      chart: |
        4 |   BW  WB
        3 | WW  BB
        2 |   BW  WB
        1 | WB  BW

Good:

    body:
      stitch: square
      chart: |
        3 |   B
        2 | W B W
        1 | W B W

Good:

    body:
      stitch: loom
      chart: |
        2 |   B W B
        1 | W B W
"""

from __future__ import annotations

from collections.abc import Iterator

from ...findings import Finding, Mark, Severity
from ..subject import Subject

ID, SEVERITY, NEEDS = "row-cannot-be-worked", Severity.ERROR, "piece"


def check(subject: Subject) -> Iterator[Finding]:
    """Every reason, at the stitch where it shows, with what would make the row workable."""
    for fault in subject.faults:
        yield Finding(_place(subject, fault.row, fault.at), SEVERITY, ID, fault.what, fault.cure)


def _place(subject: Subject, number: int, at: int) -> Mark:
    row = subject.drawn_rows[number]
    return next((bead.mark for bead in row.lines[0] if bead.at == at), row.mark)
