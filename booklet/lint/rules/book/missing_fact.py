"""A pattern says nothing of something that nearly all patterns of the book say.

Notes, a link or a count made by hand that one pattern lacks were probably forgotten; a buyer who knows one pattern of
the book looks for them.

Bad:

    # patterns/cloud-shadow.yaml
    counted: {base: 3}
    # patterns/heat-haze.yaml
    counted: {base: 3}
    # patterns/slant-rain.yaml
    counted: {base: 3}
    # patterns/first-snow.yaml
    title: First Snow

Good:

    # patterns/cloud-shadow.yaml
    counted: {base: 3}
    # patterns/heat-haze.yaml
    counted: {base: 3}
    # patterns/slant-rain.yaml
    counted: {base: 3}
    # patterns/first-snow.yaml
    counted: {base: 3}
"""

from __future__ import annotations

from collections.abc import Iterator

from ....findings import Finding, Severity
from ...subject import Subject

ID, SEVERITY, NEEDS = "missing-fact", Severity.NOTE, "book"

FACTS = {"findings": "findings", "thread": "thread", "photo": "a photo", "links": "links", "notes": "notes", "counted": "a count made by hand"}
FEWEST = 3   # other patterns that have it
MOST = 0.75   # of all patterns must have it


def check(subject: Subject) -> Iterator[Finding]:
    """Every fact that a pattern lacks and does not inherit."""
    patterns = subject.workspace.patterns.values()
    for name, said in FACTS.items():
        without = [pattern for pattern in patterns if (name,) not in pattern.marks]
        having = len(patterns) - len(without)
        if having >= FEWEST and having >= MOST * len(patterns) and not getattr(subject.book.defaults, name, None):
            for pattern in without:
                yield Finding(pattern.mark("title"), SEVERITY, ID, f"{pattern.slug} has no {name}, but {having} of {len(patterns)} patterns have {said}")
