"""Two keys of the legend are easily confused in print.

The letter O and the figure 0, or I, l and 1, look the same in many types; so do a small and a capital letter of one shape when they
stand alone in a bead. A maker picks up the wrong one.

Bad:

    beads:
      O: {name: chalk white, colour: "#f4f1ea", finish: matte, kind: cylinder 11/0}
      0: {name: storm blue, colour: "#3d5a80", finish: lustre, kind: cylinder 11/0}
    body:
      chart: |
        2 |  O O
        1 | 0 O 0

Good:

    beads:
      O: {name: chalk white, colour: "#f4f1ea", finish: matte, kind: cylinder 11/0}
      B: {name: storm blue, colour: "#3d5a80", finish: lustre, kind: cylinder 11/0}
    body:
      chart: |
        2 |  O O
        1 | B O B
"""

from __future__ import annotations

from collections.abc import Iterator

from ...findings import Finding, Severity
from ..subject import Subject

ID, SEVERITY, NEEDS = "keys-look-alike", Severity.WARNING, "pattern"

GROUPS = ("O0o", "Il1", *(letter + letter.lower() for letter in "CSVWXZKPU"))


def check(subject: Subject) -> Iterator[Finding]:
    """Every key that looks like one before it in the legend."""
    before: list[str] = []
    for key in subject.pattern.legend:
        other = next((other for other in before if any(key in group and other in group for group in GROUPS)), None)
        if other is not None:
            yield Finding(subject.pattern.mark("beads", key), SEVERITY, ID, f"the keys {_called(other)} and {_called(key)} look alike in print",
                          f"take another letter for {subject.pattern.legend[key].name}")
        before.append(key)


def _called(key: str) -> str:
    """The key with its sort, so that the message itself cannot be misread."""
    return f"{'figure' if key.isdigit() else 'capital' if key.isupper() else 'small'} {key}"
