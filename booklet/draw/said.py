"""Words that several text alternatives share."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from ..craft.language import ngettext
from ..craft.piece import Piece
from ..craft.saying import from_to


def beads_counted(number: int) -> str:
    """ "1 bead", "18 beads"."""
    return ngettext("{count} bead", "{count} beads", number)


def stitches_counted(number: int, drop: int) -> str:
    """ "1 stitch", "9 stitches", "5 sets of 2 beads"."""
    if drop == 1:
        return ngettext("{count} stitch", "{count} stitches", number)
    return ngettext("{count} set of {drop} beads", "{count} sets of {drop} beads", number, drop=drop)


def span(numbers: Iterable[int], counted: Callable[[int], str]) -> str:
    """ "18 beads" or "12 to 18 beads"; `counted` says the last number with what it counts."""
    found = sorted(set(numbers))
    return counted(found[0]) if len(found) == 1 else from_to(found[0], counted(found[-1]))


def beads_named(piece: Piece, keys: Iterable[str]) -> str:
    """ "B storm blue, W chalk white": the beads used, in the order of the legend."""
    used = set(keys)
    return ", ".join(f"{key} {bead.name}" for key, bead in piece.legend.items() if key in used)
