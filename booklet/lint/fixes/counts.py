"""Right figures under `counted`."""

from __future__ import annotations

from collections.abc import Iterator

from ...craft.tally import hand_counts
from ...source.pattern import Pattern
from .lines import with_change


def right_counts(text: str, pattern: Pattern) -> Iterator[str]:
    """The text with every count that differs put right."""
    right = hand_counts(pattern.piece)
    wrong = [(pattern.mark("counted", name), str(right[name])) for name, count in pattern.counted.items() if count != right[name]]
    for mark, new in sorted(wrong, reverse=True):   # from the end, so that the marks before stay where they are
        text = with_change(text, mark, new)
    if wrong:
        yield text
