"""Strands hang from the base row, but there are rows of the body below it.

The strands would lie in front of those rows and hide them. Usually the bottom row is meant to be the base, or the
fringe to hang lower: hang: lowest or hang: edge.

Bad:

    body:
      base: widest
      chart: |
         |  B
         | W W
         |  B
    fringe:
      end: 3B
      strands: [12W, 12W]

Good:

    body:
      base: bottom
      chart: |
         |   B
         |  W W
         | W W W
    fringe:
      end: 3B
      strands: [12W, 12W, 12W]

Good:

    body:
      base: widest
      chart: |
         |  B
         | W W
         |  B
    fringe:
      hang: edge
      end: 3B
      strands: [12W, 14W, 12W]
"""

from __future__ import annotations

from collections.abc import Iterator

from ...findings import Finding, Severity
from ..subject import Subject

ID, SEVERITY, NEEDS = "fringe-under-lower-rows", Severity.WARNING, "piece"


def check(subject: Subject) -> Iterator[Finding]:
    """Once, with the number of rows that the strands would hide."""
    strands, lower = subject.piece.strands, len(subject.piece.lower)
    if strands and lower and subject.piece.hang == "base":
        rows = "the row" if lower == 1 else f"the {lower} rows"
        yield Finding(subject.pattern.mark("fringe"), SEVERITY, ID, f"the strands hang from row 1 and hide {rows} below it",
                      "hang: lowest or hang: edge hangs them lower")
