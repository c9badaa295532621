"""Two lines of the legend are the same bead: one kind, one colour, one finish.

The colour was copied with its line and never changed, so that two piles of the chart cannot be told apart; or one bead has two
keys, and its count is split over two lines of the materials.

Bad:

    beads:
      W: {name: chalk white, colour: "#f4f1ea", finish: matte, kind: cylinder 11/0}
      B: {name: storm blue, colour: "#3d5a80", finish: lustre, kind: cylinder 11/0}
      D: {name: deep blue, colour: "#3d5a80", finish: lustre, kind: cylinder 11/0}
    body:
      chart: |
        2 |  B D
        1 | W B W

Good:

    beads:
      W: {name: chalk white, colour: "#f4f1ea", finish: matte, kind: cylinder 11/0}
      B: {name: storm blue, colour: "#3d5a80", finish: lustre, kind: cylinder 11/0}
      D: {name: deep blue, colour: "#1d2f52", finish: matte, kind: cylinder 11/0}
    body:
      chart: |
        2 |  B D
        1 | W B W
"""

from __future__ import annotations

from collections.abc import Hashable, Iterator

from ...findings import Finding, Severity
from ..subject import Subject

ID, SEVERITY, NEEDS = "bead-listed-twice", Severity.WARNING, "pattern"


def check(subject: Subject) -> Iterator[Finding]:
    """Every bead of the legend that stands before under another key."""
    pattern, first = subject.pattern, dict[Hashable, str]()
    for key, bead in pattern.legend.items():
        other = first.setdefault((bead.colour.lower(), bead.finish, bead.kind), key)
        if other != key:
            yield Finding(pattern.mark("beads", key, "colour"), SEVERITY, ID,
                          f"{key} ({bead.name}) is the same bead as {other} ({pattern.legend[other].name}): {bead.kind.name}, {bead.colour}, {bead.finish}")
