"""Run notation: a long list of beads said shortly, count before key: "3W, 1B", "4 × [2W, 1B]", "3(W B)"."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby

LONGEST_GROUP = 4   # runs in a repeated group; longer ones are harder to follow than the plain list
FEWEST_REPEATS = 3


def said(items: Sequence[tuple[str, ...] | str]) -> str:
    """Words for items in order; an item of one key is a bead ("W"), of several a set ("(W B)"), a text stands as it is."""
    runs = [(len(list(same)), item) for item, same in groupby(items)]
    parts, at = [], 0
    while at < len(runs):
        size, times = _repeat_at(runs, at)
        group = ", ".join(_run(count, item) for count, item in runs[at:at + size])
        parts.append(f"{times} × [{group}]" if times > 1 else group)
        at += size * times
    return ", ".join(parts)


def _run(count: int, item: tuple[str, ...] | str) -> str:
    if isinstance(item, str):
        return ", ".join([item] * count)
    if len(item) == 1:
        return f"{count}{item[0]}"
    beads = f"({' '.join(item)})"
    return beads if count == 1 else f"{count}{beads}"


def _repeat_at(runs: list, at: int) -> tuple[int, int]:
    """Size and number of repeats of the group that starts here and shortens the words most; (1, 1) if none does."""
    best = (1, 1)
    for size in range(2, LONGEST_GROUP + 1):
        if runs[at + size:at + size + 1] != runs[at:at + 1]:   # most are no repeat from the first run on
            continue
        times = 1
        while runs[at + times * size:at + (times + 1) * size] == runs[at:at + size]:
            times += 1
        if times >= FEWEST_REPEATS and size * times > best[0] * best[1]:
            best = (size, times)
    return best
