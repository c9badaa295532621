"""A bead of the legend stands nowhere in the piece.

It is often left over from the pattern that this one was copied from, or the chart has another key by
mistake. The materials would list a colour of which nothing is needed.

Bad:

    beads:
      W: {name: chalk white, colour: "#f4f1ea", finish: matte, kind: cylinder 11/0}
      B: {name: storm blue, colour: "#3d5a80", finish: lustre, kind: cylinder 11/0}
      R: {name: brick red, colour: "#a03a2c", finish: matte, kind: cylinder 11/0}
    body:
      chart: |
        2 |  B B
        1 | W B W

Good:

    beads:
      W: {name: chalk white, colour: "#f4f1ea", finish: matte, kind: cylinder 11/0}
      B: {name: storm blue, colour: "#3d5a80", finish: lustre, kind: cylinder 11/0}
    body:
      chart: |
        2 |  B B
        1 | W B W
"""

from __future__ import annotations

from collections.abc import Iterator

from ...craft.tally import tally
from ...findings import Finding, Severity
from ..subject import Subject

ID, SEVERITY, NEEDS = "unused-bead-key", Severity.WARNING, "piece"


def check(subject: Subject) -> Iterator[Finding]:
    """Every bead that is counted no times."""
    for line in tally(subject.piece).lines:
        if line.piece == 0:
            yield Finding(subject.pattern.mark("beads", line.key), SEVERITY, ID,
                          f"the legend has {line.key} ({line.bead.name}), but no bead of the piece is {line.key}")
