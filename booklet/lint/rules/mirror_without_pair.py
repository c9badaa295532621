"""The second piece is to be the first turned over, but the pattern makes a single piece.

Nothing about a second piece is printed. Either the pattern makes a pair, or the field was left over from another one.

Bad:

    makes: single
    mirror: true

Good:

    makes: pair
    mirror: true
"""

from __future__ import annotations

from collections.abc import Iterator

from ...findings import Finding, Severity
from ..subject import Subject

ID, SEVERITY, NEEDS = "mirror-without-pair", Severity.WARNING, "pattern"


def check(subject: Subject) -> Iterator[Finding]:
    """Once, at mirror."""
    pattern = subject.pattern
    if pattern.mirror and pattern.makes == "single":
        yield Finding(pattern.mark("mirror"), SEVERITY, ID, "mirror is true, but the pattern makes a single piece",
                      "write makes: pair, or delete mirror")
