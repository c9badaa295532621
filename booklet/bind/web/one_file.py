"""One pattern as one HTML file: every way to work it, with fonts, style, script and pictures inside, for sale and for any disk."""

from __future__ import annotations

import asyncio
from collections.abc import Mapping
from dataclasses import dataclass
from functools import partial
from pathlib import Path

from markupsafe import Markup

from ...craft.language import speaking
from ...source.workspace import Workspace
from ..book import named, shared, workable
from ..catalogue import language
from ..edition import web_editions
from ..errata import errata_of
from ..files import write_file
from ..geometry import web_room
from ..html import WEB, Medium, Setter
from ..page_fit import Report, unheard
from ..pages import SHIPPED, Page, page
from ..photos import photos
from ..sections import Stationery, web_stationery
from ..single import Done, side_by_side
from ..translated import printing
from .colours import bead_rules
from .faces import css_embedded
from .files import script, style
from .orders import cut_faces, made_articles, screen_photos

TO_READ = SHIPPED   # pages that go with every pattern


@dataclass(frozen=True)
class Frame:
    """What stands around every pattern, in one language."""

    workspace: Workspace      # as it is printed in the language
    common: Stationery
    title: str                # of the book
    setter: Setter
    pages: tuple[Page, ...]   # to read
    style: str                # without fonts and bead colours
    script: str


def frame_of(workspace: Workspace, tag: str) -> Frame:
    """What stands around the patterns of a workspace in a language."""
    with printing(workspace, tag) as told:
        setter = Setter(told.root, Medium(WEB, web_room()), up="", help=(), **shared(told))
        return Frame(told, web_stationery(told), named(told.book).title, setter, tuple(_below(page(told, name)) for name in TO_READ), style(told), script(told.root))


def build_each(workspace: Workspace, name: str, done: Done, report: Report = unheard) -> None:
    """Build build/single/SLUG.html of all patterns; called as `bind.single.build_each` is. A page is for either hand and every size: an edition is one in another language.

    It is not cut into sheets that could be looked at for `report`.
    """
    frames = {on.suffix: frame_of(workspace, on.language) for on in web_editions(workspace.book, name)}
    asyncio.run(side_by_side(workspace.patterns, partial(_built, workspace.root, frames), done))


async def _built(root: Path, frames: Mapping[str, Frame], slug: str) -> list[Path]:
    files = {f"{slug}{suffix}.html": (await one_file(frame, slug)).encode() for suffix, frame in frames.items()}
    return [write_file(root / "build" / "single" / file, content) for file, content in files.items()]


async def one_file(frame: Frame, slug: str) -> str:
    """The page of a pattern, which needs nothing but itself. Raises the errors of booklet.errors."""
    with speaking(language(frame.common.language)):
        return await _told(frame, slug)


async def _told(frame: Frame, slug: str) -> str:
    (pattern,) = workable(frame.workspace, [frame.workspace.patterns[slug]])
    held = await screen_photos(photos(frame.workspace.root, [pattern]))
    made = (await made_articles([pattern], frame.common, 1.0, frame.title, held))[slug]
    errata = errata_of(frame.workspace, pattern)
    values = {"title": f"{pattern.title}, {frame.title}", "description": pattern.summary, "articles": [article.html for article in made], "single": made[0].view,
              "pages": frame.pages, "errata": [errata] if errata else [], "patterns": [made[0].view]}
    text = frame.setter.fill("web/one-file.html.jinja", style="", script="", **values)
    look = css_embedded(await cut_faces([text])) + frame.style + bead_rules(pattern.legend)
    return frame.setter.fill("web/one-file.html.jinja", style=Markup(look), script=Markup(frame.script), **values)


def _below(one: Page) -> Page:
    """A page whose headings stand below the title of a pattern, with its own title left out: that stands over it already."""
    html = str(one.html)
    for level in (3, 2):
        html = html.replace(f"<h{level}", f"<h{level + 1}").replace(f"</h{level}>", f"</h{level + 1}>")
    start, end = html.find("<h1"), html.find("</h1>")
    return Page(one.slug, one.title, Markup(html[end + len("</h1>"):] if start == 0 else html))
