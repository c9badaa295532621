"""The page of an edition: trim, margins, and the room that pictures have on it. All in mm."""

from __future__ import annotations

from dataclasses import dataclass

from ..draw.fit import LEAST_BEAD
from .edition import SMALL_TYPE, Edition

WEB_WIDTH = 105.0   # mm at 96 pixels an inch; wider charts scroll
OUTSIDE = 11.0      # the least outside margin on paper; print guides ask for 6.4 mm or more
ON_SCREEN = 5.0
PHONE_SHOWS = 0.75  # of its size a page of a screen edition is shown on a phone about 68 mm wide (from memory)
LETTER_IN_BEAD = 0.62 * 1.3 / 1.6    # height of a letter in sizes of the bead's width, in the usual cylinder bead
RULED = 8.0         # mm from line to line on a page for notes; common practice, no source
LARGE_STEPS = 0.8  # of what large type would ask for, so that lines beside a picture have some thirty letters, and text stands under it on a phone
CAPITAL = 0.66 * 25.4 / 72           # mm, height of our capitals for each point of type
FACTS = 25.0        # rem that title, summary and facts take of the page with the finished view
WORDS, PART_WORDS = 6.4, 6.0   # lines that the heading and the notes of a chart take, with their margins; with the map of a part

# Inside margin by number of pages, mm: the margin tables of print on demand give 9.6 for 24 to 150 pages, and
# 12.7, 15.9, 19.1 and 22.3 for up to 300, 500, 700 and 828 (the steps after the first from memory).
INSIDE = ((150, 9.6), (300, 12.7), (500, 15.9), (700, 19.1), (1_000_000, 22.3))


@dataclass(frozen=True)
class Sheet:
    """What the page style sheet needs."""

    width: float
    height: float
    bleed: float     # mm beyond the trimmed page, crop marks included
    top: float
    bottom: float
    outside: float
    inside: float
    type: float      # points
    leading: float   # sizes of the type
    rule: float = RULED   # mm from line to line on a page for notes

    @property
    def measure(self) -> float:
        """Width of a line of text."""
        return self.width - self.inside - self.outside

    @property
    def depth(self) -> float:
        """Height of the text."""
        return self.height - self.top - self.bottom

    @property
    def lines(self) -> int:
        """How many lines for notes a page has under their heading."""
        return int(self.depth / self.rule) - 1

    @property
    def underscores(self) -> int:
        """How many underscores of our sans, each half as wide as its size, make a line for notes."""
        return int(self.measure / (self.type * 25.4 / 72 / 2))

    @property
    def line(self) -> float:
        """From line to line, mm."""
        return self.type * self.leading * 25.4 / 72


@dataclass(frozen=True)
class Box:
    width: float
    height: float


@dataclass(frozen=True)
class Room:
    """Boxes into which pictures are fitted, and the narrowest bead of a chart."""

    view: Box       # the finished piece or pair, beside the facts
    chart: Box
    small: Box      # the finished piece in contents and galleries
    colourway: Box
    least: float = LEAST_BEAD
    most: float = 6.0     # and the widest
    tiled: bool = False   # whether a chart that does not fit may go on over several pages
    key_row: float = 0.0  # mm that a row of the key takes
    in_key: int = 3       # beads in a row of the key
    steps: float = 1.0    # how much larger step pictures are than in small type

    def beside_key(self, beads: int) -> Box:
        """The room of a chart above a key of so many beads."""
        return Box(self.chart.width, self.chart.height - self.key_row * -(-beads // self.in_key))


def sheet(on: Edition) -> Sheet:
    """Margins that grow with the page; the gutter is added to the inside margin."""
    if on.screen:
        return Sheet(on.width, on.height, 0.0, ON_SCREEN, ON_SCREEN + 5, ON_SCREEN, ON_SCREEN, on.type, on.leading)
    outside = outside_margin(on)
    return Sheet(on.width, on.height, on.spare, outside, outside + 5, outside, outside + on.gutter, on.type, on.leading)


def outside_margin(on: Edition) -> float:
    return max(OUTSIDE, on.width * 0.09)


def print_room(edition: Edition) -> Room:
    """Room on paper: a chart leaves space for its heading, the lines under it and the key."""
    on, least, narrow = sheet(edition), least_bead(edition), edition.large or edition.screen
    view = on.depth * 0.6 if narrow else min(on.depth * 0.5, on.depth - FACTS * on.type * 25.4 / 72)
    return Room(Box(on.measure, view), Box(on.measure, on.depth - WORDS * on.line), Box(on.measure / (2 if narrow else 3) - 6, 30 if edition.large else 19),
                Box(on.measure * 0.3, 55), least, max(6.0, least), tiled=True,
                key_row=on.line, in_key=2 if narrow else 3, steps=round(edition.type / SMALL_TYPE * (LARGE_STEPS if edition.large or edition.screen else 1.0), 3))


def least_bead(edition: Edition) -> float:
    """mm from bead to bead, below which no chart of the edition is drawn.

    In large print the letter of a bead is as tall as the capitals of the text.
    """
    if edition.large:
        return round(edition.type * CAPITAL / LETTER_IN_BEAD / 0.05) * 0.05
    return LEAST_BEAD / PHONE_SHOWS if edition.screen else LEAST_BEAD


def gutter_for(pages: int, on: Edition) -> float:
    """What the inside margin of a book of so many pages gains: what the edition has already, or more where that is not enough."""
    needed = next(inside for most, inside in INSIDE if pages <= most)
    return max(on.gutter, needed - outside_margin(on))


def web_room() -> Room:
    """Room on a screen."""
    return Room(Box(WEB_WIDTH, 110), Box(WEB_WIDTH, 220), Box(46, 74), Box(30, 60))
