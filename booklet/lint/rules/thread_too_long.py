"""The working length of the thread is more than is comfortable.

A thread of more than 2 m knots, frays in the needle's eye and tires the arm at every stitch (common practice, no source; published
advice is one arm span). The thread is changed oftener with a shorter length, and the steps say where.

Bad:

    thread: {body: {kind: nylon D}, length: 3 m}

Good:

    thread: {body: {kind: nylon D}, length: 1.4 m}
"""

from __future__ import annotations

from collections.abc import Iterator

from ...findings import Finding, Mark, Severity
from ..subject import Subject

ID, SEVERITY, NEEDS = "thread-too-long", Severity.WARNING, "prose"

LONGEST = 2000.0   # mm


def check(subject: Subject) -> Iterator[Finding]:
    """The length where it is written: in the pattern, or in the book for all patterns that inherit it."""
    pattern = subject.pattern
    if pattern and ("thread", "length") in pattern.marks:
        yield from _long(pattern.thread.length, pattern.mark("thread", "length"))
    thread = subject.book.defaults.thread
    if not pattern and thread and thread.length:
        yield from _long(thread.length, subject.book.mark("defaults", "thread", "length"))


def _long(length: float, mark: Mark) -> Iterator[Finding]:
    if length > LONGEST:
        yield Finding(mark, SEVERITY, ID, f"a working length of {length / 1000:.2f} m tangles and frays", f"up to {LONGEST / 1000:g} m is comfortable")
