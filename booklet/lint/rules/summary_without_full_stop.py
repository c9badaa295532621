"""The summary does not end with a full stop.

It is printed as a sentence on the contents page and in a shop listing, where the others end with one.

Bad:

    summary: A cloud of white and blue for a quiet morning

Good:

    summary: A cloud of white and blue for a quiet morning.
"""

from __future__ import annotations

from collections.abc import Iterator

from ...findings import Finding, Severity
from ..subject import Subject

ID, SEVERITY, NEEDS = "summary-without-full-stop", Severity.NOTE, "pattern"

ENDS = (".", "!", "?", "…", ".)", ".”", ".’", '."')


def check(subject: Subject) -> Iterator[Finding]:
    """A summary that ends otherwise."""
    summary = subject.pattern.summary
    if summary and not summary.endswith(ENDS):
        yield Finding(subject.pattern.mark("summary"), SEVERITY, ID, "the summary does not end with a full stop")
