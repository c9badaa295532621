"""A field of the hanger has no meaning for its kind.

Only a guard has a span and only a ring has a size; a hanger that is none has nothing at all. What is written there is printed
nowhere, so it is probably meant for another kind.

Bad:

    hanger: {kind: ring, span: 2 mm}

Bad:

    hanger: {kind: none, passes: 4}

Good:

    hanger: {kind: guard, span: 2 mm}

Good:

    hanger: {kind: ring, size: 5 mm, passes: 4}
"""

from __future__ import annotations

from collections.abc import Iterator

from ...findings import Finding, Severity
from ..subject import Subject

ID, SEVERITY, NEEDS = "needless-hanger-field", Severity.WARNING, "pattern"

FIELDS = {"guard": ("at", "span", "passes"), "ring": ("at", "size", "passes"), "loop": ("at", "passes"), "none": ()}


def check(subject: Subject) -> Iterator[Finding]:
    """Every field that says nothing about a hanger of this kind."""
    for written in subject.pattern.hangers:
        for name in ("at", "span", "size", "passes"):
            path = (*written.path, name)
            if path in subject.pattern.marks and name not in FIELDS[written.hanger.kind]:
                yield Finding(subject.pattern.mark(*path), SEVERITY, ID, f"a hanger of kind {written.hanger.kind} has no {name}", "delete it")
