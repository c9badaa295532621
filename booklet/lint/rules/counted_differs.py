"""What the author counted by hand is not what the pattern has.

A count made apart from the chart is the best proof of it: a bead added or lost by a slip of the finger shows here.

Bad:

    body:
      chart: |
        2 |  B B
        1 | W B W
    counted: {base: 3, rows: 2, beads: 6}

Good:

    body:
      chart: |
        2 |  B B
        1 | W B W
    counted: {base: 3, rows: 2, beads: 5}
"""

from __future__ import annotations

from collections.abc import Iterator

from ...craft.tally import hand_counts, tally
from ...findings import Finding, Severity
from ..subject import Subject

ID, SEVERITY, NEEDS = "counted-differs", Severity.ERROR, "piece"


def check(subject: Subject) -> Iterator[Finding]:
    """Every count that differs, with what the pattern has."""
    found, counts = hand_counts(subject.piece), tally(subject.piece)
    parts = {"body": counts.body, "fringe": counts.fringe, "hanger": counts.hanger}
    for name, counted in subject.pattern.counted.items():
        if counted != found[name]:
            where = ", ".join(f"{part} {beads}" for part, beads in parts.items() if beads) if name == "beads" else ""
            yield Finding(subject.pattern.mark("counted", name), SEVERITY, ID, f"counted.{name} is {counted}, but the pattern has {found[name]}", where)
