"""The prose speaks of beads in a colour that the legend does not have.

The colour was changed in the legend, but not in the text, or the text came with another pattern. A maker looks for
beads that are not there.

Bad:

    notes: |
      The red beads hang lowest.

Good:

    notes: |
      The blue beads hang lowest, and the {{ beads.W.name }} beads stand above them.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from ...findings import Finding, Severity
from ..colour_words import COLOUR_WORDS, looks_like, same_word
from ..subject import Subject

ID, SEVERITY, NEEDS = "unknown-bead-in-prose", Severity.WARNING, "pattern"

_BEADS = r"\b([a-z]+)\s+(?:(?:drop |end )?beads?|bugles?|cylinders?|rounds?)\b"


def check(subject: Subject) -> Iterator[Finding]:
    """Every colour of beads that is neither in a name of the legend nor the look of one of its beads."""
    pattern = subject.pattern
    beads = [*pattern.legend.values(), *(bead for way in pattern.colourways.values() for bead in way.values())]
    named = {same_word(word) for bead in beads for word in re.findall("[a-z]+", bead.name.lower())}
    for passage in subject.passages if beads else ():
        for match in passage.find(_BEADS, "bead", "bugle", "cylinder", "round"):
            word = same_word(match[1].lower())
            if word in COLOUR_WORDS and word not in named and not any(looks_like(bead.colour, word) for bead in beads):
                yield Finding(passage.mark(match.start(), match.end()), SEVERITY, ID,
                              f"{passage.does('speak')} of {' '.join(match[0].split()).lower()}, but the legend has none", f"the legend has {', '.join(bead.name for bead in pattern.legend.values())}")
