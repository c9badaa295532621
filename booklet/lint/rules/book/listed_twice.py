"""The order of the book, its front and back pages or its levels name the same thing twice.

It can stand in one place only, and a reader would not know which one was meant.

Bad:

    # patterns/book.yaml
    title: Weather for Wearing
    order: [morning-cloud, morning-cloud]

Bad:

    # patterns/book.yaml
    title: Weather for Wearing
    levels: {beginner: [2-drop], intermediate: [2-drop]}

Good:

    # patterns/book.yaml
    title: Weather for Wearing
    order: [morning-cloud]
"""

from __future__ import annotations

from collections.abc import Iterator

from ....findings import Finding, Severity
from ...subject import Subject

ID, SEVERITY, NEEDS = "listed-twice", Severity.ERROR, "book"


def check(subject: Subject) -> Iterator[Finding]:
    """Every name that stands in its list for the second time or more; a page may not be in front and back, nor a technique at two levels."""
    book = subject.book
    yield from _repeated(subject, {("order",): book.order})
    yield from _repeated(subject, {("front",): book.front, ("back",): book.back})
    yield from _repeated(subject, {("levels", level): names for level, names in book.levels.items()})


def _repeated(subject: Subject, lists: dict[tuple[str, ...], tuple[str, ...]]) -> Iterator[Finding]:
    seen: dict[str, str] = {}
    for path, names in lists.items():
        for number, name in enumerate(names, 1):
            if name in seen:
                yield Finding(subject.book.mark(*path, number), SEVERITY, ID, f"{name} stands in {seen[name]} already")
            seen.setdefault(name, path[-1])
