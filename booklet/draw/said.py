"""Words that several text alternatives share."""

from __future__ import annotations

from collections.abc import Iterable

from ..craft.piece import Piece


def counted(number: int, one: str, many: str = "") -> str:
    """ "1 row", "3 rows"; `many` where the plural is not one + s."""
    return f"{number} {one if number == 1 else many or one + 's'}"


def span(numbers: Iterable[int], one: str, many: str = "") -> str:
    """ "18 beads" or "12 to 18 beads"."""
    found = sorted(set(numbers))
    return counted(found[0], one, many) if len(found) == 1 else f"{found[0]} to {counted(found[-1], one, many)}"


def beads_named(piece: Piece, keys: Iterable[str]) -> str:
    """ "B storm blue, W chalk white": the beads used, in the order of the legend."""
    used = set(keys)
    return ", ".join(f"{key} {bead.name}" for key, bead in piece.legend.items() if key in used)
