"""Right numbers before the rows of a chart."""

from __future__ import annotations

from collections.abc import Iterator

from ...findings import Mark
from ...source.pattern import Pattern
from .lines import with_change


def right_numbers(text: str, pattern: Pattern) -> Iterator[str]:
    """The text with every wrong number put right, the bars where they are: a longer number takes a space before or after it."""
    rows = zip(pattern.chart.numbers(pattern.base), pattern.chart.rows)
    wrong = [(row.number_mark, str(number)) for number, row in rows if row.number_mark is not None and row.written != number]
    if not wrong:
        return
    for before in (True, False):
        yield _changed(text, wrong, before)


def _changed(text: str, wrong: list[tuple[Mark, str]], before: bool) -> str:
    for mark, new in wrong:
        more = max(len(new) - mark.width, 0)
        place = mark._replace(column=mark.column - more * before, width=mark.width + more)
        text = with_change(text, place, new.rjust(mark.width))
    return text
