"""Small pieces of the written steps: units, lengths, lists of rows."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import groupby

from msgspec import Struct

from .events import Section
from .language import Noun, _, decimal, listed, ngettext, noun, numbered
from .piece import LEFT, Piece, Row


class Step(Struct, frozen=True):
    """One step. `text` is plain text of short sentences."""

    id: str
    title: str
    text: str


def unit_of(piece: Piece, count: int = 1) -> Noun:
    """What one place in a row is called, singular or plural by `count`."""
    if piece.stitch == "loom":
        return noun("bead", "beads", count)
    return noun("stitch", "stitches", count) if piece.drop == 1 else noun("set", "sets", count)


def bead_or_set(piece: Piece, count: int = 1) -> Noun:
    """What is picked up as one where beads lie along the row, singular or plural by `count`."""
    return noun("bead", "beads", count) if piece.drop == 1 else noun("set", "sets", count)


def cm(mm: float) -> str:
    """Centimetres and inches."""
    return _("{cm} cm ({inches} in)", cm=decimal(mm / 10, 0), inches=decimal(mm / 25.4, 0))


def m(mm: float) -> str:
    """Metres and inches."""
    return _("{metres} m ({inches} in)", metres=decimal(mm / 1000, 2), inches=decimal(mm / 25.4, 0))


def sentence(text: str) -> Noun:
    """The words with a capital first."""
    made = Noun(text[:1].upper() + text[1:])
    made.gender = getattr(text, "gender", 0)
    return made


def at_edge(side: str) -> str:
    """A place at the left or right edge."""
    return _("at the left edge") if side == LEFT else _("at the right edge")


def from_edge(side: str) -> str:
    """Where work begins."""
    return _("from the left edge") if side == LEFT else _("from the right edge")


def to_edge(side: str) -> str:
    """Where a way leads."""
    return _("to the left edge") if side == LEFT else _("to the right edge")


def towards(side: str) -> str:
    """A direction."""
    return _("towards the left") if side == LEFT else _("towards the right")


def on_side(side: str) -> str:
    """A place beside something."""
    return _("on the left") if side == LEFT else _("on the right")


def times_said(count: int) -> str:
    """"once", "twice", "3 times"."""
    return {1: _("once"), 2: _("twice")}.get(count) or ngettext("{count} time", "{count} times", count)


def rows_said(rows: Sequence[Row]) -> Noun:
    """Row numbers in words: "row 4", "rows 2 to 9", "rows 2, 5 and 7"."""
    if any(row.part for row in rows):
        names = [name for run in _runs_of(rows) for name in run]
    else:
        numbers, names = [row.number for row in rows], [row.name for row in rows]
        if len(names) > 2 and numbers == list(range(numbers[0], numbers[-1] + 1)):
            names = [from_to(names[0], names[-1])]
    return numbered("row {numbers}", "rows {numbers}", len(rows), numbers=listed(names))


def _runs_of(rows: Sequence[Row]) -> Iterator[list[str]]:
    """Names of rows, three or more that follow each other in one part as one: "6a to 8a"."""
    for _key, same in groupby(enumerate(rows), lambda pair: (pair[1].part, pair[1].number - pair[0])):
        names = [row.name for _at, row in same]
        yield [from_to(names[0], names[-1])] if len(names) > 2 else names


def from_to(first: object, last: object) -> str:
    """"2 to 9"."""
    return _("{first} to {last}", first=first, last=last)


def section_name(section: Section) -> str:
    """A part of the work in words: "row 7", "row 7b", "strand 3", "hanger 2"."""
    if section.kind == "lower":
        return _("the rows below the base")
    number = f"{section.number}{section.part}"
    return {"row": _("row {number}", number=number), "strand": _("strand {number}", number=number), "hanger": _("hanger {number}", number=number)}[section.kind]


def strands_said(numbers: Sequence[int]) -> Noun:
    """Numbers of strands: "strand 4", "strands 2 to 9", "strands 1, 3 and so on to 9"."""
    return numbered("strand {numbers}", "strands {numbers}", len(numbers), numbers=_numbers(numbers))


def places_said(numbers: Sequence[int]) -> Noun:
    """Numbers of places: "place 4", "places 2, 5 to 7 and 9"."""
    return numbered("place {numbers}", "places {numbers}", len(numbers), numbers=_numbers(numbers))


def _numbers(numbers: Sequence[int]) -> str:
    if len(numbers) > 3 and {after - number for number, after in zip(numbers, numbers[1:])} == {2}:
        return _("{first}, {second} and so on to {last}", first=numbers[0], second=numbers[1], last=numbers[-1])
    runs: list[list[int]] = []
    for number in numbers:
        if runs and number == runs[-1][-1] + 1:
            runs[-1].append(number)
        else:
            runs.append([number])
    parts = []
    for run in runs:
        parts += [from_to(run[0], run[-1])] if len(run) > 2 else [str(number) for number in run]
    return listed(parts)
