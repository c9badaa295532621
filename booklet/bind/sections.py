"""A pattern's own pages and its small pictures, drawn and written by a worker and kept like every other result.

An order holds no more of a pattern than its pages show, and nothing of where that stands in a file: so its key changes when its result
may, and hardly ever else. What comes back is plain JSON.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from functools import partial
from typing import NamedTuple

from markupsafe import Markup
from msgspec import structs

from ..craft.language import _, speaking, spoken
from ..craft.piece import Piece
from ..draw.finished import finished_size, fitting
from ..source.book import Book
from ..source.chart import DrawnChart
from ..source.pattern import Pattern
from ..source.schema import Defaults
from ..source.workspace import Workspace
from .artist import Noted, Noting, Paper
from .catalogue import language
from .context import beads_that_fit, finished, mark, shown
from .drawings import beside
from .edition import Edition
from .geometry import Box, Room, print_room, web_room
from .grey import greyed
from .html import paper_setter
from .pdf import workshop
from .pictures import Picture, picture_of, said_of
from .press.orders import Held
from .press.parts import CUT, Known, Part, known, known_of
from .press.workshop import Later, Workshop
from .prose import prose
from .replayed import refuse, wrong_words
from .templates import OwnTexts, own_texts, ours_digest


_PARTS = b"\0"   # between the parts of a result, none of which has one


@dataclass(frozen=True)
class Stationery:
    """What the sections of all patterns have in common."""

    room: Room
    edition: Edition          # without what only a printer is told
    book: Book                # its texts
    own: OwnTexts = ()        # templates of the workspace itself
    ours: str = ""            # digest of those that come with booklet
    language: str = "en"      # tag of what is spoken when it is ordered


@dataclass(frozen=True)
class PicturesOrder:
    """The pictures of a pattern's section, in the order in which it shows them, and how wide the beads of its charts can be."""

    pattern: Pattern   # as `pictured` leaves it
    room: Room
    language: str      # of their texts

    def fill(self) -> bytes:
        with speaking(language(self.language)):
            fits, drawn = beads_that_fit(self.pattern.piece, self.room), Noting(Paper(with_small=False, steps=self.room.steps))
            shown(self.pattern, self.room, 1.0, drawn, fits)
            return json_of({"fits": fits, "pictures": drawn.noted})


@dataclass(frozen=True)
class SectionOrder:
    """The section of a pattern: its HTML, the picture of its cover, and how wide the beads of its charts can be."""

    pattern: Pattern
    common: Stationery
    pictures: bytes | Held   # what its pictures order gives

    def fill(self) -> bytes:
        with speaking(language(self.common.language)):
            return self._made(self.pattern, self.common)

    def _made(self, pattern: Pattern, common: Stationery) -> bytes:
        drawn = json.loads(self.pictures)
        fits = drawn["fits"]
        view = shown(pattern, common.room, 1.0, Noted(drawn["pictures"]), fits)
        setter = paper_setter(common.own, common.edition, book=common.book, licence=licence(common.book))
        html = setter.fill("parts/pattern.html.jinja", p=view)
        parts = [part.strip() for part in str(greyed(html) if common.edition.grey else html).split(CUT)]
        said = {"accent": view.accent, "wrong": wrong_words(pattern.piece, pattern.second, html), "fits": fits, "parts": [known(part) for part in parts]}
        return _PARTS.join((json_of(said), json_of(said_of(view.view)), *(part.encode() for part in parts)))


@dataclass(frozen=True)
class MeasureOrder:
    """Width and height in mm of the finished view in life size."""

    piece: Piece

    def fill(self) -> bytes:
        return json_of(finished_size(self.piece, 1.0))


@dataclass(frozen=True)
class ViewOrder:
    """The finished view at a scale."""

    piece: Piece
    scale: float
    language: str   # of its text

    def fill(self) -> bytes:
        with speaking(language(self.language)):
            return json_of(said_of(finished(self.piece, self.scale)))


@dataclass(frozen=True)
class SmallViewOrder:
    """The finished view at a scale for contents: what stands in the page, and the drawing beside it."""

    piece: Piece
    scale: float
    language: str   # of its text
    grey: bool      # without colour

    def fill(self) -> bytes:
        with speaking(language(self.language)):
            svg = finished(self.piece, self.scale).svg
        svg, name, drawing = beside(greyed(svg) if self.grey else svg)
        return _PARTS.join((svg.encode(), name.encode(), drawing))


class SmallView(NamedTuple):
    """A picture that a page only names: its small <svg>, the address of its drawing, and the drawing."""

    svg: Markup
    name: str
    drawing: bytes


@dataclass(frozen=True)
class Section:
    """A pattern as a book has it: its pages, and what contents and covers say of it."""

    slug: str
    title: str
    version: str
    summary: str
    level: str
    accent: str
    load: Callable[[], Sequence[bytes]]   # its view and its parts as its order has made them, which is too much to be held for every pattern of a large book
    known: Sequence[Known] = ()           # its parts
    fits: Mapping[str, float] = field(default_factory=dict)   # mm from bead to bead in each chart, where it may have all of the room; 0 where it does not fit
    small: SmallView | None = None   # one piece, at one scale in the whole book

    @property
    def parts(self) -> list[Part]:
        """Its pages in parts, which are loaded when they are asked for."""
        return [Part(partial(_part, self.load, at), one) for at, one in enumerate(self.known, 1)]

    @property
    def html(self) -> Markup:
        """Its pages."""
        return Markup("".join(part.decode() for part in self.load()[1:]))

    @property
    def view(self) -> Picture:
        """One piece, or both of a pair."""
        return picture_of(json.loads(self.load()[0]))

    def with_small(self, view: SmallView) -> Section:
        return replace(self, small=view)

    @property
    def mark(self) -> str:
        """What the foot of its pages says."""
        return mark(self.title, self.version)


async def sections(workspace: Workspace, patterns: Sequence[Pattern], on: Edition) -> list[Section]:
    """The sections of patterns in an edition. Raises FindingsError where words do not rebuild their chart."""
    common, shop = stationery(workspace, on), workshop()
    drawn = [Later(partial(PicturesOrder, pictured(pattern), common.room, common.language), labour_of(pattern.piece)) for pattern in patterns]
    held = [Held((key,), partial(shop.take, key, one)) for one, (key, _size) in zip(drawn, await shop.each(drawn, len))]
    later = [Later(partial(SectionOrder, printed(pattern), common, pictures), labour_of(pattern.piece)) for pattern, pictures in zip(patterns, held)]
    made = await shop.each(later, _without_pages)
    for pattern, (_key, said) in zip(patterns, made):
        refuse(pattern, said["wrong"])
    return [Section(pattern.slug, pattern.title, pattern.version, pattern.summary, _(pattern.level), said["accent"], partial(_taken, shop, key, order),
                    [known_of(part) for part in said["parts"]], said["fits"])
            for pattern, order, (key, said) in zip(patterns, later, made)]


def labour_of(piece: Piece) -> int:
    """How much work it is to draw a piece, to compare it with others."""
    return sum(len(row.stitches) for row in piece.rows) + sum(len(strand.all) for strand in piece.strands)


def _part(load: Callable[[], Sequence[bytes]], at: int) -> str:
    return load()[at].decode()


def _taken(shop: Workshop, key: str, order: Later) -> list[bytes]:
    """The view and the parts."""
    return shop.take(key, order).split(_PARTS)[1:]


def _without_pages(content: bytes) -> dict:
    return json.loads(content.split(_PARTS, 1)[0])


async def common_scale(pieces: Sequence[Piece], box: Box, most: float = float("inf")) -> float:
    """The scale, up to `most`, at which each of the pieces fits the box, so that sizes can be compared."""
    return min(most, *(fitting(size, box.width, box.height) for size in await life_sizes(pieces)))


async def life_sizes(pieces: Iterable[Piece]) -> list[tuple[float, float]]:
    """Width and height in mm of the finished views in life size."""
    return [tuple(json.loads(size)) for size in await workshop().results(map(MeasureOrder, pieces))]


async def views(pieces: Iterable[Piece], scale: float) -> list[Picture]:
    """The finished pieces at one scale."""
    return [picture_of(json.loads(content)) for content in await workshop().results(ViewOrder(piece, scale, spoken().tag) for piece in pieces)]


async def small_views(pieces: Iterable[Piece], scale: float, grey: bool) -> list[SmallView]:
    """The finished pieces at one scale, for contents."""
    orders = [Later(partial(SmallViewOrder, piece, scale, spoken().tag, grey)) for piece in pieces]
    return [view for _, view in await workshop().each(orders, _small_view)]


def _small_view(content: bytes) -> SmallView:
    svg, name, drawing = content.split(_PARTS, 2)
    return SmallView(Markup(svg.decode()), name.decode(), drawing)


def printed(pattern: Pattern) -> Pattern:
    """The pattern without what no page shows of it: the text of its file, and what only lint reads."""
    return structs.replace(pattern, file="", base="", chart=DrawnChart(), hang="", fringe_places=0, written_strands=(), hangers=(), counted={}, allowed={}, translations={}, marks={})


def pictured(pattern: Pattern) -> Pattern:
    """The pattern without what no picture of its section shows: its prose."""
    return structs.replace(printed(pattern), title="", summary="", version="", notes="", links=(), steps={})


def stationery(workspace: Workspace, on: Edition) -> Stationery:
    """For an edition on paper."""
    return _stationery(workspace, print_room(on), replace(on, name="", by_pages=False, two_up=False, marks=False, hand="", paper=0.0, output="", profile=""))


def web_stationery(workspace: Workspace) -> Stationery:
    """For web pages, which have no edition."""
    return _stationery(workspace, web_room(), Edition())


def _stationery(workspace: Workspace, room: Room, on: Edition) -> Stationery:
    return Stationery(room, on, texts(workspace.book), own_texts(workspace.root), ours_digest(), spoken().tag)


def texts(book: Book) -> Book:
    """A book of nothing but its texts."""
    return structs.replace(book, file="", order=(), front=(), back=(), editions={}, isbn="", levels={}, defaults=Defaults(), kinds={}, threads={}, translations={}, severities={}, marks={})


def licence(book: Book) -> Markup | str:
    """What the book says may be done with its patterns."""
    return prose(book.licence, {}, top=3) if book.licence else ""


def json_of(value) -> bytes:
    """Plain values as the result of an order."""
    return json.dumps(value, ensure_ascii=False, separators=(",", ":")).encode()
