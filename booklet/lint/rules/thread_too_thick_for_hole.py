"""A bead's hole cannot hold the thread that goes through it.

The passes through a bead are counted on the needle's path. Circles of the thread's diameter, even pressed to four fifths of it, cannot
lie side by side in a circle of the hole's diameter in that number: the bead breaks, or the row cannot be finished.

Bad:

    beads:
      W: {name: chalk white, colour: "#f4f1ea", finish: matte, kind: cylinder 15/0}
      B: {name: storm blue, colour: "#3d5a80", finish: lustre, kind: cylinder 15/0}
    thread: {body: {kind: nylon F}}

Good:

    beads:
      W: {name: chalk white, colour: "#f4f1ea", finish: matte, kind: cylinder 15/0}
      B: {name: storm blue, colour: "#3d5a80", finish: lustre, kind: cylinder 15/0}
    thread: {body: {kind: nylon 0}}
"""

from __future__ import annotations

from collections.abc import Iterator

from ...craft.passes import impossible
from ...findings import Finding, Severity
from ..crowding import beads_said, place_of, threads_said
from ..subject import Subject

ID, SEVERITY, NEEDS = "thread-too-thick-for-hole", Severity.ERROR, "path"


def check(subject: Subject) -> Iterator[Finding]:
    """Beads together that lie in one row or in the fringe, with their passes and how many there is room for."""
    pattern = subject.pattern
    for crowded in impossible(subject.threaded):
        yield Finding(place_of(pattern, crowded), SEVERITY, ID,
                      f"{beads_said(crowded)}: {threads_said(pattern, crowded)}, but even pressed thin only {crowded.fit} have room",
                      "use a thinner thread, or beads with wider holes")
