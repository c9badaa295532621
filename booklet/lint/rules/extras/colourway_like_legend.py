"""A colourway, or another colourway, has the very colours of this one.

It shows the same picture twice under two names: a colour was to be changed and was not.

Bad:

    colourways:
      dusk: {B: {name: evening blue, colour: "#3d5a80"}}

Good:

    colourways:
      dusk: {B: {name: plum, colour: "#5e3a5b"}}
"""

from __future__ import annotations

from collections.abc import Hashable, Iterator, Mapping

from ....craft.beads import Bead
from ....findings import Finding, Severity
from ...subject import Subject

ID, SEVERITY, NEEDS = "colourway-like-legend", Severity.WARNING, "pattern"


def check(subject: Subject) -> Iterator[Finding]:
    """Every colourway with the colours and finishes of the legend, or of a colourway before it."""
    pattern = subject.pattern
    before = {_look(pattern.legend): "the legend"}
    for name, changed in pattern.colourways.items():
        look = _look({**pattern.legend, **changed})
        if changed and look in before:
            yield Finding(pattern.mark("colourways", name), SEVERITY, ID, f"the colourway {name} has the same colours as {before[look]}")
        before.setdefault(look, f"the colourway {name}")


def _look(beads: Mapping[str, Bead]) -> Hashable:
    return tuple((key, bead.colour, bead.finish, bead.kind.name) for key, bead in sorted(beads.items()))
