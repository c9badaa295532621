"""The fringe is its own mirror picture but for one to three beads.

Where all other strands are like those opposite them, a strand was changed on one side and forgotten on the other, or a bead was
lost in a run. `mirror: true` in the fringe needs only half of the strands.

Bad:

    body:
      chart: |
        2 |  B B B B B
        1 | W W W W W W
    fringe:
      end: 1B
      strands: [6W 2B, 9W 3B, 12W 4B, 12W 4B, 9W 2B, 6W 2B]

Good:

    body:
      chart: |
        2 |  B B B B B
        1 | W W W W W W
    fringe:
      end: 1B
      strands: [6W 2B, 9W 3B, 12W 4B, 12W 4B, 9W 3B, 6W 2B]
"""

from __future__ import annotations

from collections.abc import Iterator

from ...findings import Finding, Severity
from ..mirrors import unlike_strands
from ..subject import Subject

ID, SEVERITY, NEEDS = "fringe-nearly-symmetric", Severity.WARNING, "piece"


def check(subject: Subject) -> Iterator[Finding]:
    """Every strand that differs from the one opposite it."""
    for pair in unlike_strands(subject.piece.strands):
        beads = "one bead" if pair.beads == 1 else f"{pair.beads} beads"
        yield Finding(subject.pattern.mark("strand", pair.other.number), SEVERITY, ID,
                      f"strand {pair.other.number} differs by {beads} from strand {pair.one.number} opposite it",
                      "all other strands are like those opposite them")
