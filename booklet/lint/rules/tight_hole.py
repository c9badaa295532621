"""A bead's hole has room for the thread, but hardly for the needle that brings it through the last time.

Makers force the needle, and the bead breaks in a finished row. Published advice for the usual beads is taken as the measure: not more
than three passes of nylon D through 11/0. Thinner thread takes a thinner needle and goes through more often.

Bad:

    beads:
      W: {name: chalk white, colour: "#f4f1ea", finish: matte, kind: cylinder 15/0}
      B: {name: storm blue, colour: "#3d5a80", finish: lustre, kind: cylinder 15/0}
    fringe: {end: 1B, strands: [9W, 9W, 9W]}
    thread: {body: {kind: nylon B}, fringe: {kind: nylon B}}

Good:

    beads:
      W: {name: chalk white, colour: "#f4f1ea", finish: matte, kind: cylinder 15/0}
      B: {name: storm blue, colour: "#3d5a80", finish: lustre, kind: cylinder 15/0}
    fringe: {end: 1B, strands: [9W, 9W, 9W]}
    thread: {body: {kind: nylon 0}, fringe: {kind: nylon 0}}
"""

from __future__ import annotations

from collections.abc import Iterator

from ...craft.passes import tight
from ...findings import Finding, Severity
from ..crowding import beads_said, place_of, threads_said
from ..subject import Subject

ID, SEVERITY, NEEDS = "tight-hole", Severity.WARNING, "path"


def check(subject: Subject) -> Iterator[Finding]:
    """Beads together that lie in one row or in the fringe, with their passes and how many go through."""
    pattern = subject.pattern
    for crowded in tight(subject.threaded, pattern.thread):
        yield Finding(place_of(pattern, crowded), SEVERITY, ID,
                      f"{beads_said(crowded)}: {threads_said(pattern, crowded)}, but only {crowded.fit} go through easily with a needle of "
                      f"size {crowded.needle.size}", "use a thinner thread, or beads with wider holes")
