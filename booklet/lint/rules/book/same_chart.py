"""Two patterns of the book have the same chart and fringe.

A buyer pays twice for one piece. A file that was copied to begin a new pattern and never changed looks like this. The same chart in
other colours is a colourway of the first.

Bad:

    # patterns/cloud-shadow.yaml
    body:
      chart: |
        2 |  B B
        1 | W B W
    # patterns/heat-haze.yaml
    body:
      chart: |
        2 |  B B
        1 | W B W

Good:

    # patterns/cloud-shadow.yaml
    body:
      chart: |
        2 |  B B
        1 | W B W
    # patterns/heat-haze.yaml
    body:
      chart: |
        2 |  W B
        1 | W B B
"""

from __future__ import annotations

from collections.abc import Hashable, Iterator

from ....craft.piece import Piece
from ....findings import Finding, Severity
from ...subject import Subject

ID, SEVERITY, NEEDS = "same-chart", Severity.WARNING, "book"


def check(subject: Subject) -> Iterator[Finding]:
    """Every piece that an earlier pattern has, whatever letters its beads have."""
    first: dict[Hashable, str] = {}
    for pattern in subject.workspace.patterns.values():
        if pattern.piece is not None:
            drawing = _drawing(pattern.piece)
            if drawing in first:
                yield Finding(pattern.mark("body", "chart"), SEVERITY, ID, f"{first[drawing]} has the same chart and fringe",
                              "other colours for one chart are a colourway")
            first.setdefault(drawing, pattern.slug)


def _drawing(piece: Piece) -> Hashable:
    """Rows and strands with the beads numbered in order of appearance, so that the letters do not matter."""
    left = min(row.first for row in piece.rows)
    numbers: dict[str, int] = {}
    rows = tuple((row.level, stitch.at - left, *(numbers.setdefault(key, len(numbers)) for key in stitch.beads))
                 for row in piece.rows for stitch in row.stitches)
    strands = tuple((strand.number, strand.kind, strand.to, len(strand.end), tuple(thing.at for thing in strand.hung),
                     *(numbers.setdefault(key, len(numbers)) for key in strand.all)) for strand in piece.strands)
    return rows, piece.hang, strands
