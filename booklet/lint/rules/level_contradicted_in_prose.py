"""A text calls the pattern easier or harder than its level says.

A buyer who trusts the sentence buys the wrong pattern.

Bad:

    level: advanced
    notes: |
      A good first piece.

Good:

    level: beginner
    notes: |
      A good first piece for beginners. Advanced makers finish it in an evening.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from ...findings import Finding, Severity
from ..subject import Subject

ID, SEVERITY, NEEDS = "level-contradicted-in-prose", Severity.WARNING, "pattern"

_CALLED = (   # what a text says, the signs of it, how it is meant, and the levels that go with it
    (r"\b(?:for (?:absolute |complete )?beginners|(?:good|ideal|easy|perfect|lovely|fine) first (?:piece|project|pattern|earring|pair)"
     r"|beginner'?s?(?: level)? (?:piece|project|pattern)|suits beginners)\b", ("beginner", "first p", "first e"), "beginner", {"beginner"}),
    (r"\b(?:intermediate(?: level)? (?:piece|project|pattern))\b", ("intermediate",), "intermediate", {"intermediate"}),
    (r"\b(?:advanced(?: level)? (?:piece|project|pattern)|for advanced (?:makers|beaders)|not for beginners|not a first piece)\b",
     ("advanced", "not for beg", "not a first"), "not for beginners", {"intermediate", "advanced"}),
)
_NOT = r"\b(?:not|no|never|hardly|isn't)\b[^.]*$"


def check(subject: Subject) -> Iterator[Finding]:
    """Every phrase that names another level."""
    level = subject.pattern.level
    for passage in subject.passages if level else ():
        for words, signs, said, levels in _CALLED:
            for match in passage.find(words, *signs):
                denied = said == "beginner" and re.search(_NOT, passage.words[:match.start()], re.IGNORECASE)
                if level not in levels and not denied:
                    yield Finding(passage.mark(match.start(), match.end()), SEVERITY, ID,
                                  f"{' '.join(match[0].split())!r} does not go with the level, which is {level}")
