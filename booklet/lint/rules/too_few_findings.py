"""The findings list fewer of a charm or ring than the strands of a piece take.

The maker would buy too few. Leave out each: and it is counted from the strands.

Bad:

    fringe:
      end: 3B
      strands: ["12W > {moon charm}", 12W, "12W > {moon charm}"]
    findings:
      - {item: moon charm, each: 1}

Good:

    fringe:
      end: 3B
      strands: ["12W > {moon charm}", 12W, "12W > {moon charm}"]
    findings:
      - {item: moon charm}
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from ...findings import Finding, Severity
from ..subject import Subject

ID, SEVERITY, NEEDS = "too-few-findings", Severity.ERROR, "pattern"


def check(subject: Subject) -> Iterator[Finding]:
    """Both numbers, for each finding that falls short."""
    pattern = subject.pattern
    taken = Counter(charm.name for strand in pattern.written_strands for charm in strand.charms)
    listed = Counter()
    for item in pattern.findings_list:
        listed[item.item] += item.each
    for number, item in enumerate(pattern.findings_list, 1):
        if listed[item.item] < taken[item.item]:
            yield Finding(pattern.mark("findings", number, "each"), SEVERITY, ID,
                          f"the findings list {listed[item.item]} {item.item} for a piece, but its strands take {taken[item.item]}",
                          "leave out each: and they are counted")
