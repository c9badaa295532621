"""Two hangers sit on the same stitch of the top row.

Each hanger is passed several times through the stitches that carry it. On one stitch there is no room for the thread of two,
and they push each other aside.

Bad:

    hanger:
      - {kind: ring, at: left}
      - {kind: ring, at: right}

Good:

    body:
      chart: |
        2 |  B B B B
        1 | W B W B W
    hanger:
      - {kind: ring, at: left}
      - {kind: ring, at: right}
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from ....craft.hanger import carriers, top_row
from ....findings import Finding, Severity
from ...subject import Subject

ID, SEVERITY, NEEDS = "hangers-share-a-stitch", Severity.WARNING, "piece"


def check(subject: Subject) -> Iterator[Finding]:
    """The later one of every two that share a stitch."""
    piece = subject.piece
    for first, second in combinations(subject.pattern.hangers, 2):
        if "none" in (first.hanger.kind, second.hanger.kind):
            continue
        (left, right), (other_left, other_right) = carriers(piece, first.hanger), carriers(piece, second.hanger)
        row = top_row(piece, first.hanger.at)
        if row == top_row(piece, second.hanger.at) and left <= other_right and other_left <= right:
            yield Finding(subject.pattern.mark(*second.path), SEVERITY, ID,
                          f"this hanger and the one before it both sit on stitch {max(left, other_left) + 1} of row {row.name}",
                          "say at: left, middle or right, or end the body with a wider row")
