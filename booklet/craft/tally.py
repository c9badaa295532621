"""Counting: beads of every colour in a piece, in all, to buy, in grams and packs."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from math import ceil, floor, log10

from msgspec import Struct

from .beads import Bead
from .kept import kept
from .piece import Piece

SPARE_PERCENT = 10  # common practice, no source
PACK_GRAMS = 5.0    # a small bag or tube; common practice, no source


class BeadTally(Struct, frozen=True):
    """The count of one bead of the legend."""

    bead: Bead
    piece: int      # in one piece
    total: int      # in all pieces that the pattern makes
    to_buy: int     # with spare, rounded up
    grams: float    # of `to_buy`, unrounded
    packs: int      # whole packs that hold those grams

    @property
    def key(self) -> str:
        return self.bead.key


class Tally(Struct, frozen=True):
    """The counts of a pattern, one line per bead of the legend, in the order of the legend."""

    pieces: int
    body: int       # beads per piece, by part
    fringe: int
    hanger: int
    lines: tuple[BeadTally, ...]

    @property
    def beads(self) -> int:
        """Beads in one piece."""
        return self.body + self.fringe + self.hanger


@kept
def tally(piece: Piece, pieces: int = 1, spare_percent: float = SPARE_PERCENT, least_spare: int = 0,
          pack_grams: Mapping[str, float] | None = None) -> Tally:
    """Count a piece. `pack_grams` gives the grams of a pack by key; the rest come in packs of PACK_GRAMS."""
    body = Counter(key for row in piece.rows for stitch in row.stitches for key in stitch.beads)
    fringe = Counter(key for strand in piece.strands for key in strand.all)
    hanger = Counter(key for hanger in piece.hangers for key in hanger.beads)
    counts = body + fringe + hanger
    lines = []
    for key, bead in piece.legend.items():
        total = counts[key] * pieces
        to_buy = with_spare(total, spare_percent, least_spare)
        grams = to_buy * bead.kind.mass / 1000
        lines.append(BeadTally(bead, counts[key], total, to_buy, grams,
                               ceil(round(grams / (pack_grams or {}).get(key, PACK_GRAMS), 9))))
    return Tally(pieces, body.total(), fringe.total(), hanger.total(), tuple(lines))


def hand_counts(piece: Piece) -> dict[str, int]:
    """What an author can count by hand: stitches of the base row, rows, strands, and beads of one piece."""
    counts = tally(piece)
    return {"base": len(piece.base.stitches), "rows": len(piece.drawn), "strands": len(piece.strands), "beads": counts.beads}


def with_spare(total: int, percent: float, least: int = 0) -> int:
    """A count with its spare, rounded up to whole beads; exact for up to six decimals, so 10 % of 120 is 12 and not 13."""
    if total == 0:
        return 0
    spare = -(-total * round(percent * 1_000_000) // 100_000_000)
    return total + max(spare, least)


def two_figures(value: float) -> float:
    """Rounded to two significant figures, as grams are printed: 0.647 to 0.65, 12.6 to 13."""
    if value == 0:
        return 0.0
    return round(value, 1 - floor(log10(abs(value))))
