"""Small pieces of the written steps: units, lengths, lists of rows."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import groupby

from msgspec import Struct

from .events import Section
from .piece import Piece, Row


class Step(Struct, frozen=True):
    """One step. `text` is plain text of short sentences."""

    id: str
    title: str
    text: str


def unit_of(piece: Piece, count: int = 1) -> str:
    """What one place in a row is called, singular or plural by `count`."""
    if piece.stitch == "loom":
        return "bead" if count == 1 else "beads"
    return {(True, True): "stitch", (True, False): "stitches", (False, True): "set", (False, False): "sets"}[
        piece.drop == 1, count == 1]


def cm(mm: float) -> str:
    """Centimetres and inches."""
    return f"{mm / 10:.0f} cm ({mm / 25.4:.0f} in)"


def m(mm: float) -> str:
    """Metres and inches."""
    return f"{mm / 1000:.2f} m ({mm / 25.4:.0f} in)"


def sentence(text: str) -> str:
    """The text with a capital first."""
    return text[:1].upper() + text[1:]


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
    """A part of the work in words: "row 7", "row 7b", "strand 3", "hanger 2"."""
    return "the rows below the base" if section.kind == "lower" else f"{section.kind} {section.number}{section.part}"


def listed(things: Sequence[str]) -> str:
    """"a", "a and b", "a, b and c"."""
    return things[0] if len(things) == 1 else f"{', '.join(things[:-1])} and {things[-1]}"


def numbers_said(what: str, numbers: Sequence[int]) -> str:
    """Numbers of one sort of thing: "strand 4", "strands 2 to 9", "Places 2, 5 to 7 and 9", "strands 1, 3 and so on to 9"."""
    if len(numbers) > 3 and {after - number for number, after in zip(numbers, numbers[1:])} == {2}:
        return f"{what}s {numbers[0]}, {numbers[1]} and so on to {numbers[-1]}"
    runs: list[list[int]] = []
    for number in numbers:
        if runs and number == runs[-1][-1] + 1:
            runs[-1].append(number)
        else:
            runs.append([number])
    parts = []
    for run in runs:
        parts += [f"{run[0]} to {run[-1]}"] if len(run) > 2 else [str(number) for number in run]
    return f"{what}{'' if len(numbers) == 1 else 's'} {listed(parts)}"
