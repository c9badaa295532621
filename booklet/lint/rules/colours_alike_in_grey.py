"""Two beads that lie side by side become the same grey in a black and white print.

Many makers print without colour. The letters in the chart still tell the beads apart; the picture of the finished piece
does not. Of beads that some eyes cannot tell apart either, colours-alike-to-some-eyes says both.

Bad:

    beads:
      W: {name: leaf green, colour: "#6f9a5c", finish: matte, kind: cylinder 11/0}
      B: {name: heather, colour: "#9a86b4", finish: matte, kind: cylinder 11/0}
    body:
      chart: |
        2 |  B B
        1 | W B W

Good:

    beads:
      W: {name: leaf green, colour: "#6f9a5c", finish: matte, kind: cylinder 11/0}
      B: {name: pale heather, colour: "#c6b8d8", finish: matte, kind: cylinder 11/0}
    body:
      chart: |
        2 |  B B
        1 | W B W
"""

from __future__ import annotations

from collections.abc import Iterator

from ...findings import Finding, Severity
from ..alike import GREY
from ..subject import Subject

ID, SEVERITY, NEEDS = "colours-alike-in-grey", Severity.NOTE, "piece"


def check(subject: Subject) -> Iterator[Finding]:
    """Every pair that differs in colour and not in lightness, and that all eyes tell apart: else colours-alike-to-some-eyes says it."""
    for pair in subject.alike:
        if set(pair.sights) == {GREY}:
            yield Finding(pair.mark, SEVERITY, ID, f"{pair.said} and become the same grey in black and white", "make one of them lighter or darker")
