"""Where a fringe hangs: under the base row, under the lowest row, along the lower edge, or on thread bridges."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from .kept import kept
from .piece import Piece, Row
from .stitches import stitch_named

HANGS = BASE, LOWEST, EDGE, BRIDGES = "base", "lowest", "edge", "bridges"


class HangingPlace(Struct, frozen=True):
    """One place for a strand: under a stitch, or on the thread bridge to the right of it."""

    row: Row
    index: int       # of the stitch in its row or part of a row, from the left
    bridge: bool = False

    @property
    def at(self) -> int:
        """Position in half stitches."""
        return self.row.stitches[self.index].at + self.bridge


def hangs(stitch: str) -> tuple[str, ...]:
    """Where the fringe of a body in this stitch can hang: beads that lie along the row have no stitch or bridge to go up through."""
    return (BASE, LOWEST) if stitch_named(stitch).LYING else HANGS


@kept
def places(piece: Piece) -> tuple[HangingPlace, ...]:
    """The places of a piece's fringe, from the left as it hangs."""
    return places_of(piece.rows, piece.hang)


def strands_fit(piece: Piece) -> bool:
    """Whether the fringe can hang there in this stitch, every strand has its place, and a loop both of its places."""
    if piece.strands and piece.hang not in hangs(piece.stitch):
        return False
    count = len(places(piece)) if piece.strands else 0
    return all(1 <= number <= count for strand in piece.strands for number in (strand.number, strand.number + strand.to))


def places_of(rows: Sequence[Row], hang: str) -> tuple[HangingPlace, ...]:
    """The places that these rows offer, from the left as the piece hangs.

    Bridges are those under the lowest row: a row of n stitches has n - 1 of them (published practice), and so has each part of one.
    """
    rows = [row for row in rows if row.stitches]
    if not rows:
        return ()
    if hang == EDGE:
        return _edge(rows)
    level = 0 if hang == BASE else min(row.level for row in rows)
    parts = sorted((row for row in rows if row.level == level), key=lambda row: row.first)
    if hang == BRIDGES:
        return tuple(HangingPlace(row, index, True) for row in parts for index, (left, right) in enumerate(zip(row.stitches, row.stitches[1:]))
                     if right.at - left.at == 2)
    return tuple(HangingPlace(row, index) for row in parts for index in range(len(row.stitches)))


def _edge(rows: Sequence[Row]) -> tuple[HangingPlace, ...]:
    """Every stitch of which at least one half is seen from straight below."""
    covered: set[int] = set()   # half stitches, each by its left end
    found = []
    for row in sorted(rows, key=lambda row: row.level):
        for index, stitch in enumerate(row.stitches):
            if not {stitch.at - 1, stitch.at} <= covered:
                found.append(HangingPlace(row, index))
        covered |= {half for stitch in row.stitches for half in (stitch.at - 1, stitch.at)}
    return tuple(sorted(found, key=lambda place: place.at))
