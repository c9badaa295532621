"""A row or strand takes more thread than one working length leaves.

A thread is changed at the end of a row or a strand, where the knot and the ends can be hidden. In the middle of a strand there
is no place for that.

Bad:

    fringe:
      end: 1B
      strands: [60W, 60W, 60W]
    thread: {body: {kind: nylon B}, fringe: {kind: nylon B}, length: 0.45 m}

Good:

    fringe:
      end: 1B
      strands: [60W, 60W, 60W]
    thread: {body: {kind: nylon B}, fringe: {kind: nylon B}, length: 1.4 m}
"""

from __future__ import annotations

from collections.abc import Iterator

from ...craft.saying import section_name
from ...craft.thread import room_in, thread_use
from ...findings import Finding, Severity
from ..subject import Subject

ID, SEVERITY, NEEDS = "row-longer-than-thread", Severity.WARNING, "path"


def check(subject: Subject) -> Iterator[Finding]:
    """Every row and strand that one working length does not reach through."""
    pattern = subject.pattern
    room = room_in(pattern.thread)
    for use in thread_use(subject.piece, pattern.thread):
        for section in use.too_long:
            place = (section.kind, section.number) if section.kind in ("row", "strand") else ("hanger",)
            yield Finding(pattern.mark(*place), SEVERITY, ID,
                          f"{section_name(section)} takes more thread than a working length of {pattern.thread.length / 1000:g} m leaves, "
                          f"which is {room:.0f} mm without its ends", "give a longer thread.length")
