"""A pattern allows, or the book weighs, a rule that there is not.

The name is misspelt, so the rule still holds, or the exception has been forgotten since the rule was given up.

Bad:

    lint:
      allow: {counted-differ: I count the loop apart.}

Bad:

    # patterns/book.yaml
    title: Weather for Wearing
    order: [morning-cloud]
    lint:
      severity: {unused-beadkey: error}

Good:

    lint:
      allow: {unused-bead-key: The spare colour comes with the kit.}

Good:

    # patterns/book.yaml
    title: Weather for Wearing
    order: [morning-cloud]
    lint:
      severity: {unused-bead-key: error}
"""

from __future__ import annotations

from collections.abc import Iterator

from ....findings import Finding, Severity
from ....source.wording import did_you_mean, quoted
from ...page_rules import PAGE_RULES
from ...registry import names
from ...subject import Subject

ID, SEVERITY, NEEDS = "unknown-rule", Severity.ERROR, "prose"


def check(subject: Subject) -> Iterator[Finding]:
    """Every such name in the pattern, or in the book."""
    pattern = subject.pattern
    said, place, path = (pattern.allowed, pattern, ("lint", "allow")) if pattern else (subject.book.severities, subject.book, ("lint", "severity"))
    for name in said:
        if name not in names() and name not in PAGE_RULES:
            yield Finding(place.mark(*path, name), SEVERITY, ID, f"there is no rule {quoted(name)}", did_you_mean(name, [*names(), *PAGE_RULES]))
