"""Two beads that lie side by side look alike to eyes with another colour sight.

About one man in twelve sees some colours otherwise. The letters in the chart still tell the beads apart, but such a maker
cannot check the piece against the picture, and such a wearer does not see the drawing. Colours are seen as by eyes without
one of the three kinds of cone (Machado 2009).

Bad:

    beads:
      W: {name: leaf green, colour: "#8a9a3c", finish: matte, kind: cylinder 11/0}
      B: {name: burnt orange, colour: "#cf8243", finish: matte, kind: cylinder 11/0}
    body:
      chart: |
        2 |  B B
        1 | W B W

Good:

    beads:
      W: {name: leaf green, colour: "#5f7a2c", finish: matte, kind: cylinder 11/0}
      B: {name: pale orange, colour: "#f0b489", finish: matte, kind: cylinder 11/0}
    body:
      chart: |
        2 |  B B
        1 | W B W
"""

from __future__ import annotations

from collections.abc import Iterator

from ...findings import Finding, Severity
from ...source.wording import either
from ..alike import GREY
from ..sight import SIGHTS
from ..subject import Subject

ID, SEVERITY, NEEDS = "colours-alike-to-some-eyes", Severity.NOTE, "piece"


def check(subject: Subject) -> Iterator[Finding]:
    """Every pair that most eyes can tell apart and some cannot."""
    for pair in subject.alike:
        eyes = [sight for sight in pair.sights if sight in SIGHTS]
        if eyes:
            grey = ", and the same grey in black and white" if GREY in pair.sights else ""
            yield Finding(pair.mark, SEVERITY, ID, f"{pair.said} and look alike to {either(eyes)} eyes{grey}", "make one of them lighter or darker")
