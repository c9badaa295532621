"""Two beads have one colour name.

A list of materials with two lines of the same name sends a maker to the wrong pile. Beads that differ in size alone need a name
each as well, such as "small amber". In a colourway, a name may not be that of a bead which keeps its colour.

Bad:

    beads:
      W: {name: chalk white, colour: "#f4f1ea", finish: matte, kind: cylinder 11/0}
      B: {name: Chalk White, colour: "#3d5a80", finish: lustre, kind: cylinder 11/0}

Good:

    beads:
      W: {name: chalk white, colour: "#f4f1ea", finish: matte, kind: cylinder 11/0}
      B: {name: storm blue, colour: "#3d5a80", finish: lustre, kind: cylinder 11/0}
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from ...craft.beads import Bead
from ...findings import Finding, Severity
from ..subject import Subject

ID, SEVERITY, NEEDS = "name-used-twice", Severity.WARNING, "pattern"


def check(subject: Subject) -> Iterator[Finding]:
    """Every name that another bead has already."""
    pattern = subject.pattern
    twice = set(_twice(pattern.legend))
    for key, other in sorted(twice):
        yield Finding(pattern.mark("beads", key, "name"), SEVERITY, ID, f"{key} has the name of {other}, {pattern.legend[other].name}")
    for way, changed in pattern.colourways.items():
        for key, other in set(_twice({**pattern.legend, **changed})) - twice:
            if {key, other} & set(changed):
                at = key if key in changed else other
                yield Finding(pattern.mark("colourways", way, at, "name"), SEVERITY, ID,
                              f"in the colourway {way}, {key} has the name of {other}, {({**pattern.legend, **changed})[other].name}")


def _twice(beads: Mapping[str, Bead]) -> Iterator[tuple[str, str]]:
    """Keys whose name stands before, with the key that has it."""
    first: dict[str, str] = {}
    for key, bead in beads.items():
        name = " ".join(bead.name.casefold().split())
        if name in first:
            yield key, first[name]
        first.setdefault(name, key)
