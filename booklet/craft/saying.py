"""Small pieces of the written steps: units, lengths, lists of rows."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby

from .events import Section
from .piece import Piece, Row


@dataclass(frozen=True)
class Step:
    """One step. `text` is plain text of short sentences."""

    id: str
    title: str
    text: str


def unit_of(piece: Piece, count: int = 1) -> str:
    """What one place in a row is called, singular or plural by `count`."""
    return {(True, True): "stitch", (True, False): "stitches", (False, True): "set", (False, False): "sets"}[
        piece.drop == 1, count == 1]


def cm(mm: float) -> str:
    """Centimetres and inches."""
    return f"{mm / 10:.0f} cm ({mm / 25.4:.0f} in)"


def m(mm: float) -> str:
    """Metres and inches."""
    return f"{mm / 1000:.2f} m ({mm / 25.4:.0f} in)"


def rows_said(rows: Sequence[Row]) -> str:
    """Row numbers in words: "row 4", "rows 2 to 9", "rows 2, 5 and 7"."""
    if len(rows) == 1:
        return f"row {rows[0].name}"
    if any(row.part for row in rows):
        names = [name for run in _runs_of(rows) for name in run]
    else:
        numbers, names = [row.number for row in rows], [row.name for row in rows]
        if len(names) > 2 and numbers == list(range(numbers[0], numbers[-1] + 1)):
            names = [f"{names[0]} to {names[-1]}"]
    return f"rows {', '.join(names[:-1])} and {names[-1]}" if len(names) > 1 else f"rows {names[0]}"


def _runs_of(rows: Sequence[Row]) -> Iterator[list[str]]:
    """Names of rows, three or more that follow each other in one part as one: "6a to 8a"."""
    for _, same in groupby(enumerate(rows), lambda pair: (pair[1].part, pair[1].number - pair[0])):
        names = [row.name for _, row in same]
        yield [f"{names[0]} to {names[-1]}"] if len(names) > 2 else names


def section_name(section: Section) -> str:
    """A part of the work in words: "row 7", "strand 3", "the hanger"."""
    return {"hanger": "the hanger", "lower": "the rows below the base"}.get(
        section.kind, f"{section.kind} {section.number}{section.part}")
