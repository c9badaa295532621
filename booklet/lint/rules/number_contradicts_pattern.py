"""A number in the prose is not what the pattern has.

The chart has changed since the sentence was written, or the sentence came with another pattern. A maker who counts
what the text says counts wrong. A placeholder cannot go out of date: the right number is filled in on every build.
Numbers that only speak of a part ("the first three rows", "pass round two neighbouring stitches") are left alone. Lengths
and masses, and numbers that are only near a computed one, are warnings; the others are errors.

Bad:

    notes: |
      The base row has 4 stitches.
    body:
      chart: |
        2 |  B B
        1 | W B W

Good:

    notes: |
      The base row has {{ base.stitches }} stitches, and the body has two rows. Pass round two neighbouring stitches.
    body:
      chart: |
        2 |  B B
        1 | W B W
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from ...findings import Finding, Severity
from ..figures import may_count
from ..passages import Passage
from ..subject import Subject

if TYPE_CHECKING:
    from ..claims import Contradiction

ID, SEVERITY, NEEDS = "number-contradicts-pattern", Severity.ERROR, "piece"


def check(subject: Subject) -> Iterator[Finding]:
    """Every number in summary, notes and steps that contradicts what is computed."""
    counting = [passage for passage in subject.passages if may_count(passage.words)]
    if not counting:
        return
    from ..claims import contradictions   # loaded here, because most texts count nothing
    from ..facts import Facts

    facts = Facts(subject)
    for passage in counting:
        for offset, sentence in passage.sentences():
            for wrong in contradictions(sentence, facts):
                yield _finding(passage, offset, wrong)


def _finding(passage: Passage, offset: int, wrong: Contradiction) -> Finding:
    fact = wrong.fact
    hint = f"write {{{{ {fact.placeholder} }}}}" if fact.placeholder and passage.filled_in else ""
    return Finding(passage.mark(offset + wrong.start, offset + wrong.end), SEVERITY if wrong.certain else Severity.WARNING, ID,
                   f"{passage.does('say')} {wrong.said}, but {fact.said}", hint)
