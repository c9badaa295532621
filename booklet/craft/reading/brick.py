"""Rows of brick stitch, read back from their printed lines."""

from __future__ import annotations

import re
from collections.abc import Sequence

from .items import CannotRead, items
from .told import ReadRow

_ROW = re.compile(r"Row (\d+) ([←→]) (\d+) (stitch|stitches|set|sets)( below)?: (.+)")
_TEXT = re.compile(r"(?:(ladder|start in|start out|one stitch|one set) (.+?))(?:; then (.+?))?(?:; end (in|out))?")


def read_rows(lines: Sequence[str]) -> tuple[ReadRow, ...]:
    """Work the lines in their order."""
    rows: list[ReadRow] = []
    for line in lines:
        rows.append(_read_row(line, rows))
    return tuple(rows)


def _read_row(line: str, done: list[ReadRow]) -> ReadRow:
    match = _ROW.fullmatch(line)
    parts = _TEXT.fullmatch(match[6]) if match else None
    if not parts:
        raise CannotRead(f"cannot read this line back: {line!r}")
    number, right, below = int(match[1]), match[2] == "→", bool(match[5])
    how, end = parts[1], parts[4]
    sets = items(parts[2], line) + (items(parts[3], line) if parts[3] else [])
    if len(sets) != int(match[3]) or len({len(beads) for beads in sets}) != 1:
        raise CannotRead(f"row {number} says {match[3]} {match[4]} but names {len(sets)}: {line!r}")
    if done and right == done[-1].runs_right:
        raise CannotRead(f"row {number} runs the same way as the row before it: {line!r}")
    under = _hangs_on(number, below, done)
    if under is None and how.startswith("start"):
        raise CannotRead(f"the first row is not a ladder: {line!r}")
    positions = _ladder(sets, right) if under is None else _hang(sets, right, how, end, under, line)
    return ReadRow(number, below, right, tuple(sorted(positions)))


def _hangs_on(number: int, below: bool, done: list[ReadRow]) -> ReadRow | None:
    if not done:
        return None
    return done[-1] if done[-1].below == below else done[0]


def _ladder(sets: list[tuple[str, ...]], right: bool) -> list[tuple[int, tuple[str, ...]]]:
    """The last stitch is passed upward, the one before it downward, and so on back to the first."""
    count, placed = len(sets), []
    for k, beads in enumerate(sets):
        low_first = (count - 1 - k) % 2 == 0
        place = 2 * k if right else 2 * (count - 1 - k)
        placed.append((place, beads if low_first else beads[::-1]))
    return placed


def _hang(sets, right, how, end, under, line) -> list[tuple[int, tuple[str, ...]]]:
    """Place a row from its start: half a stitch in or out; only the first stitch of a pair is taken low bead first."""
    places = [place for place, _ in under.stitches]
    near, step = (places[0], 2) if right else (places[-1], -2)
    far = places[-1] if right else places[0]
    if how in ("one stitch", "one set"):
        if len(sets) != 1 or end:
            raise CannotRead(f"one stitch is announced, more is told: {line!r}")
        return [(near + step // 2, sets[0][::-1])]
    if how == "ladder" or end is None or len(sets) < 2 or len(places) < 2:
        raise CannotRead(f"cannot hang this row on the one before: {line!r}")
    start = near + (step // 2 if how == "start in" else -step // 2)
    placed = [(start + k * step, beads if k == 0 else beads[::-1]) for k, beads in enumerate(sets)]
    stop = far - step // 2 if end == "in" else far + step // 2
    if placed[-1][0] != stop:
        raise CannotRead(f"the row does not end {end!r} where it should: {line!r}")
    return placed
