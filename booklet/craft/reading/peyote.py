"""Rows of flat peyote, read back from their printed lines.

The beads strung first fall into two rows: the last one strung lies low, in row 1, the one before it high, in row 2, and
so on back to the first. After that a maker turns, and puts a stitch above every low one; those that were high are then low.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from types import ModuleType

from .items import CannotRead, items
from .told import ReadRow


def read_rows(lines: Sequence[str], grammar: ModuleType) -> tuple[ReadRow, ...]:
    """Work the lines in their order."""
    if not lines:
        raise CannotRead("there is no line to string")
    columns, right, low = _string(lines[0], grammar)
    strung = {column: beads for column, beads in enumerate(columns)}
    zero, high = min(low), [column for column in strung if column not in low]
    rows = [_told(number, right, {column: strung[column] for column in line}, zero) for number, line in ((1, low), (2, high))]
    turned = False   # whether the thread has come back from an edge, and is inside the work
    for number, line in enumerate(lines[1:], 3):
        right = not right
        placed, turned = _read_row(line, grammar, number, right, low, len(columns), turned)
        rows.append(_told(number, right, placed, zero))
        low, high = high, low
    return tuple(rows)


def _string(line: str, grammar: ModuleType) -> tuple[list[tuple[str, ...]], bool, list[int]]:
    """The sets of rows 1 and 2 from the left, the direction, and the columns of row 1."""
    match = re.fullmatch(grammar.PEYOTE_FIRST, line)
    if not match:
        raise CannotRead(f"cannot read this line back: {line!r}")
    sets, right = items(match[3], line), match[1] == "→"
    _counted(sets, match[2], line)
    last = len(sets) - 1
    if len(sets) < 2:
        raise CannotRead(f"one stitch cannot be parted into two rows: {line!r}")
    columns = [beads if right else beads[::-1] for beads in (sets if right else sets[::-1])]
    return columns, right, [column for column in range(len(sets)) if (column - (last if right else 0)) % 2 == 0]


def _read_row(line: str, grammar: ModuleType, number: int, right: bool, low: list[int], across: int, turned: bool) -> tuple[dict[int, tuple[str, ...]], bool]:
    match = re.fullmatch(grammar.PEYOTE_ROW, line)
    if not match or int(match[1]) != number or (match[2] == "→") != right:
        raise CannotRead(f"row {number} cannot be read from this line: {line!r}")
    sets = items(match[4], line)
    _counted(sets, match[3], line)
    if len(sets) != len(low):
        raise CannotRead(f"row {number} has {len(sets)} stitches for {len(low)} gaps: {line!r}")
    way = sorted(low, reverse=not right)
    edges = (0, across - 1) if right else (across - 1, 0)
    if (way[0] == edges[0]) == turned:
        raise CannotRead(f"the thread is not where row {number} begins: {line!r}")
    if (way[-1] == edges[1]) != bool(match[5]):
        raise CannotRead(f"row {number} does not end as it has to: {line!r}")
    return dict(zip(way, (beads if right else beads[::-1] for beads in sets))), bool(match[5])


def _counted(sets: list[tuple[str, ...]], number: str, line: str) -> None:
    if len(sets) != int(number) or len({len(beads) for beads in sets}) != 1:
        raise CannotRead(f"{number} are said and {len(sets)} are named: {line!r}")


def _told(number: int, right: bool, placed: dict[int, tuple[str, ...]], zero: int) -> ReadRow:
    return ReadRow(number, False, right, tuple((column - zero, placed[column]) for column in sorted(placed)))
