"""The materials name a thread without saying which.

A thread that a pattern leaves out is printed as booklet's own default, which the designer never chose.

Bad:

    thread:
      length: 1.2 m

Good:

    thread:
      body: {kind: nylon D}
"""

from __future__ import annotations

from collections.abc import Iterator

from ...findings import Finding, Severity
from ..subject import Subject

ID, SEVERITY, NEEDS = "material-without-kind", Severity.WARNING, "piece"


def check(subject: Subject) -> Iterator[Finding]:
    """Thread of the body and, where there is one, of the fringe, if the pattern or its book speaks of thread at all."""
    pattern, default = subject.pattern, subject.book.defaults.thread
    if ("thread",) not in pattern.marks and not default:
        return
    for part in ("body", "fringe") if subject.piece.strands else ("body",):
        path = ("thread", part, "kind")
        inherited = default and getattr(default, part)
        kind = getattr(pattern.thread, part)
        if path not in pattern.marks and not inherited:
            yield Finding(pattern.mark("thread"), SEVERITY, ID, f"the thread of the {part} is not given, so {kind} is printed", f"write thread.{part}")
