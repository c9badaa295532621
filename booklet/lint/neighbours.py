"""Which beads of a piece lie side by side: in a row, one upon the other, along a strand, and from strand to strand."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections import Counter, defaultdict

from ..craft.layout import layout
from ..craft.piece import Piece

TOUCH = 1.1   # of the distance at which two beads touch


def neighbours(piece: Piece) -> Counter[frozenset[str]]:
    """How often two keys lie side by side in the finished piece, by the pair of keys; equal keys are left out."""
    placed = layout(piece)
    standing = [(spot.x, spot.y, spot.key) for place, spot in placed.spots.items() if not (placed.lying and place.part == "row")]
    # Beads that lie along their row are side by side as beads that stand are, turned a quarter.
    lying = [(spot.y, spot.x, spot.key) for place, spot in placed.spots.items() if placed.lying and place.part == "row"]
    return _touching(piece, standing, placed.pitch) + _touching(piece, lying, placed.pitch)


def _touching(piece: Piece, beads: list[tuple[float, float, str]], pitch: float) -> Counter[frozenset[str]]:
    """Pairs among beads whose holes are upright, given as (x, y, key)."""
    columns: defaultdict[int, list[tuple[float, str]]] = defaultdict(list)   # in quarters of the distance from stitch to stitch
    for x, y, key in beads:
        columns[round(x / pitch * 4)].append((y, key))
    for column in columns.values():
        column.sort()
    found: Counter[frozenset[str]] = Counter()
    for place, column in columns.items():
        for y, key in column:
            reach = {0: None, 1: 1, 2: 1, 3: 1, 4: 0.5}   # half a stitch aside they touch from row to row; a whole stitch aside, in the row
            for aside, share in reach.items():
                found.update(frozenset((key, other)) for other in _near(piece, columns.get(place + aside, []), y, key, share, upward=aside == 0)
                             if other != key)
    return found


def _near(piece: Piece, column: list[tuple[float, str]], y: float, key: str, share: float | None, upward: bool) -> list[str]:
    """Keys in a column that touch a bead at height y; in its own column only those above it."""
    length = piece.legend[key].kind.length
    longest = max(bead.kind.length for bead in piece.legend.values())
    reach = (length + longest) / 2 * TOUCH
    first = bisect_right(column, (y, "\N{REPLACEMENT CHARACTER}")) if upward else bisect_left(column, (y - reach, ""))
    near = []
    for other_y, other in column[first:bisect_right(column, (y + reach, "\N{REPLACEMENT CHARACTER}"))]:
        touch = (length + piece.legend[other].kind.length) / 2 * TOUCH * (1 if share is None else share)
        if abs(other_y - y) <= touch:
            near.append(other)
    return near
