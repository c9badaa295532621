"""Lengths and widths that step regularly, and the one that does not."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import combinations, pairwise

FEWEST = 6         # numbers that prove a progression
FEWEST_COMB = 10   # the same where every second one has its own
MOST = 100         # more are not looked at
MOST_TO_SWAP = 40  # the same where each may have changed places with each


def is_regular(numbers: Sequence[int]) -> bool:
    """Whether numbers stay equal, step evenly, or step evenly up and as evenly down again; or every second one of them does."""
    return _is_even(numbers) or len(numbers) >= FEWEST_COMB and _is_even(numbers[::2]) and _is_even(numbers[1::2])


def _is_even(numbers: Sequence[int]) -> bool:
    steps: list[int] = []   # each as often as it begins anew
    for before, after in pairwise(numbers):
        if not steps or after - before != steps[-1]:
            steps.append(after - before)
            if len(steps) > 3:
                return False
    return len(steps) <= 1 or len(steps) == 2 and steps[0] == -steps[1] or len(steps) == 3 and steps[1] == 0 and steps[0] == -steps[2]


def odd_one(numbers: Sequence[int]) -> tuple[int, int] | None:
    """Index of the only number that breaks the progression of all others, and what it should be."""
    if not FEWEST <= len(numbers) <= MOST or is_regular(numbers):
        return None
    found = {(index, value) for index in range(len(numbers)) for value in _expected(numbers, index)
             if is_regular([*numbers[:index], value, *numbers[index + 1:]])}
    return min(found, key=lambda entry: (abs(numbers[entry[0]] - entry[1]), entry)) if found else None


def _expected(numbers: Sequence[int], index: int) -> Iterator[int]:
    """What a number would be if the steps, or the comb, before or after it went on."""
    for one, other in ((-1, -2), (1, 2), (-2, -4), (2, 4), (-1, 1)):
        if 0 <= min(index + one, index + other) and max(index + one, index + other) < len(numbers):
            near, far = numbers[index + one], numbers[index + other]
            yield from (near, 2 * near - far) if one * other > 0 else ((near + far) // 2,)


def swapped(numbers: Sequence[int]) -> tuple[int, int] | None:
    """Indexes of the two numbers that would make the progression regular if they changed places; neighbours are tried first."""
    if not FEWEST <= len(numbers) <= MOST_TO_SWAP or is_regular(numbers):
        return None
    pairs = ((one, other) for one, other in combinations(range(len(numbers)), 2) if numbers[one] != numbers[other])
    for one, other in sorted(pairs, key=lambda pair: pair[1] - pair[0]):
        changed = list(numbers)
        changed[one], changed[other] = changed[other], changed[one]
        if is_regular(changed):
            return one, other
    return None


def broken_zigzag(edge: Sequence[int]) -> Iterator[int]:
    """Indexes where an edge that goes in and out by turns does not."""
    for index in range(3, len(edge) - 3):
        others = {edge[index - 3], edge[index - 1], edge[index + 1], edge[index + 3]}
        if len(others) == 1 and edge[index - 2] == edge[index + 2] != edge[index]:
            yield index


def short_in_zigzag(edge: Sequence[int]) -> Iterator[int]:
    """Indexes near the ends of such an edge where it goes in a stitch too far; numbers grow inward, two for a stitch. Less proves it than in the middle."""
    for index in (1, 2, len(edge) - 3, len(edge) - 2) if len(edge) > 6 else ():
        others = [edge[at] for at in (index - 3, index - 1, index + 1, index + 3) if 0 <= at < len(edge)]
        like = [edge[at] for at in (index - 2, index + 2, index - 4, index + 4) if 0 <= at < len(edge)][:2]
        if len(set(others)) == 1 and like[0] == like[1] == edge[index] - 2:
            yield index


def odd_step(numbers: Sequence[int]) -> int | None:
    """Index of the number at which the only odd step among equal ones ends; a step near either end may be meant."""
    steps = [after - before for before, after in zip(numbers, numbers[1:])]
    odd = [index for index, step in enumerate(steps) if steps.count(step) == 1]
    if len(odd) != 1 or len(set(steps)) != 2 or not 3 <= odd[0] <= len(steps) - 4:
        return None
    return odd[0] + 1
