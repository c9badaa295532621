"""The order of the book, or its front or back pages, name the same thing twice.

It can stand in one place only, and a reader would not know which one was meant.

Bad:

    # patterns/book.yaml
    title: Weather for Wearing
    order: [morning-cloud, morning-cloud]

Good:

    # patterns/book.yaml
    title: Weather for Wearing
    order: [morning-cloud]
"""

from __future__ import annotations

from collections.abc import Iterator

from ...findings import Finding, Severity
from ..subject import Subject

ID, SEVERITY, NEEDS = "listed-twice", Severity.ERROR, "book"


def check(subject: Subject) -> Iterator[Finding]:
    """Every name that stands in its list for the second time or more; a page may not be in front and back either."""
    yield from _repeated(subject, {"order": subject.book.order})
    yield from _repeated(subject, {"front": subject.book.front, "back": subject.book.back})


def _repeated(subject: Subject, lists: dict[str, tuple[str, ...]]) -> Iterator[Finding]:
    seen: dict[str, str] = {}
    for field, names in lists.items():
        for number, name in enumerate(names, 1):
            if name in seen:
                yield Finding(subject.book.mark(field, number), SEVERITY, ID, f"{name} stands in {seen[name]} already")
            seen.setdefault(name, field)
