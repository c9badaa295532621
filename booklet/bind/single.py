"""One pattern bound alone, for sale: its own cover, everything it needs to be worked, licence and version."""

from __future__ import annotations

from pathlib import Path

from ..errors import WrongUse
from ..source.workspace import Workspace
from .book import shared, style, workable
from .context import shown
from .errata import errata_of
from .files import write_file
from .geometry import print_room, sheet
from .html import PRINT, Medium, Setter
from .pages import SHIPPED, page
from .pdf import make_pdf
from .photos import photos


def build(workspace: Workspace, slug: str) -> list[Path]:
    """Build build/single/SLUG.pdf. Raises the errors of booklet.errors."""
    if slug not in workspace.patterns:
        raise WrongUse(f"there is no pattern {slug!r}")
    return [write_file(workspace.root / "build" / "single" / f"{slug}.pdf", single_pdf(workspace, slug))]


def single_pdf(workspace: Workspace, slug: str) -> bytes:
    """The single, set. Raises the errors of booklet.errors."""
    return make_pdf(single_html(workspace, slug), workspace.root, photos(workspace.root, [workspace.patterns[slug]]), {})


def single_html(workspace: Workspace, slug: str) -> str:
    """The single as one HTML document for print."""
    pattern = workable(workspace, [workspace.patterns[slug]])[0]
    room = print_room(sheet(workspace.book.page))
    view = shown(pattern, room, 1.0)
    errata = errata_of(workspace, pattern)
    setter = Setter(workspace.root, Medium(PRINT, room), **shared(workspace))
    return setter.fill("single.html.jinja", style=style(workspace.root, workspace.book.page), title=view.title, description=view.summary, single=view, patterns=[view],
                       sections=[setter.section(pattern, view)], front=[page(workspace, name) for name in SHIPPED], errata=[errata] if errata else [])
