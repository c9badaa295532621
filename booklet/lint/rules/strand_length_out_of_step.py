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
    strands = subject.piece.strands
    if unlike_strands(strands) or any(strand.kind != STRAIGHT or strand.twigs for strand in strands):
        return   # said already, with the beads; or their counts say nothing about the hem
    numbers, lengths = [strand.number for strand in strands], [len(strand.all) for strand in strands]
    is_mirrored = lengths == lengths[::-1]
    found = _out_of_step(lengths[:(len(lengths) + 1) // 2] if is_mirrored else lengths, numbers) or _unlike_length(lengths, numbers)
    if found:
        yield Finding(subject.pattern.mark("strand", numbers[found[0]]), SEVERITY, ID, found[1])


def _out_of_step(lengths: list[int], numbers: list[int]) -> tuple[int, str] | None:
    """Index of a strand that breaks the progression, and what is said of it."""
    pair, odd = swapped(lengths), odd_one(lengths)
    if pair is not None:
        one, other = pair
        return one, (f"strands {numbers[one]} and {numbers[other]} have {lengths[one]} and {lengths[other]} beads; the other strands step evenly as if these two "
                     "had changed places")
    if odd is not None:
        return odd[0], f"strand {numbers[odd[0]]} has {lengths[odd[0]]} beads; the other strands step evenly as if it had {odd[1]}"
    return None


def _unlike_length(lengths: list[int], numbers: list[int]) -> tuple[int, str] | None:
    """The same for a fringe in which all strands but two are as long as those opposite them."""
    unequal = [index for index in range(len(lengths) // 2) if lengths[index] != lengths[-1 - index]]
    if len(unequal) != 1 or not FEWEST < len(lengths) <= MOST:
        return None
    one, other = unequal[0], len(lengths) - 1 - unequal[0]
    return other, (f"strand {numbers[other]} has {lengths[other]} beads and strand {numbers[one]} opposite it {lengths[one]}; "
                   "all other strands are as long as those opposite them")
