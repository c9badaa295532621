"""A text of this pattern names another pattern of the book, or its link leads to one.

It is often left over from the pattern that this one was copied from. Where it is meant, a buyer of the single pattern
does not have the other one.

Bad:

    # patterns/heat-haze.yaml
    title: Heat Haze
    # patterns/cloud-shadow.yaml
    title: Cloud Shadow
    notes: |
      Heat Haze is worked from the bottom up.

Good:

    # patterns/heat-haze.yaml
    title: Heat Haze
    # patterns/cloud-shadow.yaml
    title: Cloud Shadow
    notes: |
      {{ title }} is worked from the bottom up, and in July a heat haze lies over the road.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from ...craft.kept import kept
from ...findings import Finding, Severity
from ...source.workspace import Workspace
from ..passages import Passage
from ..subject import Subject

ID, SEVERITY, NEEDS = "left-over-title", Severity.WARNING, "pattern"

_START = r"(?:^|[.!?:]\s+|\n\s*)$"


def check(subject: Subject) -> Iterator[Finding]:
    """Every title or address of another pattern, written as it writes itself."""
    pattern, slugs = subject.pattern, _compound_slugs(subject.workspace)
    for passage in subject.passages:
        titles_here = [title for title in _titles(subject.workspace) if title in passage.words and title not in pattern.title]   # one expression of all titles of a long book would take longer to make than all else
        for match in re.finditer(rf"\b(?:{'|'.join(map(re.escape, sorted(titles_here, key=len, reverse=True)))})\b", passage.words) if titles_here else ():
            if not _may_be_a_word(match, passage):
                yield Finding(passage.mark(match.start(), match.end()), SEVERITY, ID,
                              f"{passage.does('name')} {match[0]}, which is another pattern",
                              "write {{ title }} for the title of this one" if passage.filled_in else "")
    for number, link in enumerate(pattern.links, 1):
        for slug in sorted(slugs.intersection(re.split(r"[/?#=&.]", link.url)) - {pattern.slug}):
            yield Finding(pattern.mark("links", number, "url"), SEVERITY, ID, f"this link leads to {slug}, which is another pattern")


@kept
def _titles(workspace: Workspace) -> tuple[str, ...]:
    """Every title of the workspace once."""
    return tuple(dict.fromkeys(pattern.title for pattern in workspace.patterns.values() if pattern.title))


@kept
def _compound_slugs(workspace: Workspace) -> frozenset[str]:
    """The slugs that no plain word of an address could be."""
    return frozenset(slug for slug in workspace.patterns if "-" in slug)


def _may_be_a_word(match: re.Match, passage: Passage) -> bool:
    """Whether a title of one word may only be a word with a capital at the start of a sentence."""
    return " " not in match[0] and bool(re.search(_START, passage.words[:match.start()]))
