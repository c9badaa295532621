"""The articles and fonts of web pages, made by the workers and kept."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from markupsafe import Markup

from ...craft.language import speaking
from ...errors import FindingsError
from ...source.pattern import Pattern
from ..catalogue import language
from ..context import beads_that_fit
from ..html import WEB, Medium, Setter
from ..pdf import workshop
from ..press.versions import faces_digest
from ..replayed import refuse
from ..sections import Section, Stationery, json_of, licence, picture_of, printed, said_of
from .article import Article, articles
from .faces import cut, face_name, signs_of, used_faces
from .variants import Variant


@dataclass(frozen=True)
class ArticlesOrder:
    """The articles of all variants of a pattern."""

    pattern: Pattern
    common: Stationery
    small: float    # scale of small views
    title: str      # of the book

    @property
    def labour(self) -> int:
        return sum(len(row.stitches) for row in self.pattern.piece.rows) + sum(len(strand.all) for strand in self.pattern.piece.strands)

    def fill(self) -> bytes:
        fits = beads_that_fit(self.pattern.piece, self.common.room)
        if not all(fits.values()):
            return json_of({"fits": fits, "articles": [], "wrong": []})
        with speaking(language(self.common.language)):
            setter = Setter(self.common.own, Medium(WEB, self.common.room), up="", book=self.common.book, licence=licence(self.common.book))
            try:
                made = articles(setter, self.pattern, self.common.room, self.small, self.title)
            except FindingsError as error:   # words that do not rebuild the chart: their place is known where the file was read
                return json_of({"fits": fits, "articles": [], "wrong": [finding.message.partition(": ")[2] for finding in error.findings]})
        return json_of({"fits": fits, "wrong": [], "articles": [_told(one) for one in made]})


def _told(one: Article) -> dict:
    return {"name": one.variant.name, "hand": one.variant.hand, "is_mirrored": one.variant.is_mirrored, "html": one.html, "files": one.files,
            "accent": one.view.accent, "view": said_of(one.view.view), "small": said_of(one.view.small)}


async def made_articles(patterns: Sequence[Pattern], common: Stationery, small: float, title: str) -> tuple[dict[str, tuple[Article, ...]], list[dict[str, float]]]:
    """The articles of patterns by slug, and how wide the beads of their charts can be. Raises FindingsError where words do not rebuild their chart."""
    contents = await workshop().results(ArticlesOrder(printed(pattern), common, small, title) for pattern in patterns)
    found = [json.loads(content) for content in contents]
    for pattern, said in zip(patterns, found):
        refuse(pattern, said["wrong"])
    return {pattern.slug: tuple(_article(pattern, one) for one in said["articles"]) for pattern, said in zip(patterns, found)}, [said["fits"] for said in found]


def _article(pattern: Pattern, said: Mapping) -> Article:
    view = Section(pattern.slug, pattern.title, pattern.version, pattern.summary, pattern.level, said["accent"], picture_of(said["view"]), Markup(""), small=picture_of(said["small"]))
    return Article(Variant(said["name"], said["hand"], said["is_mirrored"], pattern), view, Markup(said["html"]), said["files"])


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
