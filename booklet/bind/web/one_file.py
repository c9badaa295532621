"""One pattern as one HTML file: every way to work it, with fonts, style, script and pictures inside, for sale and for any disk."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from markupsafe import Markup

from ...errors import BookletError
from ...source.workspace import Workspace
from ..book import named, shared, workable
from ..edition import web_editions
from ..errata import errata_of
from ..files import write_file
from ..geometry import web_room
from ..html import WEB, Medium, Setter
from ..page_fit import Report, unheard
from ..pages import SHIPPED, Page, page
from ..photos import photos
from ..translated import printing
from .article import articles
from .colours import bead_rules
from .faces import css_embedded
from .files import script, style
from .screen_photos import for_screens

TO_READ = SHIPPED   # pages that go with every pattern


def build_each(workspace: Workspace, name: str, done: Callable[[str, list[Path] | BookletError], None], report: Report = unheard) -> None:
    """Build build/single/SLUG.html of all patterns; called as `bind.single.build_each` is. A page is for either hand and every size: an edition is one in another language.

    It is not cut into sheets that could be looked at for `report`.
    """
    wanted = web_editions(workspace.book, name)
    for slug in workspace.patterns:
        try:
            files = {f"{slug}{on.suffix}.html": one_file(workspace, slug, on.language).encode() for on in wanted}
            done(slug, [write_file(workspace.root / "build" / "single" / file, content) for file, content in files.items()])
        except BookletError as error:   # the others are bound all the same
            done(slug, error)


def one_file(workspace: Workspace, slug: str, language: str = "") -> str:
    """The page in a language, or in that of its book, which needs nothing but itself."""
    with printing(workspace, language or workspace.book.language) as told:
        return _told(told, slug)


def _told(workspace: Workspace, slug: str) -> str:
    pattern, room, title = workable(workspace, [workspace.patterns[slug]])[0], web_room(), named(workspace.book).title
    setter = Setter(workspace.root, Medium(WEB, room), up="", help=(), **shared(workspace))
    made = articles(setter, pattern, room, 1.0, title, held=for_screens(photos(workspace.root, [pattern])))
    errata = errata_of(workspace, pattern)
    read = [_below(page(workspace, name)) for name in TO_READ]
    values = {"title": f"{pattern.title}, {title}", "description": pattern.summary, "articles": [article.html for article in made], "single": made[0].view,
              "pages": read, "errata": [errata] if errata else [], "patterns": [made[0].view]}
    text = setter.fill("web/one-file.html.jinja", style="", script="", **values)
    look = css_embedded([text]) + style(workspace) + bead_rules(pattern.legend)
    return setter.fill("web/one-file.html.jinja", style=Markup(look), script=Markup(script(workspace.root)), **values)


def _below(one: Page) -> Page:
    """A page whose headings stand below the title of a pattern, with its own title left out: that stands over it already."""
    html = str(one.html)
    for level in (3, 2):
        html = html.replace(f"<h{level}", f"<h{level + 1}").replace(f"</h{level}>", f"</h{level + 1}>")
    start, end = html.find("<h1"), html.find("</h1>")
    return Page(one.slug, one.title, Markup(html[end + len("</h1>"):] if start == 0 else html))
