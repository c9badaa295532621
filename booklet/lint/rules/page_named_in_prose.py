"""A text sends the reader to a page.

The pattern is also sold alone, and there the page is missing or has another number. In the book the numbers change with
every pattern that is added.

Bad:

    notes: |
      Anchor the thread as shown on page 7.

Good:

    notes: |
      Anchor the thread as the step about changing the thread says.
"""

from __future__ import annotations

from collections.abc import Iterator

from ...findings import Finding, Severity
from ..subject import Subject

ID, SEVERITY, NEEDS = "page-named-in-prose", Severity.WARNING, "pattern"

_NUMBERED = r"\b(?:see )?(?:pages?|pp?\.)\s*[0-9]+"
_NAMED = r"\b(?:overleaf|(?:next|previous|facing|opposite) page|see (?:the )?(?:page\b(?!\s*[0-9])|chapter|introduction))\b"


def check(subject: Subject) -> Iterator[Finding]:
    """Every mention of a page of the book."""
    for passage in subject.passages:
        for match in (*passage.find(_NUMBERED, "page", "p. ", "pp."), *passage.find(_NAMED, "page", "overleaf", "chapter", "introduction")):
            yield Finding(passage.mark(match.start(), match.end()), SEVERITY, ID,
                          f"{' '.join(match[0].split())!r} leads nowhere in a pattern that is sold alone", "name the step or the picture instead")
