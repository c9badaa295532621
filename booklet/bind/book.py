"""The whole book: gathered first, then written to build/ as PDF and as web pages."""

from __future__ import annotations

import asyncio
import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from functools import partial
from pathlib import Path

from markupsafe import Markup
from msgspec.structs import replace

from ..craft.language import _
from ..craft.pair import in_hand
from ..craft.piece import Piece
from ..errors import FindingsError, WrongUse
from ..findings import Finding, Severity
from ..lint.rules import unknown_placeholder
from ..lint.subject import Subject
from ..source.book import Book
from ..source.pattern import Pattern
from ..source.workspace import Workspace
from .edition import Edition, editions, web_editions
from .errata import errata_of_book
from .finder import finder
from .front import Front, front_of
from .files import file_name, write_file, write_folder
from .geometry import Box, Room, print_room, sheet, web_room
from .grey import greyed, greyed_photos
from .html import dates, paper_setter
from .looking import seen_in
from .page_fit import Report, book_findings, page_findings, unheard, without_errors
from .pages import Page, back_pages, front_pages
from .pdf import copy_of, set_copy
from .photos import photos
from .press.binding import Copy
from .press.parts import Part, held
from .press.scratch import Scratch
from .sections import Section, SmallView, common_scale, licence, sections, small_views, web_stationery
from .templates import environment, fill, own_texts, text_of
from .translated import printing
from .volume import volume
from .web.faces import licence_files
from .web.files import web_texts
from .web.orders import Make, cut_faces, made_articles, screen_photos

FORMATS = ("pdf", "html")
FINDER = "find-a-pattern"   # id of the index


def build(workspace: Workspace, formats: Iterable[str] = FORMATS, progress: Callable[[str], None] = lambda line: None, name: str = "", report: Report = unheard) -> list[Path]:
    """Build the book in the edition of this name, or in all. `report` is told what is found on the pages besides errors.

    Nothing is written before everything is made and looked at. Raises the errors of booklet.errors.
    """
    made: list[Callable[[], Path]] = []
    found: list[Finding] = []
    folder, on_the_web = workspace.root / "build", web_editions(workspace.book, name) if "html" in formats else ()
    if "pdf" in formats:
        progress("setting the pages")
        files = asyncio.run(_volumes(workspace, editions(workspace.book, name), progress, found.extend))
        report(without_errors(workspace, found))
        made += [partial(write_file, folder / file, content) for file, content in files.items()]
    for on in on_the_web:
        made.append(partial(_write_pages, folder / f"html{on.suffix}", asyncio.run(web(workspace, on.language, progress))))
    return [write() for write in made]


def _write_pages(folder: Path, files: Mapping[str, bytes]) -> Path:
    return write_folder(folder, files) / "index.html"


async def web(workspace: Workspace, language: str, progress: Callable[[str], None] = lambda line: None, make: Make = made_articles) -> dict[str, bytes]:
    """Every file of the web pages in a language, by its name in build/html/. `make` makes the articles of patterns. Raises the errors of booklet.errors."""
    progress("making the web pages")
    with printing(workspace, language) as told:
        patterns, (front, back) = workable(told, told.patterns.values()), read_pages(told)
        large = photos(told.root, patterns)
        title, small = named(told.book).title, await common_scale([pattern.piece for pattern in patterns], web_room().small)
        made, pictures = await asyncio.gather(make(patterns, web_stationery(told), small, title, says=progress), screen_photos(large))
        texts, files = web_texts(told, patterns, front, back, title, shared(told), [made[pattern.slug] for pattern in patterns])
    fonts = {**await cut_faces(texts), **licence_files()}
    return files | pictures | {f"fonts/{name}": content for name, content in fonts.items()}


async def _volumes(workspace: Workspace, wanted: Iterable[Edition], progress: Callable[[str], None], report: Report) -> dict[str, Scratch]:
    """The files of editions, which are made side by side. Raises the errors of the first that cannot be made, when all others are done."""
    stem = file_name(named(workspace.book).title)
    found = await asyncio.gather(*(volume(workspace, on, stem, lambda on: bound(workspace, on, progress, report), cover=True) for on in wanted), return_exceptions=True)
    for one in found:
        if isinstance(one, BaseException):
            raise one
    return {name: content for files in found for name, content in files.items()}


async def bound(workspace: Workspace, on: Edition, progress: Callable[[str], None] = lambda line: None, report: Report = unheard) -> Scratch:
    """The PDF of the inside of one edition, as it is typeset. `report` is told what is found on its pages."""
    with printing(workspace, on.language) as told:
        copy = await _copy(told, on, report)   # the book's texts and pictures are held by nobody else
    progress(f"setting {on}")
    whole = await set_copy(copy)
    seen, file = await asyncio.gather(seen_in(whole, sheet(on)), whole.joined())
    report(list(book_findings(workspace, seen, on)))
    return file


async def _copy(workspace: Workspace, on: Edition, report: Report) -> Copy:
    book, pictures = await gathered(workspace, on, report), photos(workspace.root, workspace.patterns.values())
    html, elsewhere = book_apart(workspace, book, on)
    files = {**(greyed_photos(pictures) if on.grey else pictures), **book.drawings}
    return copy_of(html, workspace.root, files, book.titles, on, elsewhere)


@dataclass(frozen=True)
class Gathered:
    """All that a book is made of."""

    patterns: list[Pattern]
    sections: list[Section]
    front: tuple[Page, ...]
    back: tuple[Page, ...]
    cover: Front | None          # where the cover is no file of its own

    @property
    def drawings(self) -> dict[str, bytes]:
        """The drawings that the contents only name, by their address."""
        return {one.small.name: one.small.drawing for one in self.sections}

    @property
    def titles(self) -> dict[str, str]:
        """The title of every section by its id."""
        return {FINDER: _("Find a pattern")} | {one.slug: one.title for one in (*self.sections, *self.front, *self.back)}


async def gathered(workspace: Workspace, on: Edition, report: Report = unheard) -> Gathered:
    """All that the book is made of in an edition. Raises FindingsError where a pattern cannot be printed."""
    patterns, room = workable(workspace, workspace.patterns.values(), on.hand), print_room(on)
    pieces = [pattern.piece for pattern in patterns]
    made, cover, small, (front, back) = await asyncio.gather(
        sections(workspace, patterns, on), _front(workspace, pieces, on), _small_views(pieces, room.small, on.grey), _pages(workspace, on.hand, room.steps))
    _check_fit(((pattern, section.fits) for pattern, section in zip(patterns, made)), room, report)
    return Gathered(patterns, [section.with_small(view) for section, view in zip(made, small)], front, back, cover)


async def _front(workspace: Workspace, pieces: list[Piece], on: Edition) -> Front | None:
    book = named(workspace.book)
    return None if on.paper else await front_of(pieces, on, book.title, book.subtitle, [book.author])


async def _pages(workspace: Workspace, hand: str, steps: float) -> tuple[tuple[Page, ...], tuple[Page, ...]]:
    await asyncio.sleep(0)   # first let the workers have their orders
    return read_pages(workspace, hand, steps)


async def _small_views(pieces: list[Piece], box: Box, grey: bool) -> list[SmallView]:
    return await small_views(pieces, await common_scale(pieces, box), grey)


def read_pages(workspace: Workspace, hand: str = "", steps: float = 1.0) -> tuple[tuple[Page, ...], tuple[Page, ...]]:
    """Front and back pages, for `hand` if it is given, with pictures of `steps` times the usual size. Raises FindingsError."""
    front, back = front_pages(workspace, hand, steps), back_pages(workspace)
    _check_names(workspace, (*front, *back))
    return front, back


def named(book: Book) -> Book:
    """The book, with a title in any case."""
    return book if book.title else replace(book, title=_("Patterns"))


def workable(workspace: Workspace, patterns: Iterable[Pattern], hand: str = "") -> list[Pattern]:
    """The patterns, all of which must have a piece, and prose without unknown placeholders; written for `hand` if it is given. Raises FindingsError, and WrongUse where there are none."""
    patterns = list(patterns)
    if not patterns:
        raise WrongUse("there is no pattern to build", "write one into patterns/")
    broken = [pattern for pattern in patterns if pattern.piece is None]
    if broken:
        raise FindingsError(Finding(pattern.mark("body", "chart"), Severity.ERROR, "unreadable-chart",
                                    f"{pattern.title or pattern.slug} cannot be built from its chart") for pattern in broken)
    unknown = [finding for pattern in patterns for finding in unknown_placeholder.check(Subject(workspace, pattern))]
    if unknown:
        raise FindingsError(unknown)
    return [replace(pattern, hand=hand, piece=in_hand(pattern.piece, hand)) for pattern in patterns] if hand else patterns


def _check_names(workspace: Workspace, pages: Iterable[Page]) -> None:
    """Raise FindingsError for a page whose web page would take the place of another one."""
    taken, wrong = {"index", FINDER, *workspace.patterns}, []
    for page in pages:
        if page.slug in taken:
            wrong.append(Finding(workspace.book.mark("front"), Severity.ERROR, "page-name-taken",
                                 f"the page name {page.slug!r} is taken already", "rename the page in patterns/pages/ and in book.yaml"))
        taken.add(page.slug)
    if wrong:
        raise FindingsError(wrong)


def _check_fit(fits: Iterable[tuple[Pattern, Mapping[str, float] | None]], room: Room, report: Report = unheard) -> None:
    findings = [finding for pattern, known in fits for finding in page_findings(pattern, room, known)]
    errors = [finding for finding in findings if finding.is_error]
    if errors:
        raise FindingsError(errors)
    report(findings)


def style(root: Path, on: Edition) -> Markup:
    """The style sheet of the pages of an edition."""
    own = [name for name, wanted in (("large.css", on.large), ("screen.css", on.screen)) if wanted]
    return Markup("".join((text_of(root, "common.css"), text_of(root, "print.css"),
                           fill(environment(own_texts(root)), "page.css.jinja", page=sheet(on), edition=on), *(text_of(root, name) for name in own))))


def shared(workspace: Workspace) -> dict:
    """What every template may use."""
    book = named(workspace.book)
    return {"book": book, "licence": licence(book), "dates": dates()}


def book_html(workspace: Workspace, book: Gathered, on: Edition) -> str:
    """The whole book as one HTML document for print."""
    html, elsewhere = book_apart(workspace, book, on)
    return re.sub(held("([0-9]+)"), lambda place: "".join(part.html for part in elsewhere[place[1]]), html)


def book_apart(workspace: Workspace, book: Gathered, on: Edition) -> tuple[str, dict[str, list[Part]]]:
    """The book as an HTML document that only names the sections of patterns, and the parts of each of them: together they would not fit the memory."""
    setter = paper_setter(workspace.root, on, **shared(workspace))
    elsewhere = {str(at): section.parts for at, section in enumerate(book.sections)}   # their colours are grey already, where they have to be
    html = setter.fill("book.html.jinja", style=style(workspace.root, on), title=workspace.book.title, description=workspace.book.subtitle, patterns=book.sections,
                       front_page=book.cover, sections=[Markup(held(name)) for name in elsewhere], front=book.front, back=book.back, errata=errata_of_book(workspace), finder=finder(book.patterns))
    return greyed(html) if on.grey else html, elsewhere
