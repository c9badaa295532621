"""The files of build/html/: a gallery, a page for each way to work each pattern, and the pages to read."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from pathlib import Path

from rjsmin import jsmin

from ...craft.language import speaking
from ...source.pattern import Pattern
from ...source.workspace import Workspace
from ...draw.finished import finished_alt
from ..catalogue import language
from ..geometry import web_room
from ..html import WEB, Medium, Setter
from ..pages import BEGIN, GLOSSARY, Page
from ..sections import Section
from ..templates import text_of
from .article import Article
from .colours import bead_rules
from .faces import css_linked
from .facets import facets, facets_of
from .variants import Variant, beside
from .words import said_by

SCRIPTS = ("words.js", "keep.js", "place.js", "bench.js", "chart.js", "colours.js", "steps.js", "gallery.js", "start.js")
STYLES = ("common.css", "web.css")


@dataclass(frozen=True)
class Card:
    """A pattern in the gallery."""

    p: Section
    alt: str
    facets: dict[str, str]
    other: Variant | None    # for the other hand


def web_texts(workspace: Workspace, patterns: list[Pattern], front: tuple[Page, ...], back: tuple[Page, ...], title: str, shared: dict,
              made: Sequence[tuple[Article, ...]]) -> tuple[list[str], dict[str, bytes]]:
    """The texts that the fonts of the pages must have all signs of, and every file but the fonts and photos, by its name in build/html/. `made` are the articles of each pattern."""
    root = workspace.root
    setter = Setter(root, Medium(WEB, web_room()), up="", help=[one for one in (*front, *back) if one.slug in (BEGIN, GLOSSARY)], **shared)
    texts = {f"pictures/{every[0].variant.pattern.slug}.svg": every[0].view.small.svg for every in made}
    texts |= {"index.html": _gallery(setter, patterns, made, front, back, title)}
    for at, every in enumerate(made):
        for article in every:
            texts[article.variant.address] = _page(setter, made, at, article, title)
    for one in (*front, *back):
        texts[f"{one.slug}.html"] = setter.fill("web/page.html.jinja", title=f"{one.title}, {title}", description=one.title, page=one)
    keys = {key for pattern in patterns for key in pattern.legend}
    texts["booklet.css"] = css_linked() + style(workspace) + bead_rules(keys)
    texts["booklet.js"] = script(root)
    beside = {name: svg for every in made for article in every for name, svg in article.files.items()}
    files = {name: str(text).encode() for name, text in sorted((texts | beside).items())}
    return list(texts.values()), files


def style(workspace: Workspace) -> str:
    """The style sheet of web pages, without fonts and bead colours."""
    return "".join(text_of(workspace.root, name) for name in STYLES)


def script(root: Path, names: Iterable[str] = SCRIPTS) -> str:
    """The scripts as one, without what only their readers need: plain files that share one scope. Browsers load no modules from a disk."""
    parts = "\n".join(text_of(root, f"web/{name}") for name in names)
    return jsmin(f'(() => {{\n"use strict";\n{said_by(parts)}}})();\n')


def script_in(tag: str, root: Path, names: Iterable[str]) -> str:
    """Scripts as one, in a language."""
    with speaking(language(tag)):
        return script(root, names)


def _page(setter: Setter, made: Sequence[tuple[Article, ...]], at: int, article: Article, title: str) -> str:
    view = article.view
    return setter.fill("web/pattern.html.jinja", title=f"{view.title}, {title}", description=view.summary, up=article.variant.up, article=article.html,
                       before=_neighbour(made, at - 1, article), after=_neighbour(made, at + 1, article))


@dataclass(frozen=True)
class Neighbour:
    """The page of the pattern before or after, for the same hand where there is one."""

    href: str
    title: str


def _neighbour(made: Sequence[tuple[Article, ...]], at: int, article: Article) -> Neighbour | None:
    if not 0 <= at < len(made):
        return None
    every = {(other.variant.hand, other.variant.is_mirrored): other for other in made[at]}
    other = every.get((article.variant.hand, False), made[at][0])
    return Neighbour(article.variant.up + other.variant.address, other.view.title)


def _gallery(setter: Setter, patterns: list[Pattern], made: Sequence[tuple[Article, ...]], front: tuple[Page, ...], back: tuple[Page, ...], title: str) -> str:
    cards = [Card(every[0].view, finished_alt(pattern.piece), facets_of(pattern),
                  beside(every[0].variant, tuple(article.variant for article in every), hand=True)) for pattern, every in zip(patterns, made)]
    return setter.fill("web/index.html.jinja", title=title, description=setter.engine.globals["book"].subtitle, cards=cards,
                       facets=facets(card.facets for card in cards), front=front, back=back)
