"""The prose speaks of beads in a colour that the legend does not have, or names beside one of its beads another that it has not.

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
from itertools import islice

from ...findings import Finding, Severity
from ..colour_words import COLOUR_WORDS, looks_like, same_word
from ..passages import Passage
from ..subject import Subject

ID, SEVERITY, NEEDS = "unknown-bead-in-prose", Severity.WARNING, "pattern"

_ANY = frozenset("the a an all both every each its this that these those two three more most some any other same one very only dark pale light deep bright soft warm cold "
                 "clear dull of in to with by from under over between small large".split())   # that begin no name
_BEADS = r"\b([a-z]+)\s+(?:(?:drop |end )?beads?|bugles?|cylinders?|rounds?)\b"


def check(subject: Subject) -> Iterator[Finding]:
    """Every colour of beads that is neither in a name of the legend nor the look of one of its beads, and every such name beside one of the legend's."""
    pattern = subject.pattern
    beads = [*pattern.legend.values(), *(bead for way in pattern.colourways.values() for bead in way.values())]
    names = {bead.name.lower() for bead in beads}
    named = {same_word(word) for name in names for word in re.findall("[a-z]+", name)}
    hint = f"the legend has {', '.join(bead.name for bead in pattern.legend.values())}"
    for passage in subject.passages if beads else ():
        for match in passage.find(_BEADS, "bead", "bugle", "cylinder", "round"):
            word = same_word(match[1].lower())
            if word in COLOUR_WORDS and word not in named and not any(looks_like(bead.colour, word) for bead in beads):
                yield Finding(passage.mark(match.start(), match.end()), SEVERITY, ID,
                              f"{passage.does('speak')} of {' '.join(match[0].split()).lower()}, but the legend has none", hint)
        for name, known in _strangers(passage, names).items():
            for match in islice(passage.find(r"\s+".join(name.split()), name), 1):   # none where a comma stands between its words
                yield Finding(passage.mark(match.start(), match.end()), SEVERITY, ID, f"{passage.does('name')} {name} beside {known}, but the legend has no {name}", hint)


def _strangers(passage: Passage, names: set[str]) -> dict[str, str]:
    """Names such as "slate grey" that "and" or "or" joins to one of the legend, each with that one."""
    found: dict[str, str] = {}
    words = [word.strip(".,;:!?()") for word in passage.plain.split()]
    for known in (name for name in sorted(names) if " " in name and name in passage.plain):
        own = known.split()
        for start in (at for at in range(len(words)) if words[at:at + len(own)] == own):
            end = start + len(own)
            for joint, other in ((words[max(start - 1, 0):start], words[max(start - 3, 0):max(start - 1, 0)]), (words[end:end + 1], words[end + 1:end + 3])):
                name = " ".join(other)
                if joint in (["and"], ["or"]) and len(other) == 2 and other[1] in COLOUR_WORDS and other[0] not in _ANY and not any(name in one for one in names):
                    found.setdefault(name, known)
    return found
