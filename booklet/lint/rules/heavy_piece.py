"""An earring is heavy for an ear.

Published pages begin to call an earring heavy at 5 to 10 g each, ear wire and all; half an ounce (14 g) is named as the very most. A
buyer wants to know before she has strung a thousand beads. Over 10 g this is a warning, over 5 g a note. A pendant may be heavier.

Bad:

    makes: pair
    beads:
      W: {name: chalk white, colour: "#f4f1ea", finish: matte, kind: round 6/0}
      B: {name: storm blue, colour: "#3d5a80", finish: lustre, kind: round 6/0}
    fringe:
      end: 1B
      strands: [40W, 40W, 40W]

Good:

    makes: pair
    fringe:
      end: 1B
      strands: [40W, 40W, 40W]
"""

from __future__ import annotations

from collections.abc import Iterator

from ...craft.size import mass
from ...findings import Finding, Severity
from ..subject import Subject

ID, SEVERITY, NEEDS = "heavy-piece", Severity.WARNING, "piece"

NOTED, HEAVY = 5.0, 10.0   # g


def check(subject: Subject) -> Iterator[Finding]:
    """The mass of the beads of one earring. A single piece is an earring where it has an ear wire or the like."""
    pattern, grams = subject.pattern, mass(subject.piece)
    is_earring = pattern.makes == "pair" or any("ear" in item.item.lower().replace("-", " ").split() for item in pattern.findings_list)
    if is_earring and grams > NOTED:
        severity = SEVERITY if grams > HEAVY else Severity.NOTE
        yield Finding(pattern.mark("makes"), severity, ID, f"the beads of one piece weigh {grams:.1f} g, ear wire not counted; ears bear 5 to 10 g",
                      "take smaller beads, fewer strands or shorter ones")
