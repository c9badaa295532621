"""One pattern bound alone, for sale: its own cover, everything it needs to be worked, licence and version."""

from __future__ import annotations

from pathlib import Path

from ..errors import WrongUse
from ..source.workspace import Workspace
from .book import shared, style, workable
from .context import shown
from .edition import Edition, edition, editions
from .errata import errata_of
from .files import write_file
from .geometry import print_room
from .grey import greyed, greyed_photos
from .html import PRINT, Medium, Setter
from .pages import SHIPPED, page
from .pdf import make_pdf
from .photos import photos
from .volume import volume


def build(workspace: Workspace, slug: str, name: str = "") -> list[Path]:
    """Build build/single/SLUG.pdf in the edition of this name, or in all. Raises the errors of booklet.errors."""
    if slug not in workspace.patterns:
        raise WrongUse(f"there is no pattern {slug!r}")
    files = {}
    for on in editions(workspace.book, name):
        files |= volume(workspace, on, slug, lambda on: bound(workspace, slug, on))
    return [write_file(workspace.root / "build" / "single" / file, content) for file, content in files.items()]


def bound(workspace: Workspace, slug: str, on: Edition) -> bytes:
    """The PDF of a single in one edition, as it is typeset."""
    html, pictures = single_html(workspace, slug, on), photos(workspace.root, [workspace.patterns[slug]])
    if on.grey:
        html, pictures = greyed(html), greyed_photos(pictures)
    return make_pdf(html, workspace.root, pictures, {})


def single_html(workspace: Workspace, slug: str, on: Edition | None = None) -> str:
    """The single as one HTML document for print."""
    on = on or edition(workspace.book)
    pattern = workable(workspace, [workspace.patterns[slug]], on.hand)[0]
    room = print_room(on)
    view = shown(pattern, room, 1.0)
    errata = errata_of(workspace, pattern)
    setter = Setter(workspace.root, Medium(PRINT, room), edition=on, **shared(workspace))
    return setter.fill("single.html.jinja", style=style(workspace.root, on), title=view.title, description=view.summary, single=view, patterns=[view],
                       sections=[setter.section(pattern, view)], front=[page(workspace, name) for name in SHIPPED], errata=[errata] if errata else [])
