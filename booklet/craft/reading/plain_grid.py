"""Rows whose beads stand straight above one another, read back from their printed lines: square stitch and loom work.

What differs is whether the work is turned after a row. In both a row begins where the thread is, or so many beads further in or
out, and the count of its beads says where it ends.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from types import ModuleType

from .items import CannotRead, items
from .told import ReadRow


def read_rows(lines: Sequence[str], grammar: ModuleType, turned: bool) -> tuple[ReadRow, ...]:
    """Work the lines in their order. `turned`: whether each row runs against the row before it."""
    rows: list[ReadRow] = []
    for number, line in enumerate(lines, 1):
        rows.append(_read_row(line, grammar, number, rows[-1] if rows else None, turned))
    zero = rows[0].stitches[0][0] if rows else 0
    return tuple(ReadRow(row.number, False, row.runs_right, tuple((at - zero, beads) for at, beads in row.stitches)) for row in rows)


def _read_row(line: str, grammar: ModuleType, number: int, before: ReadRow | None, turned: bool) -> ReadRow:
    match = re.fullmatch(grammar.GRID_ROW, line)
    if not match or int(match[1]) != number:
        raise CannotRead(f"cannot read this line back: {line!r}")
    right, sets = match[2] == "→", items(match[6], line)
    if len(sets) != int(match[3]) or any(len(beads) != 1 for beads in sets):
        raise CannotRead(f"row {number} says {match[3]} but names {len(sets)}: {line!r}")
    if before and (right == before.runs_right) == turned:
        raise CannotRead(f"row {number} runs the wrong way: {line!r}")
    step = 2 if right else -2
    if before is None:
        start = 0
    else:
        ends = before.stitches[0][0], before.stitches[-1][0]
        start = (ends[0] if right else ends[1]) + step * _reach(match[4], grammar.ENDS.get(match[5]))
        stop, goal = start + step * (len(sets) - 1), (ends[1] if right else ends[0]) - step * _reach(match[7], grammar.ENDS.get(match[8]))
        if stop != goal:
            raise CannotRead(f"row {number} does not end where it says: {line!r}")
    placed = [(start + step * k, beads) for k, beads in enumerate(sets)]
    return ReadRow(number, False, right, tuple(sorted(placed)))


def _reach(count: str | None, way: str | None) -> int:
    """Beads further in; negative further out."""
    return int(count or 0) * (-1 if way == "out" else 1)
