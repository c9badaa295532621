"""The whole book: gathered first, then written to build/ as PDF and as web pages."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from functools import partial
from pathlib import Path

from markupsafe import Markup
from msgspec.structs import replace

from ..craft.language import _
from ..craft.pair import in_hand
from ..errors import FindingsError, WrongUse
from ..findings import Finding, Severity
from ..lint.rules import unknown_placeholder
from ..lint.subject import Subject
from ..source.book import Book
from ..source.pattern import Pattern
from ..source.workspace import Workspace
from .context import LARGEST_VIEW, Shown, common_scale, finished, shown
from .edition import Edition, edition, editions
from .errata import errata_of_book
from .finder import finder
from .files import file_name, write_file, write_folder
from .geometry import Box, Room, print_room, sheet, web_room
from .grey import greyed, greyed_photos
from .html import PRINT, Medium, Setter, dates
from .page_fit import book_findings, page_findings
from .pages import Page, back_pages, front_pages
from .pdf import make_pdf
from .photos import photos
from .pictures import Picture
from .prose import prose
from .templates import environment, fill, text_of
from .volume import volume
from .web.article import Article, articles
from .web.files import web_files

FORMATS = ("pdf", "html")
MOST_ON_LINE, MOST_ON_COVER = 4, 12
FINDER = "find-a-pattern"   # id of the index
BETWEEN = 8.5   # mm that a piece on the cover takes beyond its own width: the margins of both sides


def build(workspace: Workspace, formats: Iterable[str] = FORMATS, progress: Callable[[str], None] = lambda line: None, name: str = "") -> list[Path]:
    """Build the book in the edition of this name, or in all. Nothing is written before everything is made. Raises the errors of booklet.errors."""
    made: list[Callable[[], Path]] = []
    folder = workspace.root / "build"
    for on in editions(workspace.book, name) if "pdf" in formats else ():
        progress(f"setting {on}")
        files = volume(workspace, on, file_name(named(workspace.book).title), lambda on: bound(workspace, on, progress), cover=True)
        made += [partial(write_file, folder / file, content) for file, content in files.items()]
    if "html" in formats:
        files = web(workspace, progress)
        made.append(lambda: write_folder(folder / "html", files) / "index.html")
    return [write() for write in made]


def web(workspace: Workspace, progress: Callable[[str], None] = lambda line: None, make: Callable[..., tuple[Article, ...]] = articles) -> dict[str, bytes]:
    """Every file of the web pages by its name in build/html/. `make` makes the articles of a pattern, and is called as `articles` is."""
    progress("making the web pages")
    patterns, front, back = read(workspace, web_room())
    return web_files(workspace, patterns, front, back, named(workspace.book).title, shared(workspace), progress, make)


def bound(workspace: Workspace, on: Edition, progress: Callable[[str], None] = lambda line: None) -> bytes:
    """The PDF of the inside of one edition, as it is typeset."""
    parts = gathered(workspace, print_room(on), progress, on.hand)
    html, pictures = book_html(workspace, *parts, on), photos(workspace.root, parts[0])
    if on.grey:
        html, pictures = greyed(html), greyed_photos(pictures)
    content = make_pdf(html, workspace.root, pictures, titles(*parts))
    for finding in book_findings(workspace, content, on):
        progress(finding.one_line())
    return content


def gathered(workspace: Workspace, room: Room, warn: Callable[[str], None] = lambda line: None, hand: str = "") -> tuple[list[Pattern], dict[str, Shown], tuple[Page, ...], tuple[Page, ...]]:
    """Patterns, their views by slug, front and back pages, for a medium with this room. Raises FindingsError where one of them cannot be printed."""
    patterns, front, back = read(workspace, room, warn, hand)
    small = common_scale([pattern.piece for pattern in patterns], room.small)
    return patterns, {pattern.slug: shown(pattern, room, small) for pattern in patterns}, front, back


def read(workspace: Workspace, room: Room, warn: Callable[[str], None] = lambda line: None, hand: str = "") -> tuple[list[Pattern], tuple[Page, ...], tuple[Page, ...]]:
    """Patterns, front and back pages. Raises FindingsError where one of them cannot be printed in this room."""
    patterns = workable(workspace, workspace.patterns.values(), hand)
    if not patterns:
        raise WrongUse("there is no pattern to build", "write one into patterns/")
    front, back = front_pages(workspace), back_pages(workspace)
    _check_names(workspace, (*front, *back))
    _check_fit(patterns, room, warn)
    return patterns, front, back


def named(book: Book) -> Book:
    """The book, with a title in any case."""
    return book if book.title else replace(book, title="Patterns")


def workable(workspace: Workspace, patterns: Iterable[Pattern], hand: str = "") -> list[Pattern]:
    """The patterns, all of which must have a piece, and prose without unknown placeholders; written for `hand` if it is given."""
    patterns = list(patterns)
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


def _check_fit(patterns: Iterable[Pattern], room: Room, warn: Callable[[str], None]) -> None:
    findings = [finding for pattern in patterns for finding in page_findings(pattern, room)]
    errors = [finding for finding in findings if finding.is_error]
    if errors:
        raise FindingsError(errors)
    for finding in findings:
        warn(finding.one_line())


def style(root: Path, on: Edition) -> Markup:
    """The style sheet of the pages of an edition."""
    own = [name for name, wanted in (("large.css", on.large), ("screen.css", on.screen)) if wanted]
    return Markup("".join((text_of(root, "common.css"), text_of(root, "print.css"),
                           fill(environment(root), "page.css.jinja", page=sheet(on), edition=on), *(text_of(root, name) for name in own))))


def shared(workspace: Workspace) -> dict:
    """What every template may use."""
    book = named(workspace.book)
    return {"book": book, "licence": prose(book.licence, {}, top=3) if book.licence else "",
            "dates": dates()}


def book_html(workspace: Workspace, patterns: list[Pattern], views: dict[str, Shown], front: tuple[Page, ...], back: tuple[Page, ...],
              on: Edition | None = None) -> str:
    """The whole book as one HTML document for print."""
    on = on or edition(workspace.book)
    room = print_room(on)
    setter = Setter(workspace.root, Medium(PRINT, room), edition=on, **shared(workspace))
    sections = [setter.section(pattern, views[pattern.slug]) for pattern in patterns]
    return setter.fill("book.html.jinja", style=style(workspace.root, on), title=workspace.book.title, description=workspace.book.subtitle, patterns=list(views.values()),
                       cover=cover_lines(patterns, room.hung), sections=sections, front=front, back=back, errata=errata_of_book(workspace), finder=finder(patterns))


def titles(patterns: list[Pattern], views: dict[str, Shown], front: tuple[Page, ...], back: tuple[Page, ...]) -> dict[str, str]:
    """The title of every section by its id."""
    return {FINDER: _("Find a pattern")} | {slug: view.title for slug, view in views.items()} | {page.slug: page.title for page in (*front, *back)}


def cover_lines(patterns: list[Pattern], box: Box) -> list[list[Picture]]:
    """The pieces of the cover, at one scale, hung on at most two lines of equal length."""
    pieces = [pattern.piece for pattern in patterns[:MOST_ON_COVER]]
    lines = 1 if len(pieces) <= MOST_ON_LINE else 2
    each = -(-len(pieces) // lines)
    scale = min(common_scale(pieces, Box(box.width / each - BETWEEN, box.height / lines - BETWEEN)), LARGEST_VIEW)
    hung = [finished(piece, scale) for piece in pieces]
    return [hung[at:at + each] for at in range(0, len(hung), each)]
