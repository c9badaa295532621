"""The order of the book names a pattern that has no file.

The book would come out without it. Mostly the name is misspelt, or the file was renamed.

Bad:

    # patterns/book.yaml
    title: Weather for Wearing
    order: [morning-clod, morning-cloud]

Good:

    # patterns/book.yaml
    title: Weather for Wearing
    order: [morning-cloud]
"""

from __future__ import annotations

from collections.abc import Iterator

from ....findings import Finding, Severity
from ....source.wording import did_you_mean
from ...subject import Subject

ID, SEVERITY, NEEDS = "missing-pattern", Severity.ERROR, "book"


def check(subject: Subject) -> Iterator[Finding]:
    """Every slug of the order without a pattern file."""
    book, slugs = subject.book, subject.workspace.slugs
    for number, slug in enumerate(book.order, 1):
        if slug not in slugs:
            yield Finding(book.mark("order", number), SEVERITY, ID, f"there is no file patterns/{slug}.yaml", did_you_mean(slug, slugs))
