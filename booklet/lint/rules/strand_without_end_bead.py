"""A strand has no end bead.

The needle skips the end beads and passes back up through the strand. Without one it has nothing to turn on,
and the strand comes off.

Bad:

    body:
      chart: |
        2 |  B
        1 | W W
    fringe:
      strands: [12W > 3B, 12W]

Good:

    body:
      chart: |
        2 |  B
        1 | W W
    fringe:
      end: 3B
      strands: [12W > 1B, 12W]
"""

from __future__ import annotations

from collections.abc import Iterator

from ...craft.strand import STRAIGHT
from ...findings import Finding, Severity
from ..subject import Subject

ID, SEVERITY, NEEDS = "strand-without-end-bead", Severity.ERROR, "pattern"


def check(subject: Subject) -> Iterator[Finding]:
    """Every such strand; a mirrored one is said once. Loops and twisted pairs come up without turning."""
    said = set()
    for strand in subject.pattern.written_strands:
        if strand.kind == STRAIGHT and not strand.end and not strand.turned and strand.mark not in said:
            said.add(strand.mark)
            yield Finding(strand.mark, SEVERITY, ID, f"strand {strand.place} has no end bead, so the needle has nothing to turn on",
                          "give the fringe an end: for all strands, or write > and the end beads in this one")
