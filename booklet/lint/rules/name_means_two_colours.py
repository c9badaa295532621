"""One name stands for two colours.

Bead names are what a buyer orders by, and she may make several pieces of a book: "coral" should be the same coral in the legend, in
each colourway and in every pattern.

Bad:

    beads:
      W: {name: chalk white, colour: "#f4f1ea", finish: matte, kind: cylinder 11/0}
      B: {name: coral, colour: "#d44e3a", finish: lustre, kind: cylinder 11/0}
    colourways:
      dusk: {B: {name: coral, colour: "#e88a70"}}

Good:

    beads:
      W: {name: chalk white, colour: "#f4f1ea", finish: matte, kind: cylinder 11/0}
      B: {name: coral, colour: "#d44e3a", finish: lustre, kind: cylinder 11/0}
    colourways:
      dusk: {B: {name: pale coral, colour: "#e88a70"}}
"""

from __future__ import annotations

from collections.abc import Iterator

from ...craft.beads import Bead
from ...findings import Finding, Severity
from ...source.pattern import Pattern
from ..sight import difference
from ..subject import Subject

ID, SEVERITY, NEEDS = "name-means-two-colours", Severity.NOTE, "prose"

SAME = 3.0   # CIEDE2000; two prints of one bead may differ so much


def check(subject: Subject) -> Iterator[Finding]:
    """Every name that stands for another colour before: in its own pattern, and where the book is looked at, in another one."""
    first: dict[str, tuple[Bead, str, str]] = {}
    for pattern in [subject.pattern] if subject.pattern else subject.workspace.patterns.values():
        for path, bead, where in _beads(pattern):
            other, slug, place = first.setdefault(bead.name.casefold(), (bead, pattern.slug, where))
            is_asked = where != place if subject.pattern else slug != pattern.slug   # twice in one list is another fault
            if is_asked and difference(bead.colour, other.colour) > SAME:
                yield Finding(pattern.mark(*path), SEVERITY, ID,
                              f"{bead.name} is {bead.colour} here, but {other.colour} in {place if slug == pattern.slug else slug}")


def _beads(pattern: Pattern) -> Iterator[tuple[tuple[str, ...], Bead, str]]:
    for key, bead in pattern.legend.items():
        yield ("beads", key, "colour"), bead, "the legend"
    for way, changed in pattern.colourways.items():
        for key, bead in changed.items():
            yield ("colourways", way, key, "colour"), bead, f"the colourway {way}"
