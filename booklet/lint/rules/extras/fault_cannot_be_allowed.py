"""A pattern allows, or the book weighs, a fault with which nothing can be printed.

A chart that cannot be worked, a bead that is not in the legend or a page that is not there are no matters of taste: the
rule holds whatever the file says about it.

Bad:

    lint:
      allow: {strand-count: I like it so.}

Bad:

    # patterns/book.yaml
    title: Weather for Wearing
    order: [morning-cloud]
    lint:
      severity: {ragged-set: note}

Good:

    lint:
      allow: {counted-differs: I count the loop with the ear wires.}
"""

from __future__ import annotations

from collections.abc import Iterator

from ....findings import Finding, Severity
from ...registry import FIRM
from ...subject import Subject

ID, SEVERITY, NEEDS = "fault-cannot-be-allowed", Severity.ERROR, "prose"


def check(subject: Subject) -> Iterator[Finding]:
    """Every such name in the pattern, or in the book, unless the book makes an error of it, which it is."""
    pattern, book = subject.pattern, subject.book
    if pattern:
        places = {name: pattern.mark("lint", "allow", name) for name in pattern.allowed}
    else:
        places = {name: book.mark("lint", "severity", name) for name, wanted in book.severities.items() if wanted != "error"}
    for name, mark in places.items():
        if name in FIRM:
            yield Finding(mark, SEVERITY, ID, f"{name} cannot be {'allowed' if pattern else 'less than an error'}: nothing can be printed with it")
