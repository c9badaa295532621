"""The written instructions of rows and strands, as they stand in the book.

Beads are named in the order in which the needle picks them up. Every line can be read back:
`craft.replay` rebuilds the chart from the lines alone, and every build does so.
"""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from .events import row_section
from .language import _, listed, ngettext
from .needle import path
from .piece import RIGHT, Piece, Row
from .runs import said
from .stitches import stitch_of
from .strand import LOOP, TWIST, Charm, Strand, Twig


class RowWords(Struct, frozen=True):
    """The words of one row."""

    number: int      # of the first row, where several are told in one line
    name: str        # "Row 3", "Rows 1 and 2"
    direction: str   # "right" or "left", as the row runs on the chart
    level: int       # as in Row
    stitches: int
    count: str       # "9 stitches", "5 sets", "6 stitches below"
    text: str        # "start in 2W; then 3B, 3W; end in"
    part: str = ""   # as in Row

    @property
    def numbered(self) -> str:
        """Number and part: "3", "5a"."""
        return f"{self.number}{self.part}"

    @property
    def arrow(self) -> str:
        return "→" if self.direction == RIGHT else "←"

    @property
    def line(self) -> str:
        """The whole line."""
        return f"{self.name} {self.arrow} {self.count}: {self.text}"


class StrandWords(Struct, frozen=True):
    """The words of one strand."""

    number: int
    beads: int   # end beads counted
    count: str   # "18 beads", "18 beads, loop from place 2 to 3", "18 beads, twisted pair"
    text: str    # "12W, 2B, 1W; end 3B", "8W, twig [3B; end 1R], 6W; end 3B", "9W; end 1D; up 9B"

    @property
    def name(self) -> str:
        return _("Strand {number}", number=self.number)

    @property
    def line(self) -> str:
        """The whole line."""
        return f"{self.name}, {self.count}: {self.text}"


def row_words(piece: Piece) -> tuple[RowWords, ...]:
    """Words for every row, in working order. Raises ValueError for a piece that cannot be worked."""
    stitch = stitch_of(piece)
    words = []
    for rows in stitch.told_together(piece):
        row, sets = rows[0], sets_of(piece, rows)
        name = ngettext("Row {numbers}", "Rows {numbers}", len(rows), numbers=listed([each.name for each in rows]))
        words.append(RowWords(row.number, name, row.direction, row.level, len(sets), stitch.row_count(len(sets), piece.drop, row.level),
                              stitch.row_text(piece, row, sets), row.part))
    return tuple(words)


def sets_of(piece: Piece, rows: Sequence[Row]) -> list[tuple[str, ...]]:
    """The sets of rows that are told together, in the order of picking up."""
    keys = [piece.sets[place.line][place.index][place.level] for place in path(piece).picked_up(*map(row_section, rows))]
    return [tuple(keys[i:i + piece.drop]) for i in range(0, len(keys), piece.drop)]


def strand_words(piece: Piece) -> tuple[StrandWords, ...]:
    """Words for every strand, in working order."""
    return tuple(_strand(strand, piece.along) for strand in piece.worked_strands)


def _strand(strand: Strand, hand: str) -> StrandWords:
    total = len(strand.all)
    count = ngettext("{count} bead", "{count} beads", total)
    if strand.kind == LOOP:
        down, up = strand.span(hand)
        items = _items(strand)
        return StrandWords(strand.number, total, _("{count}, loop from place {down} to {up}", count=count, down=down, up=up), said(items if down == strand.number else items[::-1]))
    if strand.kind == TWIST:
        back = said([(key,) for key in reversed(strand.second)])
        return StrandWords(strand.number, total, _("{count}, twisted pair", count=count), _("{first}; up {second}", first=_line(strand), second=back))
    return StrandWords(strand.number, total, count, _line(strand))


def _line(line: Strand | Twig) -> str:
    """Beads from the top down, then the end beads."""
    end = _mixed(line.end, line.turned)
    parts = [said(_items(line))] if line.beads or line.hung else []
    return "; ".join(parts + ([_("end {beads}", beads=said(end))] if end else []))


def _items(line: Strand | Twig) -> list[tuple[str, ...] | str]:
    return _mixed(line.beads, line.hung)


def _mixed(beads: tuple[str, ...], hung: tuple[Twig | Charm, ...]) -> list[tuple[str, ...] | str]:
    """Beads, and what hangs between them, in the order of picking up."""
    items: list[tuple[str, ...] | str] = []
    done = 0
    for thing in hung:
        items += [(key,) for key in beads[done:thing.at]]
        items.append(_("twig [{beads}]", beads=_line(thing)) if isinstance(thing, Twig) else _("the {charm}", charm=thing.name))
        done = thing.at
    return items + [(key,) for key in beads[done:]]
