"""A text says which hand does something.

It is wrong for half of the makers: the edition for the other hand turns chart and words round, but not this sentence.

Bad:

    notes: |
      Hold the work in your left hand.

Good:

    notes: |
      Hold the work in the hand that does not sew. A left-handed maker finds the rows turned round in the other edition.
"""

from __future__ import annotations

from collections.abc import Iterator

from ...findings import Finding, Severity
from ..subject import Subject

ID, SEVERITY, NEEDS = "hand-named-in-prose", Severity.WARNING, "pattern"

_HAND = r"\b(?:right|left)[\s-]+(?:hands?|thumbs?|fingers?|fore-?fingers?|index\s+fingers?|wrists?)\b"


def check(subject: Subject) -> Iterator[Finding]:
    """Every right or left hand, thumb or finger. "Left-handed" speaks of the maker and is fine."""
    for passage in subject.passages:
        for match in passage.find(_HAND, "hand", "thumb", "finger", "wrist"):
            name = " ".join(match[0].split())
            yield Finding(passage.mark(match.start(), match.end()), SEVERITY, ID, f"{passage.does('name')} the {name.lower()}, "
                          "which is wrong in the edition for the other hand", "say what that hand does: the hand that holds the work, the hand with the needle")
