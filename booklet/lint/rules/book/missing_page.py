"""The book names a front or back page that has no file.

The book cannot be built without it.

Bad:

    # patterns/book.yaml
    title: Weather for Wearing
    order: [morning-cloud]
    front: [welcom]

Good:

    # patterns/book.yaml
    title: Weather for Wearing
    order: [morning-cloud]
    front: [before-you-begin]
"""

from __future__ import annotations

from collections.abc import Iterator

from ....findings import Finding, Severity
from ....source.wording import did_you_mean
from ...subject import Subject

ID, SEVERITY, NEEDS = "missing-page", Severity.ERROR, "book"

# Come with booklet, unless the book has pages of its own by those names.
SHIPPED = ("before-you-begin", "techniques", "glossary")


def check(subject: Subject) -> Iterator[Finding]:
    """Every page without a file in patterns/pages/."""
    book, folder = subject.book, subject.workspace.root / "patterns" / "pages"
    known = sorted({*SHIPPED, *(path.stem for path in folder.glob("*.md"))})
    for field in ("front", "back"):
        for number, name in enumerate(getattr(book, field), 1):
            if name not in known:
                yield Finding(book.mark(field, number), SEVERITY, ID, f"there is no page patterns/pages/{name}.md", did_you_mean(name, known))
