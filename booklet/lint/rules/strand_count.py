"""There is not one strand under each stitch of the base row.

The needle comes down through one base stitch after the other and hangs a strand at each. With one too few or too
many, the maker is left with a bare stitch or with a strand that has no place.

Bad:

    body:
      chart: |
        2 |  B B
        1 | W B W
    fringe:
      end: 3B
      strands: [12W 2B, 14W 2B]

Good:

    body:
      chart: |
        2 |  B B
        1 | W B W
    fringe:
      end: 3B
      strands: [12W 2B, 14W 2B, 12W 2B]
"""

from __future__ import annotations

from collections.abc import Iterator

from ...findings import Finding, Severity
from ..subject import Subject

ID, SEVERITY, NEEDS = "strand-count", Severity.ERROR, "piece"


def check(subject: Subject) -> Iterator[Finding]:
    """The two numbers, where they differ."""
    if subject.strands_fit:
        return
    pattern, strands, base = subject.pattern, len(subject.piece.strands), len(subject.piece.base.stitches)
    written = len({strand.mark for strand in pattern.written_strands})
    have = "1 strand" if strands == 1 else f"{strands} strands"
    mirrored = f" ({written} written and mirrored)" if written < strands else ""
    want = "1 stitch" if base == 1 else f"{base} stitches"
    field = "strands" if ("fringe", "strands") in pattern.marks else "chart"
    yield Finding(pattern.mark("fringe", field), SEVERITY, ID, f"the fringe has {have}{mirrored}, but the base row has {want}")
