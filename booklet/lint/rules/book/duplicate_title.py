"""Two patterns of the book have one title.

On the contents page, in a shop and in the list of corrections nobody can tell them apart.

Bad:

    # patterns/cloud-shadow.yaml
    title: Cloud Shadow
    # patterns/heat-haze.yaml
    title: Cloud shadow

Good:

    # patterns/cloud-shadow.yaml
    title: Cloud Shadow
    # patterns/heat-haze.yaml
    title: Heat Haze
"""

from __future__ import annotations

from collections.abc import Iterator

from ....findings import Finding, Severity
from ...subject import Subject

ID, SEVERITY, NEEDS = "duplicate-title", Severity.WARNING, "book"


def check(subject: Subject) -> Iterator[Finding]:
    """Every title that an earlier pattern of the book has."""
    first: dict[str, str] = {}
    for pattern in subject.workspace.patterns.values():
        title = " ".join(pattern.title.casefold().split())
        if title in first:
            yield Finding(pattern.mark("title"), SEVERITY, ID, f"{first[title]} has the title {pattern.title} already")
        elif title:
            first[title] = pattern.slug
