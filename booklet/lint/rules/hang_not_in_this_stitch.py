"""The fringe hangs where this stitch of the body has no places for it.

In peyote, square stitch and loom work beads lie along their row: there is no stitch to go up through along a slanted edge,
and no thread bridge. The fringe of such a body hangs from row 1.

Bad:

    body:
      stitch: square
      chart: |
        2 | W B W
        1 | W B W
    fringe:
      hang: bridges
      end: 3B
      strands: [12W, 14W]

Good:

    body:
      stitch: square
      chart: |
        2 | W B W
        1 | W B W
    fringe:
      end: 3B
      strands: [12W, 14W, 12W]
"""

from __future__ import annotations

from collections.abc import Iterator

from ...craft.places import hangs
from ...craft.stitches import stitch_of
from ...findings import Finding, Severity
from ..subject import Subject

ID, SEVERITY, NEEDS = "hang-not-in-this-stitch", Severity.ERROR, "piece"


def check(subject: Subject) -> Iterator[Finding]:
    """The field hang, where the stitch does not know it."""
    pattern, piece = subject.pattern, subject.piece
    if piece.strands and pattern.hang not in hangs(piece.stitch):
        yield Finding(pattern.mark("fringe", "hang"), SEVERITY, ID, f"a fringe of {stitch_of(piece).NAME} cannot hang from {_said(pattern.hang)}",
                      "leave hang out: the strands hang from row 1")


def _said(hang: str) -> str:
    return {"edge": "the lower edge", "bridges": "thread bridges"}[hang]
