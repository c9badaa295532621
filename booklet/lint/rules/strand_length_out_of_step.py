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

from ...findings import Finding, Severity
from ..mirrors import unlike_strands
from ..progressions import FEWEST, MOST, odd_one, swapped
from ..subject import Subject

ID, SEVERITY, NEEDS = "strand-length-out-of-step", Severity.WARNING, "piece"


def check(subject: Subject) -> Iterator[Finding]:
    """The strand, or the two, without which the lengths in beads would be regular."""
    strands = subject.piece.strands
    if unlike_strands(strands):   # said already, with the beads
        return
    lengths = [len(strand.all) for strand in strands]
    is_mirrored = lengths == lengths[::-1]
    found = _out_of_step(lengths[:(len(lengths) + 1) // 2] if is_mirrored else lengths) or _unlike_length(lengths)
    if found:
        yield Finding(subject.pattern.mark("strand", found[0] + 1), SEVERITY, ID, found[1])


def _out_of_step(lengths: list[int]) -> tuple[int, str] | None:
    """Index of a strand that breaks the progression, and what is said of it."""
    pair, odd = swapped(lengths), odd_one(lengths)
    if pair is not None:
        one, other = pair
        return one, (f"strands {one + 1} and {other + 1} have {lengths[one]} and {lengths[other]} beads; the other strands step evenly as if these two "
                     "had changed places")
    if odd is not None:
        return odd[0], f"strand {odd[0] + 1} has {lengths[odd[0]]} beads; the other strands step evenly as if it had {odd[1]}"
    return None


def _unlike_length(lengths: list[int]) -> tuple[int, str] | None:
    """The same for a fringe in which all strands but two are as long as those opposite them."""
    unequal = [index for index in range(len(lengths) // 2) if lengths[index] != lengths[-1 - index]]
    if len(unequal) != 1 or not FEWEST < len(lengths) <= MOST:
        return None
    one, other = unequal[0], len(lengths) - 1 - unequal[0]
    return other, (f"strand {other + 1} has {lengths[other]} beads and strand {one + 1} opposite it {lengths[one]}; "
                   "all other strands are as long as those opposite them")
