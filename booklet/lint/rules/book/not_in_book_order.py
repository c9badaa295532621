"""The book has an order, but it leaves out a pattern file.

The pattern still comes into the book, after all others: a new pattern is easily forgotten in the order.

Bad:

    # patterns/book.yaml
    title: Weather for Wearing
    order: []

Good:

    # patterns/book.yaml
    title: Weather for Wearing
    order: [morning-cloud]
"""

from __future__ import annotations

from collections.abc import Iterator

from ....findings import Finding, Severity
from ...subject import Subject

ID, SEVERITY, NEEDS = "not-in-book-order", Severity.WARNING, "book"


def check(subject: Subject) -> Iterator[Finding]:
    """Every such pattern, at the order."""
    book = subject.book
    for slug in subject.workspace.slugs if ("order",) in book.marks else ():
        if slug not in book.order:
            yield Finding(book.mark("order"), SEVERITY, ID, f"the order leaves out {slug}, so it comes last in the book")
