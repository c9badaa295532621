"""The hanger has beads, but is not a loop.

A thread guard and a ring are made of metal. The beads would be counted and bought, but no step would use them.

Bad:

    hanger: {kind: guard, beads: 7W}

Good:

    hanger: {kind: loop, beads: 7W}

Good:

    hanger: {kind: guard}
"""

from __future__ import annotations

from collections.abc import Iterator

from ...findings import Finding, Severity
from ..subject import Subject

ID, SEVERITY, NEEDS = "hanger-beads-without-loop", Severity.ERROR, "pattern"


def check(subject: Subject) -> Iterator[Finding]:
    """Beads of a guard, or of no hanger at all."""
    for written in subject.pattern.hangers:
        if written.beads and written.hanger.kind != "loop":
            beads = "1 bead" if len(written.beads) == 1 else f"{len(written.beads)} beads"
            yield Finding(subject.pattern.mark(*written.path, "beads"), SEVERITY, ID, f"the hanger has {beads}, but its kind is {written.hanger.kind}")
