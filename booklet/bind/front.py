"""The front of a book or of a single: the finished pieces hang on wires over the whole width, above a dark band with the title."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from ..craft.piece import Piece
from ..craft.tally import tally
from ..draw.colour import BLACK, WHITE, contrast, mix
from .accent import accent
from .context import LARGEST_VIEW
from .edition import Edition
from .pictures import Picture
from .row_gap import lines
from .sections import life_sizes, views

MOST_ON_WIRE, MOST = 4, 12
BAND, MOST_BAND = 0.3, 0.6   # of the height: the least and the most
PADDING, SIDE = 0.04, 0.09   # of the height and of the width, round the words of the band
TITLE, SUBTITLE, SMALL = 1.05, 1.1, 1.4   # leading of the title; size of the subtitle, rem; leading of small words
SERIF = 0.94          # of a line is counted on, because widths are those of our sans
GAPS = 7.5            # mm between title, subtitle and small words
BLURB, ENTRY, ENTRY_ALONE = 7.0, 2.4, 1.6   # rem that the words at the back take over the titles, and each two titles, or each that has a line of its own
TOP, FOOT = 0.045, 0.02   # of the height: above the first wire, and under the pieces of each
BETWEEN = 3.0         # mm, at the least, between two pieces and at the sides
TINT = 0.84           # how far the ground is from the accent towards white
DEEP = 9.0            # contrast of the band with its white words; WCAG 2.2, 1.4.6 asks for 7


@dataclass(frozen=True)
class Hung:
    """A piece, and where its upper left corner is on the page, mm."""

    picture: Picture
    left: float
    top: float


@dataclass(frozen=True)
class Front:
    width: float
    height: float
    bleed: float
    band: float                  # height, mm
    ground: str
    deep: str
    padding: float               # mm, over the words of the band
    titles: int                  # that the back of the book has room for
    wires: tuple[float, ...]     # mm from the head of the page
    pieces: tuple[Hung, ...]


async def front_of(pieces: Sequence[Piece], on: Edition, title: str, subtitle: str, small: Sequence[str]) -> Front:
    """The front of an edition, with these words and the colours of the first piece. All pieces are drawn at one scale."""
    pieces = pieces[:MOST]
    colour, band = accent(tally(pieces[0])), _band(on, title, subtitle, small)
    each = _on_a_wire(len(pieces))
    first, deep = on.height * TOP, (on.height - band - on.height * TOP) / -(-len(pieces) // each)
    hung = await views(pieces, _scale(_rows(await life_sizes(pieces), each), on.width, deep - on.height * FOOT))
    rows = _rows(hung, each)
    wires = tuple(round(first + deep * number, 2) for number in range(len(rows)))
    placed = [one for top, row in zip(wires, rows) for one in _spread(row, on.width, top)]
    return Front(on.width, on.height, on.bleed, band, mix(colour, WHITE, TINT), deepened(colour), round(on.height * PADDING, 2), _titles(on, band), wires, tuple(placed))


def _band(on: Edition, title: str, subtitle: str, small: Sequence[str]) -> float:
    """Height of the band, mm: as usual, or as much as its words need."""
    rem, size = on.type * 25.4 / 72, 1.9 if on.screen else 2.2 if on.large else 2.9   # as the style sheets say
    measure = on.width * (1 - 2 * SIDE) / rem * SERIF
    words = lines(title, measure / size, measure / size) * size * TITLE
    words += lines(subtitle, measure / SUBTITLE, measure / SUBTITLE) * SUBTITLE * on.leading if subtitle else 0.0
    words += sum(lines(text, measure, measure) for text in small) * max(SMALL, on.leading)
    return round(min(on.height * MOST_BAND, max(on.height * BAND, words * rem + GAPS + 2 * on.height * PADDING)), 2)


def _titles(on: Edition, band: float) -> int:
    """How many titles the back of a book has room for, in two columns; in one on a phone."""
    rem = on.type * 25.4 / 72
    return max(2, (1 if on.screen else 2) * int((on.height - band - on.height * 0.06 - BLURB * rem - 14.0) / ((ENTRY_ALONE if on.screen else ENTRY) * rem)))


def deepened(colour: str) -> str:
    """The colour, darkened until white words on it are easy to read."""
    return next(shade for share in range(101) if contrast(shade := mix(colour, BLACK, share / 100), WHITE) >= DEEP)


def _on_a_wire(count: int) -> int:
    """How many of so many pieces hang on a wire: all of them, or half."""
    return -(-count // (1 if count <= MOST_ON_WIRE else 2))


def _rows(things: Sequence, each: int) -> list[Sequence]:
    return [things[at:at + each] for at in range(0, len(things), each)]


def _scale(rows: Iterable[Sequence[tuple[float, float]]], width: float, depth: float) -> float:
    """The largest scale at which every row of pieces of these sizes fits the width, and every piece the depth."""
    most = LARGEST_VIEW
    for sizes in rows:
        room = width - BETWEEN * (len(sizes) + 1)
        most = min(most, room / sum(across for across, _ in sizes), depth / max(down for _, down in sizes))
    return int(most * 100) / 100


def _spread(pictures: Sequence[Picture], width: float, top: float) -> list[Hung]:
    """The pictures of one wire with equal gaps between them and at the sides."""
    gap = (width - sum(one.width for one in pictures)) / (len(pictures) + 1)
    lefts = [gap * (number + 1) + sum(one.width for one in pictures[:number]) for number in range(len(pictures))]
    return [Hung(one, round(left, 2), top) for one, left in zip(pictures, lefts)]
