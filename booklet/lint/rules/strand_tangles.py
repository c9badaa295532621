"""A strand is so long that it tangles.

Strands of more than about 120 mm (common practice, no source) wind round each other when they are worn, catch on collars and
lie on the shoulder.

Bad:

    fringe:
      end: 1B
      strands: [40W, 100W, 40W]

Good:

    fringe:
      end: 1B
      strands: [40W, 60W, 40W]
"""

from __future__ import annotations

from collections.abc import Iterator

from ...craft.size import hanging_length
from ...findings import Finding, Severity
from ..subject import Subject

ID, SEVERITY, NEEDS = "strand-tangles", Severity.WARNING, "piece"

LONGEST = 120.0   # mm


def check(subject: Subject) -> Iterator[Finding]:
    """The longest strand, if it is over that."""
    piece = subject.piece
    long = {strand.number: hanging_length(piece, strand) for strand in piece.strands}
    over = [number for number, length in long.items() if length > LONGEST]
    if over:
        number = max(over, key=lambda number: long[number])
        others = f"; {len(over)} strands are longer than {LONGEST:.0f} mm" if len(over) > 1 else ""
        yield Finding(subject.pattern.mark("strand", number), SEVERITY, ID, f"strand {number} is {long[number]:.0f} mm long and will tangle{others}",
                      f"keep strands under {LONGEST:.0f} mm")
