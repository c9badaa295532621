"""Two beads of one kind that lie side by side have nearly the same colour.

The letters in the chart tell them apart, but nobody sees the difference in the finished piece, and a maker takes one for the other
when she sorts them. The difference is measured as CIEDE2000; 1 can just be seen.

Bad:

    beads:
      W: {name: chalk white, colour: "#f4f1ea", finish: matte, kind: cylinder 11/0}
      B: {name: cream, colour: "#f1ece2", finish: lustre, kind: cylinder 11/0}
    body:
      chart: |
        2 |  B B
        1 | W B W

Good:

    beads:
      W: {name: chalk white, colour: "#f4f1ea", finish: matte, kind: cylinder 11/0}
      B: {name: sand, colour: "#dcc9a3", finish: lustre, kind: cylinder 11/0}
    body:
      chart: |
        2 |  B B
        1 | W B W
"""

from __future__ import annotations

from collections.abc import Iterator

from ...findings import Finding, Severity
from ..alike import LEAST, PLAIN
from ..subject import Subject

ID, SEVERITY, NEEDS = "colours-too-close", Severity.WARNING, "piece"


def check(subject: Subject) -> Iterator[Finding]:
    """Every such pair, in the legend and in each colourway."""
    for pair in subject.alike:
        if PLAIN in pair.sights:
            yield Finding(pair.mark, SEVERITY, ID, f"{pair.said} and differ by {pair.sights[PLAIN]:.1f}, too little to see",
                          f"let them differ by {LEAST[PLAIN]:g} or more, or take another kind of bead for one")
