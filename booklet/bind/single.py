"""One pattern bound alone, for sale: its own cover, everything it needs to be worked, licence and version."""

from __future__ import annotations

import asyncio
from pathlib import Path

from markupsafe import Markup

from ..errors import WrongUse
from ..source.workspace import Workspace
from .book import shared, style, workable
from .edition import Edition, editions
from .errata import errata_of
from .files import write_file
from .geometry import print_room
from .grey import greyed, greyed_photos
from .html import PRINT, Medium, Setter
from .pages import SHIPPED, page
from .pdf import typeset
from .photos import photos
from .sections import sections
from .translated import printing
from .volume import volume


def build(workspace: Workspace, slug: str, name: str = "") -> list[Path]:
    """Build build/single/SLUG.pdf in the edition of this name, or in all. Raises the errors of booklet.errors."""
    return asyncio.run(built(workspace, slug, name))


async def built(workspace: Workspace, slug: str, name: str = "") -> list[Path]:
    """As `build`, beside other work."""
    if slug not in workspace.patterns:
        raise WrongUse(f"there is no pattern {slug!r}")
    files = {}
    for on in editions(workspace.book, name):
        files |= await volume(workspace, on, slug, lambda on: bound(workspace, slug, on))
    return [write_file(workspace.root / "build" / "single" / file, content) for file, content in files.items()]


async def bound(workspace: Workspace, slug: str, on: Edition) -> bytes:
    """The PDF of a single in one edition, as it is typeset."""
    pictures = photos(workspace.root, [workspace.patterns[slug]])
    return await typeset(await single_html(workspace, slug, on), workspace.root, greyed_photos(pictures) if on.grey else pictures, {})


async def single_html(workspace: Workspace, slug: str, on: Edition) -> str:
    """The single as one HTML document for print."""
    with printing(workspace, on.language) as workspace:
        return await _html(workspace, slug, on)


async def _html(workspace: Workspace, slug: str, on: Edition) -> str:
    pattern = workable(workspace, [workspace.patterns[slug]], on.hand)[0]
    (section,) = await sections(workspace, [pattern], on)
    errata = errata_of(workspace, pattern)
    setter = Setter(workspace.root, Medium(PRINT, print_room(on)), edition=on, **shared(workspace))
    html = setter.fill("single.html.jinja", style=style(workspace.root, on), title=section.title, description=section.summary, single=section, patterns=[section],
                       sections=[Markup("<!--section-->")], front=[page(workspace, name) for name in SHIPPED], errata=[errata] if errata else [])
    return (greyed(html) if on.grey else html).replace("<!--section-->", section.html)
