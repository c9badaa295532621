"""The hanger is a loop, but has no beads.

The maker would not know what to pick up for the loop that the ear wire hangs in.

Bad:

    hanger: {kind: loop}

Good:

    hanger: {kind: loop, beads: 7W}
"""

from __future__ import annotations

from collections.abc import Iterator

from ...findings import Finding, Severity
from ..subject import Subject

ID, SEVERITY, NEEDS = "empty-hanger-loop", Severity.ERROR, "pattern"


def check(subject: Subject) -> Iterator[Finding]:
    """A loop for which no beads are written."""
    pattern = subject.pattern
    for written in pattern.hangers:
        if written.hanger.kind == "loop" and not written.beads and (*written.path, "beads") not in pattern.marks:
            yield Finding(pattern.mark(*written.path), SEVERITY, ID, "the hanger is a loop without beads", "write its beads, such as beads: 7W")
