"""The cover as a file of its own: back, spine and front on one sheet, as a printer folds it round the inside."""

from __future__ import annotations

from dataclasses import dataclass, replace

from markupsafe import Markup

from ..draw.barcode import barcode_svg
from ..source.workspace import Workspace
from .edition import Edition
from .grey import greyed
from .front import front_of
from .html import paper_setter
from .pdf import typeset
from .pictures import picture
from .press.scratch import Scratch
from .translated import printing

LEAST_SPINE_FOR_TEXT = 6.0   # mm; printers ask that narrower spines stay empty, because the fold wanders by a millimetre or two


@dataclass(frozen=True)
class CoverSheet:
    """The sheet of a cover, mm."""

    page: float       # width of front and of back
    height: float
    spine: float
    bleed: float

    @property
    def width(self) -> float:
        return 2 * self.page + self.spine


def spine_width(pages: int, paper: float) -> float:
    """Thickness in mm of the inside: every two pages are a leaf of the paper."""
    return round((pages + pages % 2) / 2 * paper, 2)


def cover_sheet(on: Edition, pages: int) -> CoverSheet:
    return CoverSheet(on.width, on.height, spine_width(pages, on.paper), on.bleed)


async def cover_pdf(workspace: Workspace, on: Edition, pages: int) -> Scratch:
    """The typeset cover for an inside of so many pages."""
    with printing(workspace, on.language) as told:
        html = await _html(told, on, pages)
    return await (await typeset(greyed(html) if on.grey else html, workspace.root, {}, {}, on)).joined()


async def _html(workspace: Workspace, on: Edition, pages: int) -> str:
    from .book import named, shared, workable

    book = named(workspace.book)
    patterns = workable(workspace, workspace.patterns.values(), on.hand)
    sheet, bare = cover_sheet(on, pages), replace(on, marks=False)
    setter = paper_setter(workspace.root, bare, **shared(workspace))
    return setter.fill("cover.html.jinja", sheet=sheet, title=workspace.book.title, description=workspace.book.subtitle, style=_style(workspace, bare),
                       front=await front_of([pattern.piece for pattern in patterns], bare, book.title, book.subtitle, [book.author]), patterns=patterns, spine_text=sheet.spine >= LEAST_SPINE_FOR_TEXT,
                       isbn=_barcode(workspace.book.isbn), isbn_written=_written(workspace.book.isbn))


def _style(workspace: Workspace, on: Edition) -> Markup:
    from .book import style

    return style(workspace.root, on)


def _written(isbn: str) -> str:
    """With hyphens between country, publisher and title."""
    from stdnum.isbn import format as hyphened

    return hyphened(isbn) if isbn else ""


def _barcode(isbn: str) -> Markup:
    return picture(barcode_svg(isbn, _written(isbn))).svg if isbn else Markup("")
