"""Small pieces of the written steps: units, lengths, lists of rows."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

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
    numbers = [row.number for row in rows]
    if len(numbers) == 1:
        return f"row {numbers[0]}"
    if len(numbers) > 2 and numbers == list(range(numbers[0], numbers[-1] + 1)):
        return f"rows {numbers[0]} to {numbers[-1]}"
    return f"rows {', '.join(map(str, numbers[:-1]))} and {numbers[-1]}"


def section_name(section: Section) -> str:
    """A part of the work in words: "row 7", "strand 3", "the hanger"."""
    return {"hanger": "the hanger", "lower": "the rows below the base"}.get(
        section.kind, f"{section.kind} {section.number}")
