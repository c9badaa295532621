"""The articles, photos and fonts of web pages, made by the workers and kept."""

from __future__ import annotations

import json
from collections.abc import Awaitable, Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import partial

from markupsafe import Markup

from ...craft.language import _, speaking
from ...errors import FindingsError
from ...source.pattern import Pattern
from ..catalogue import language
from ..context import beads_that_fit
from ..html import WEB, Medium, Setter
from ..page_fit import page_findings
from ..pdf import workshop
from ..press.versions import faces_digest
from ..press.workshop import Later
from ..replayed import refuse
from ..pictures import picture_of, said_of
from ..sections import Section, Stationery, json_of, labour_of, licence, printed
from .article import Article, articles
from .faces import cut, face_name, signs_of, used_faces
from .screen_photos import for_screens
from .variants import Variant

Says = Callable[[str], None]
Make = Callable[..., Awaitable[Mapping[str, tuple[Article, ...]]]]   # as `made_articles`


@dataclass(frozen=True)
class ArticlesOrder:
    """The articles of all variants of a pattern."""

    pattern: Pattern
    common: Stationery
    small: float    # scale of small views
    title: str      # of the book
    held: Mapping[str, bytes] | None = None   # the photos, where all of them will stand in one file

    def fill(self) -> bytes:
        with speaking(language(self.common.language)):
            fits = beads_that_fit(self.pattern.piece, self.common.room)   # words beside a chart take some of its room
            if not all(fits.values()):
                return json_of({"fits": fits, "articles": [], "wrong": []})
            setter = Setter(self.common.own, Medium(WEB, self.common.room), up="", book=self.common.book, licence=licence(self.common.book))
            try:
                made = articles(setter, self.pattern, self.common.room, self.small, self.title, self.held, fits)
            except FindingsError as error:   # words that do not rebuild the chart: their place is known where the file was read
                return json_of({"fits": fits, "articles": [], "wrong": [finding.message.partition(": ")[2] for finding in error.findings]})
        return json_of({"fits": fits, "wrong": [], "articles": [_told(one) for one in made]})


def _told(one: Article) -> dict:
    return {"name": one.variant.name, "hand": one.variant.hand, "is_mirrored": one.variant.is_mirrored, "html": one.html, "files": one.files,
            "accent": one.view.accent, "small": said_of(one.view.small)}


async def made_articles(patterns: Sequence[Pattern], common: Stationery, small: float, title: str, held: Mapping[str, bytes] | None = None,
                        says: Says = lambda line: None) -> dict[str, tuple[Article, ...]]:
    """The articles of patterns by slug, made as `article.articles` makes them. Raises FindingsError for a chart that does not fit, or words that do not rebuild theirs."""
    orders = [Later(partial(ArticlesOrder, printed(pattern), common, small, title, held), labour_of(pattern.piece)) for pattern in patterns]
    made = 0

    def read(content: bytes) -> dict:
        nonlocal made
        made += 1
        says(f"made the web pages of {made} of {len(orders)} patterns")
        return json.loads(content)

    found = [said for _key, said in await workshop().each(orders, read)]
    wide = [finding for pattern, said in zip(patterns, found) for finding in page_findings(pattern, common.room, said["fits"]) if finding.is_error]
    if wide:
        raise FindingsError(wide)
    for pattern, said in zip(patterns, found):
        refuse(pattern, said["wrong"])
    return {pattern.slug: tuple(_article(pattern, one) for one in said["articles"]) for pattern, said in zip(patterns, found)}


def _article(pattern: Pattern, said: Mapping) -> Article:
    view = Section(pattern.slug, pattern.title, pattern.version, pattern.summary, _(pattern.level), said["accent"], list, small=picture_of(said["small"]))   # its pages are those of the article
    return Article(Variant(said["name"], said["hand"], said["is_mirrored"], pattern), view, Markup(said["html"]), said["files"])


@dataclass(frozen=True)
class PhotoOrder:
    """A photo as pages show it."""

    content: bytes

    @property
    def labour(self) -> int:
        return len(self.content)

    def fill(self) -> bytes:
        return for_screens(self.content)


async def screen_photos(photos: Mapping[str, bytes]) -> dict[str, bytes]:
    """Photos as pages show them, by their names."""
    return dict(zip(photos, await workshop().results(map(PhotoOrder, photos.values()))))


@dataclass(frozen=True)
class CutOrder:
    """A face with these signs alone, as WOFF2."""

    face: str    # its name as a file
    signs: str
    faces: str   # digest of the font files

    def fill(self) -> bytes:
        (face,) = [face for face in used_faces() if face_name(face) == self.face]
        return cut(face.path, self.face, self.signs)


async def cut_faces(texts: Iterable[str]) -> dict[str, bytes]:
    """The font files for pages with these texts, by name in fonts/."""
    names, signs = [face_name(face) for face in used_faces()], signs_of(texts)
    made = await workshop().results(CutOrder(name, signs, faces_digest()) for name in names)
    return {f"{name}.woff2": content for name, content in zip(names, made)}
