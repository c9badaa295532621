"""The summary is very short or very long.

A shop listing and the contents page have room for one good sentence, 40 to 160 characters (common practice, no source).

Bad:

    summary: A cloud.

Good:

    summary: A cloud of white and blue for a quiet morning.
"""

from __future__ import annotations

from collections.abc import Iterator

from ...findings import Finding, Severity
from ..subject import Subject

ID, SEVERITY, NEEDS = "odd-summary-length", Severity.NOTE, "pattern"

SHORTEST, LONGEST = 40, 160


def check(subject: Subject) -> Iterator[Finding]:
    """A summary outside these lengths."""
    count = len(subject.pattern.summary)
    if count and not SHORTEST <= count <= LONGEST:
        yield Finding(subject.pattern.mark("summary"), SEVERITY, ID, f"the summary has {count} characters; {SHORTEST} to {LONGEST} are a good length")
