"""A strand passes a charm or ring that the findings do not list.

The words would tell a maker to take something that she was never told to buy. The name between the braces is the item
of a finding, word for word.

Bad:

    fringe:
      end: 3B
      strands: [12W, "12W > {moon charm}", 12W]
    findings:
      - {item: ear wire, each: 1}

Good:

    fringe:
      end: 3B
      strands: [12W, "12W > {moon charm}", 12W]
    findings:
      - {item: ear wire, each: 1}
      - {item: moon charm, size: 10 mm}
"""

from __future__ import annotations

from collections.abc import Iterator

from ....findings import Finding, Severity
from ....source.wording import did_you_mean
from ...subject import Subject

ID, SEVERITY, NEEDS = "charm-not-in-findings", Severity.ERROR, "pattern"


def check(subject: Subject) -> Iterator[Finding]:
    """Each name once, at its first place."""
    items = [item.item for item in subject.pattern.findings_list]
    places = {}
    for strand in subject.pattern.written_strands:
        for charm in strand.charms:
            places.setdefault(charm.name, charm.mark)
    for name, mark in places.items():
        if name not in items:
            yield Finding(mark, SEVERITY, ID, f"the findings list no {name}", did_you_mean(name, items) or "add it under findings:")
