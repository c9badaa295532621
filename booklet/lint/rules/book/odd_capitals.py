"""A title, or the name of a bead, has its capitals set otherwise than most in the book.

The contents page shows all titles under each other, and the materials all names: there the odd one looks like a mistake.

Bad:

    # patterns/cloud-shadow.yaml
    title: Cloud Shadow
    # patterns/heat-haze.yaml
    title: Heat Haze
    # patterns/slant-rain.yaml
    title: Slant rain

Good:

    # patterns/cloud-shadow.yaml
    title: Cloud Shadow
    # patterns/heat-haze.yaml
    title: Heat Haze
    # patterns/slant-rain.yaml
    title: The Rain at the Door
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator

from ....findings import Finding, Severity
from ...subject import Subject

ID, SEVERITY, NEEDS = "odd-capitals", Severity.NOTE, "book"

FEWEST = 2   # titles or names that show what is usual
SMALL = frozenset("a an and as at but by for from in into of off on or over the to under up with".split())
STYLES = {"title": "a capital for each main word", "sentence": "one capital at the start", "small": "small letters", "capitals": "capitals only"}


def check(subject: Subject) -> Iterator[Finding]:
    """Every title against most titles, every bead name against most bead names."""
    if not subject.is_english:
        return
    patterns = subject.workspace.patterns.values()
    titles = [(pattern.title, pattern.mark("title"), "title") for pattern in patterns if pattern.title]
    beads = [(bead.name, pattern.mark("beads", key, "name"), "bead name") for pattern in patterns for key, bead in pattern.legend.items()]
    for named in (titles, beads):
        styles = [_styles(name) for name, *_ in named]
        sure = Counter(style for fits in styles if len(fits) == 1 for style in fits)
        usual, count = sure.most_common(1)[0] if sure else ("", 0)
        if count >= FEWEST and 2 * sum(usual in fits for fits in styles) > len(styles):
            for (name, mark, what), fits in zip(named, styles):
                if fits and usual not in fits:
                    yield Finding(mark, SEVERITY, ID, f"the {what} {name} has {STYLES[min(fits)]}, but most have {STYLES[usual]}")


def _styles(name: str) -> frozenset[str]:
    """The styles that a name may be written in; several where it has one word, none where it follows no style."""
    words = re.findall(r"[^\W\d_][\w']*", name)
    if not words:
        return frozenset()
    first, main = words[0], [word for word in words if word.lower() not in SMALL]
    fits = set()
    if first[0].isupper() and all(word[0].isupper() for word in main):
        fits.add("title")
    if first[0].isupper() and not any(word[0].isupper() for word in words[1:]):
        fits.add("sentence")
    if name == name.lower():
        fits.add("small")
    if name == name.upper() and len(name) > 1:
        fits = {"capitals"}
    return frozenset(fits)
