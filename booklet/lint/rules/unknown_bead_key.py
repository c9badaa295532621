"""A bead key stands in the chart, the fringe, the hanger or a colourway, but not in the legend.

A maker would look for a pile of beads that the materials do not list.

Bad:

    beads:
      W: {name: chalk white, colour: "#f4f1ea", finish: matte, kind: cylinder 11/0}
      B: {name: storm blue, colour: "#3d5a80", finish: lustre, kind: cylinder 11/0}
    body:
      chart: |
        2 |  B B
        1 | W X W

Good:

    beads:
      W: {name: chalk white, colour: "#f4f1ea", finish: matte, kind: cylinder 11/0}
      B: {name: storm blue, colour: "#3d5a80", finish: lustre, kind: cylinder 11/0}
    body:
      chart: |
        2 |  B B
        1 | W B W
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from ...findings import Finding, Severity
from ...source.chart import DrawnBead
from ...source.pattern import Pattern
from ..subject import Subject

ID, SEVERITY, NEEDS = "unknown-bead-key", Severity.ERROR, "pattern"


def check(subject: Subject) -> Iterator[Finding]:
    """One finding for each such key in each part, at its first place. Reading has said so of colourways."""
    pattern = subject.pattern
    yield from _unknown(pattern, "the chart", (bead for row in pattern.chart.rows for line in row.lines for bead in line))
    yield from _unknown(pattern, "the fringe", (bead for strand in pattern.written_strands for bead in strand.every))
    yield from _unknown(pattern, "the hanger", pattern.hanger_beads)


def _unknown(pattern: Pattern, part: str, beads: Iterable[DrawnBead]) -> Iterator[Finding]:
    places: dict[str, list[DrawnBead]] = {}
    for bead in dict.fromkeys(beads):   # a run such as 12X is written once, and so is a mirrored strand
        if not _is_known(pattern, bead.key):
            places.setdefault(bead.key, []).append(bead)
    for key, found in places.items():
        often = f" in {len(found)} places" if len(found) > 1 else ""
        yield Finding(min(bead.mark for bead in found), SEVERITY, ID,
                      f"the bead key {key} stands in {part}{often}, but not in the legend", _hint(pattern, key))


def _is_known(pattern: Pattern, key: str) -> bool:
    """A legend entry that could not be read still names its key; what is wrong with it is said there."""
    return key in pattern.legend or ("beads", key) in pattern.marks


def _hint(pattern: Pattern, key: str) -> str:
    other = key.swapcase()
    if other != key and other in pattern.legend:
        return f"did you mean {other}?"
    return f"the legend has {', '.join(pattern.legend)}" if pattern.legend else ""
