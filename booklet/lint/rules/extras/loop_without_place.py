"""A loop comes up where the fringe has no place.

A loop goes down at its own place and comes up at the next one, or at the one after it. The last places have none
after them.

Bad:

    fringe:
      end: 3B
      strands: [12W, 12W, {loop: 20W}]

Good:

    fringe:
      end: 3B
      strands: [12W, {loop: 20W}, ~]
"""

from __future__ import annotations

from collections.abc import Iterator

from ....findings import Finding, Severity
from ...subject import Subject

ID, SEVERITY, NEEDS = "loop-without-place", Severity.ERROR, "piece"


def check(subject: Subject) -> Iterator[Finding]:
    """Each such loop, with the place that it would need."""
    if subject.pattern.fringe_places not in (0, subject.places):
        return
    for strand in subject.pattern.written_strands:
        goal = strand.place + strand.to
        if not 1 <= goal <= subject.places:
            yield Finding(strand.mark, SEVERITY, ID, f"the loop of place {strand.place} comes up at place {goal}, but there are places 1 to {subject.places}")
