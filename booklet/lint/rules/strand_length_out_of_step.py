"""The strands step evenly in length but for one, or but for two that seem to have changed places.

A bead too many or too few in one strand shows as a step in the hem.

Bad:

    body:
      chart: |
        2 |  B B B B B
        1 | W W W W W W
    fringe:
      end: 1B
      strands: [4W, 6W, 8W, 11W, 12W, 14W]

Good:

    body:
      chart: |
        2 |  B B B B B
        1 | W W W W W W
    fringe:
      end: 1B
      strands: [4W, 6W, 8W, 10W, 12W, 14W]
"""

from __future__ import annotations

from collections.abc import Iterator

from ...craft.strand import STRAIGHT
from ...findings import Finding, Severity
from ..mirrors import unlike_strands
from ..progressions import FEWEST, MOST, odd_one, swapped
from ..subject import Subject

ID, SEVERITY, NEEDS = "strand-length-out-of-step", Severity.WARNING, "piece"


def check(subject: Subject) -> Iterator[Finding]:
    """The strand, or the two, without which the lengths in beads would be regular."""
    pattern, strands = subject.pattern, subject.piece.strands
    if unlike_strands(strands) or any(strand.kind != STRAIGHT or strand.twigs for strand in strands):
        return   # said already, with the beads; or their counts say nothing about the hem
    numbers = [strand.number for strand in strands]
    lengths = [len(strand.all) for strand in strands]
    odd, first = odd_one(lengths), swapped(lengths)
    if first is not None and lengths[first] != lengths[first + 1]:
        yield Finding(pattern.mark("strand", numbers[first]), SEVERITY, ID,
                      f"strands {numbers[first]} and {numbers[first + 1]} have {lengths[first]} and {lengths[first + 1]} beads; the other strands step evenly "
                      "as if these two had changed places")
    elif odd is not None:
        index, expected = odd
        yield Finding(pattern.mark("strand", numbers[index]), SEVERITY, ID,
                      f"strand {numbers[index]} has {lengths[index]} beads; the other strands step evenly as if it had {expected}")
    elif FEWEST < len(lengths) <= MOST:
        unequal = [index for index in range(len(lengths) // 2) if lengths[index] != lengths[-1 - index]]
        if len(unequal) == 1:
            one, other = unequal[0], len(lengths) - 1 - unequal[0]
            yield Finding(pattern.mark("strand", numbers[other]), SEVERITY, ID,
                          f"strand {numbers[other]} has {lengths[other]} beads and strand {numbers[one]} opposite it {lengths[one]}; "
                          "all other strands are as long as those opposite them")
