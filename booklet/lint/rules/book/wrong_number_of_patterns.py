"""The book says that it has another number of patterns than it has.

A pattern was added or taken out since the sentence was written. A buyer who counts the contents page feels cheated. On a page,
a placeholder cannot go out of date.

Bad:

    # patterns/book.yaml
    title: Weather for Wearing
    subtitle: Twelve patterns for the months of the year
    order: [morning-cloud]

Good:

    # patterns/book.yaml
    title: Weather for Wearing
    subtitle: Patterns for the twelve months of the year
    order: [morning-cloud]
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from ....findings import Finding, Severity
from ....source.files import mark_at
from ...figures import NUMBER, value_of
from ...subject import Subject

ID, SEVERITY, NEEDS = "wrong-number-of-patterns", Severity.ERROR, "book"

FEWEST = 3   # "two patterns" are rarely all of a book
_COUNTED = (rf"(?<![\w.,/-])(?P<number>{NUMBER})\s+(?:(?:brick[- ]stitch|beaded|beadwork|earring|jewellery|weather|new|charted|original)\s+)*"
            r"(?:patterns|designs|projects)\b(?!\s+(?:for|of|with|in|that|which|use|need|are)\s+(?:beginners|advanced|this|two|one|fringe|level))")
_PART = re.compile(r"\b(?:first|last|next|other|these|those|any|of|about|over|than|more|another)\s+$", re.IGNORECASE)


def check(subject: Subject) -> Iterator[Finding]:
    """Every such number in the book's titles and on its pages."""
    if not subject.is_english:
        return
    book, count = subject.book, len(subject.workspace.slugs)
    for name in ("title", "subtitle"):
        for match in _wrong(getattr(book, name), count):
            yield Finding(book.mark(name), SEVERITY, ID, f"the {name} says {_said(match)}, but the book has {count}")
    for page in dict.fromkeys((*book.front, *book.back)):
        file = f"patterns/pages/{page}.md"
        text = subject.text(file)
        for match in _wrong(text, count):
            mark = mark_at(text, match.start(), file, len(match[0].splitlines()[0]))
            yield Finding(mark, SEVERITY, ID, f"the page says {_said(match)}, but the book has {count}", "write {{ patterns }}")


def _wrong(text: str, count: int) -> Iterator[re.Match]:
    for match in re.finditer(_COUNTED, text, re.IGNORECASE):
        value = value_of(match["number"])
        if value != count and value >= FEWEST and not _PART.search(text[:match.start()]):
            yield match


def _said(match: re.Match) -> str:
    return " ".join(match[0].split())
