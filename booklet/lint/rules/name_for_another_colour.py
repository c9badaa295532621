"""A bead is named for a colour that it does not have.

The name was copied from another line of the legend, or the colour was changed and the name forgotten. A buyer orders by the name.

Bad:

    beads:
      W: {name: chalk white, colour: "#f4f1ea", finish: matte, kind: cylinder 11/0}
      B: {name: storm blue, colour: "#a03a2c", finish: lustre, kind: cylinder 11/0}

Good:

    beads:
      W: {name: chalk white, colour: "#f4f1ea", finish: matte, kind: cylinder 11/0}
      B: {name: brick red, colour: "#a03a2c", finish: lustre, kind: cylinder 11/0}
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from ...craft.beads import Bead
from ...findings import Finding, Severity
from ..colour_words import COLOUR_WORDS, looks_like
from ..sight import lab
from ..subject import Subject

ID, SEVERITY, NEEDS = "name-for-another-colour", Severity.WARNING, "pattern"

LIGHT, DARK = 60.0, 40.0   # CIELAB lightness; between them a colour may be called either
_DARK_WORDS, _LIGHT_WORDS = frozenset(("dark", "deep", "midnight", "night")), frozenset(("pale", "light"))


def check(subject: Subject) -> Iterator[Finding]:
    """Every bead of the legend or of a colourway whose name ends in the word for a colour that its own colour cannot be."""
    pattern = subject.pattern
    named = [(("beads", key, "colour"), bead) for key, bead in pattern.legend.items()]
    named += [(("colourways", way, key, "colour"), bead) for way, changed in pattern.colourways.items() for key, bead in changed.items()]
    for path, bead in named if subject.is_english else ():
        word, depth = _word(bead), _depth(bead)
        if word and not looks_like(bead.colour, word):
            yield Finding(pattern.mark(*path), SEVERITY, ID, f"{bead.key} is called {bead.name}, but {bead.colour} is no {word}")
        elif depth:
            yield Finding(pattern.mark(*path), SEVERITY, ID, f"{bead.key} is called {bead.name}, but {bead.colour} is {depth}")


def _depth(bead: Bead) -> str:
    """How light or dark a bead is, where its name plainly says the other."""
    words, light = bead.name.lower().split()[:-1], lab(bead.colour)[0]
    if light > LIGHT and _DARK_WORDS.intersection(words):
        return "light"
    return "dark" if light < DARK and _LIGHT_WORDS.intersection(words) else ""


def _word(bead: Bead) -> str:
    """The last word of a name that is a colour: "storm blue" is a blue, "blue grey" a grey."""
    words = [word for word in re.findall("[a-z]+", bead.name.lower()) if word in COLOUR_WORDS]
    return words[-1] if words else ""
