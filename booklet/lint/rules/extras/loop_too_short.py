"""A loop has too few beads to reach from one place to the other.

Its beads would be pulled up tight against the body, and thread would show beside them. A loop needs beads for the way
across and a little more, so that it can hang.

Bad:

    fringe:
      end: 3B
      strands: [{loop: 1W, to: after}, 12W, ~]

Good:

    fringe:
      end: 3B
      strands: [{loop: 20W, to: after}, 12W, ~]
"""

from __future__ import annotations

from collections.abc import Iterator
from math import dist

from ....craft.layout import layout
from ....craft.places import places
from ....craft.size import strand_length
from ....findings import Finding, Severity
from ...subject import Subject

ID, SEVERITY, NEEDS = "loop-too-short", Severity.ERROR, "path"
LEAST = 1.5   # times the way across: half a round


def check(subject: Subject) -> Iterator[Finding]:
    """Each such loop, with what it has and what it needs."""
    piece = subject.piece
    loops = [strand for strand in piece.strands if strand.to]
    plan, hanging = (layout(piece), places(piece)) if loops else (None, ())
    for strand in loops:
        ends = [hanging[number - 1] for number in (strand.number, strand.number + strand.to)]
        across = dist(*((plan.x(end.at), plan.bottoms[end.row.number]) for end in ends))
        have = strand_length(piece, strand.beads)
        if have < LEAST * across:
            yield Finding(subject.pattern.mark("strand", strand.number), SEVERITY, ID,
                          f"the beads of this loop measure {have:.1f} mm, but its places lie {across:.1f} mm apart",
                          f"it needs {LEAST * across:.1f} mm of beads or more")
