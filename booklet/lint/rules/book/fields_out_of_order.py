"""The fields of a pattern file stand in another order than in the other files of the book.

In twenty files that are built alike the eye finds what is missing. The usual order is that of the format: title, summary, version,
level, makes, mirror, front, hand, beads, body, fringe, hanger, findings, thread, photo, links, notes, steps, colourways, counted.

Bad:

    # patterns/cloud-shadow.yaml
    title: Cloud Shadow
    # patterns/heat-haze.yaml
    title: Heat Haze
    # patterns/slant-rain.yaml
    title: Slant Rain
    counted: {base: 3}
    notes: |
      It rains.

Good:

    # patterns/cloud-shadow.yaml
    title: Cloud Shadow
    # patterns/heat-haze.yaml
    title: Heat Haze
    # patterns/slant-rain.yaml
    title: Slant Rain
    notes: |
      It rains.
    counted: {base: 3}
"""

from __future__ import annotations

from collections.abc import Iterator

from ....findings import Finding, Severity
from ....source.pattern import Pattern
from ....source.schema import PatternFile
from ...subject import Subject

ID, SEVERITY, NEEDS = "fields-out-of-order", Severity.NOTE, "book"

ORDER = list(PatternFile.fields)
FEWEST = 2   # other files that show what is usual


def check(subject: Subject) -> Iterator[Finding]:
    """The first field out of order of every such file, where most files keep the order."""
    first = {pattern.slug: _first_out_of_order(pattern) for pattern in subject.workspace.patterns.values()}
    odd = {slug: found for slug, found in first.items() if found}
    if len(first) - len(odd) >= max(FEWEST, len(odd) + 1):
        for slug, (name, before) in odd.items():
            yield Finding(subject.workspace.patterns[slug].mark(name), SEVERITY, ID,
                          f"{name} stands after {before}, but in most patterns of the book before it",
                          "booklet lint --fix puts the fields in order")


def _first_out_of_order(pattern: Pattern) -> tuple[str, str] | None:
    """The first field that belongs before one that stands before it, with that one."""
    written = sorted((name for name in ORDER if (name,) in pattern.marks), key=lambda name: pattern.marks[name,])
    for index, name in enumerate(written):
        later = [other for other in written[:index] if ORDER.index(other) > ORDER.index(name)]
        if later:
            return name, later[0]
    return None
