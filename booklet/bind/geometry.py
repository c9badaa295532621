"""The page of a book: trim, margins, type size, and the room that pictures have on it. All in mm, type in points."""

from __future__ import annotations

from dataclasses import dataclass

from ..source.book import Page

WEB_WIDTH = 105.0   # mm at 96 pixels an inch; wider charts scroll


@dataclass(frozen=True)
class Sheet:
    """What the page style sheet needs."""

    width: float
    height: float
    bleed: float
    top: float
    bottom: float
    outside: float
    inside: float
    type: float   # points

    @property
    def measure(self) -> float:
        """Width of a line of text."""
        return self.width - self.inside - self.outside

    @property
    def depth(self) -> float:
        """Height of the text."""
        return self.height - self.top - self.bottom


@dataclass(frozen=True)
class Box:
    width: float
    height: float


@dataclass(frozen=True)
class Room:
    """Boxes into which pictures are fitted."""

    view: Box       # the finished piece or pair, beside the facts
    chart: Box
    small: Box      # the finished piece in contents and galleries
    hung: Box       # all pieces on the cover
    colourway: Box


def sheet(page: Page) -> Sheet:
    """Margins that grow with the page; the gutter is added to the inside margin."""
    outside = max(11.0, page.width * 0.09)
    return Sheet(page.width, page.height, page.bleed, outside, outside + 5, outside, outside + page.gutter, 9.6 if page.width < 165 else 11.0)


def print_room(on: Sheet) -> Room:
    """Room on paper: a chart leaves space for its heading, the lines under it and the key."""
    return Room(Box(on.measure, on.depth * 0.5), Box(on.measure, on.depth - 42), Box(15, 13), Box(on.measure, on.depth * 0.6), Box(on.measure * 0.3, 55))


def web_room() -> Room:
    """Room on a screen."""
    return Room(Box(WEB_WIDTH, 110), Box(WEB_WIDTH, 220), Box(32, 56), Box(WEB_WIDTH, 60), Box(30, 60))
