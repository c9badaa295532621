"""Text is written for a step that this piece does not have.

A piece without fringe has no fringe step, and one whose rows all start inset has no step for rows that start
overhanging. The text would be printed nowhere.

Bad:

    body:
      chart: |
        2 |  B B
        1 | W B W
    steps:
      lower-rows: {after: Turn it again.}

Good:

    body:
      base: widest
      chart: |
         |  B B
         | W B W
         |  B B
    steps:
      lower-rows: {after: Turn it again.}
"""

from __future__ import annotations

from collections.abc import Iterator

from ....findings import Finding, Severity
from ...subject import Subject

ID, SEVERITY, NEEDS = "unprinted-step", Severity.WARNING, "path"


def check(subject: Subject) -> Iterator[Finding]:
    """Every known step with text that this piece goes without."""
    pattern, piece = subject.pattern, subject.piece
    if not pattern.steps:
        return
    from ....craft.steps import STEP_IDS, steps   # loaded here, because few patterns have steps of their own
    from ....craft.thread import thread_use

    written = [name for name in pattern.steps if name in STEP_IDS]
    if written:
        printed = {step.id for step in steps(piece, pattern.thread, thread_use(piece, pattern.thread), pattern.ear_wire)}
        for name in written:
            if name not in printed:
                yield Finding(pattern.mark("steps", name), SEVERITY, ID, f"this piece has no step {name}, so its text is not printed")
