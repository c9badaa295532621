"""The rows change in width evenly but for one, or an edge that goes in and out by turns misses a turn.

Such a row can be worked, so nothing else shows that a stitch was left out or that a row was drawn a stitch too far to the side.

Bad:

    body:
      chart: |
        7 | W B B W
        6 |  W B B W
        5 | W B B W
        4 |  W B B
        3 | W B B W
        2 |  W B B W
        1 | W B B W

Good:

    body:
      chart: |
        7 | W B B W
        6 |  W B B W
        5 | W B B W
        4 |  W B B W
        3 | W B B W
        2 |  W B B W
        1 | W B B W
"""

from __future__ import annotations

from collections.abc import Iterator

from ...findings import Finding, Severity
from ..progressions import broken_zigzag, odd_step, short_in_zigzag
from ..subject import Subject

ID, SEVERITY, NEEDS = "row-width-out-of-step", Severity.WARNING, "path"


def check(subject: Subject) -> Iterator[Finding]:
    """Every row that breaks the progression of the rows around it."""
    rows = subject.piece.drawn
    widths = [len(row.stitches) for row in rows]
    broken = {index: "left" for index in broken_zigzag([row.first for row in rows])}
    for index in broken_zigzag([row.last for row in rows]):
        broken[index] = "both" if index in broken else "right"
    broken |= _one_short([row.first for row in rows], [-row.last for row in rows])
    for index, side in sorted(broken.items()):
        edges = "both edges of the rows around it go" if side == "both" else f"the {side} edge of the rows around it goes"
        yield Finding(subject.pattern.mark("row", rows[index].number), SEVERITY, ID,
                      f"row {rows[index].number} has {widths[index]} stitches; {edges} in and out by turns, and here not")
    index = odd_step(widths)
    if index is not None and not broken:
        step, usual = widths[index] - widths[index - 1], widths[1] - widths[0]
        yield Finding(subject.pattern.mark("row", rows[index].number), SEVERITY, ID,
                      f"row {rows[index].number} {_said(step)} than row {rows[index - 1].number}; all other rows from the bottom up {_said(usual, 'have')} than the one below")


def _one_short(left: list[int], right: list[int]) -> dict[int, str]:
    """Rows near the first and the last that lack a stitch at one edge; one that lacks it at both may be meant."""
    short, other = set(short_in_zigzag(left)), set(short_in_zigzag(right))
    return {index: "left" if index in short else "right" for index in short ^ other}


def _said(step: int, have: str = "has") -> str:
    return f"{have} as many stitches" if step == 0 else f"{have} {abs(step)} stitch{'es' if abs(step) > 1 else ''} {'more' if step > 0 else 'less'}"
