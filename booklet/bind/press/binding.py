"""A document in parts to one PDF: every part is set on its own, then all are joined."""

from __future__ import annotations

import asyncio
import json
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from ...errors import UnreadableInput
from .fragment import Fragment, unpacked
from .join import Join
from .orders import FoliosOrder, FontsOrder, PartOrder, Setting, SidesOrder
from .parts import Document, Part
from .workshop import Workshop

SHEET = 24     # page numbers that are made at a time
ROUNDS = 4     # in which page numbers and the parts that print them must have settled
OTHER = {"left": "right", "right": "left"}


@dataclass(frozen=True)
class Copy:
    """What a document is made of: its parts, what links in it lead to, and the pictures by their address."""

    document: Document
    titles: Mapping[str, str]
    files: Mapping[str, bytes]
    setting: Setting


@dataclass(frozen=True)
class Bound:
    """A PDF, and the packed fragments that it was joined from."""

    content: bytes
    parts: list[bytes]
    fonts: bytes


def bind(copy: Copy, workshop: Workshop) -> bytes:
    """The PDF of a document. Raises UnreadableInput where it cannot be set."""
    return asyncio.run(bound(copy, workshop)).content


async def bound(copy: Copy, workshop: Workshop) -> Bound:
    """As `bind`, beside other work."""
    parts = [part.linked(copy.titles) for part in copy.document.parts]
    placing = _Placing(copy, parts, workshop)
    placed = await placing.settled()
    _check_links(placed, copy.titles)
    sheets = [unpacked(content) for content in await workshop.results(_folio_orders(copy.setting, placed))]
    numbers = (_stream(sheet, page) for sheet in sheets for page in sheet.pages)
    fonts = await workshop.result(_fonts(copy.setting, [*placed, *sheets]))
    joined = Join(unpacked(fonts))
    for content in placing.contents:
        part = unpacked(content)
        joined.add(part, [next(numbers) for _ in part.pages])
    return Bound(joined.finished(copy.document.about), placing.contents, fonts)


class _Placing:
    """Finds the pages of all parts: which side each begins on, and the page numbers that some of them print."""

    def __init__(self, copy: Copy, parts: Sequence[Part], workshop: Workshop) -> None:
        self.copy, self.parts, self.workshop = copy, parts, workshop
        self.forced = [""] * len(parts)
        self.counts = [1] * len(parts)
        self.contents: list[bytes] = []    # packed fragments
        self.placed: list[Fragment] = []   # the same, without their objects

    async def settled(self) -> list[Fragment]:
        """The fragments of all parts, set for where they stand."""
        openings = tuple(sorted({part.opening for part in self.parts}))
        sides = json.loads(await self.workshop.result(SidesOrder(self.copy.setting, openings)))
        self.forced = [sides[part.opening] for part in self.parts]
        for _ in range(ROUNDS):
            wanted = self._orders()
            self.contents = await self.workshop.results(wanted)
            self.placed = [replace(unpacked(content), objects=[], streams={}) for content in self.contents]
            self.counts = [len(part.pages) for part in self.placed]
            if self._orders() == wanted:
                return self.placed
        raise UnreadableInput("the page numbers do not settle: a part that prints one takes more or fewer pages with each new number",
                              "leave more room for the numbers")

    def _orders(self) -> list[PartOrder]:
        numbers, orders, pages = self._numbers(), [], 0
        for at, part in enumerate(self.parts):
            side = self.forced[at] or ("right" if pages % 2 == 0 else "left")
            following = self.forced[at + 1] if at + 1 < len(self.parts) else ""
            html = part.numbered(numbers)
            orders.append(PartOrder(self.copy.setting, html, side, following, {name: content for name, content in self.copy.files.items() if f'"{name}"' in html}))
            pages += self.counts[at]
        return orders

    def _numbers(self) -> dict[str, int]:
        """Page numbers by id. Before anything is set, each part is taken to be a page long."""
        numbers, start = {}, 1
        for at, part in enumerate(self.parts):
            if self.placed:
                for name, (page, *_) in self.placed[at].names.items():
                    numbers.setdefault(name, start + int(page))
            elif part.id:
                numbers.setdefault(part.id, start)
            start += self.counts[at]
        if not self.placed:
            for part in self.parts:
                numbers |= {name: numbers.get(name, 1) for name in part.folios}
        return numbers


def _check_links(placed: Sequence[Fragment], titles: Mapping[str, str]) -> None:
    known = {name for part in placed for name in part.names}
    for part in placed:
        for name in part.links:
            if name not in known:
                raise UnreadableInput(f"a link leads to {name!r}, which is no place of this book", "give the id of a section")


def _fonts(setting: Setting, placed: Sequence[Fragment]) -> FontsOrder:
    """One font of each face for the whole book, with the glyphs that any part uses."""
    named = {}
    for part in placed:
        for name, face in part.faces.items():
            before = named.get(name)
            named[name] = replace(face, glyphs={**before.glyphs, **face.glyphs}, widths={**before.widths, **face.widths}) if before else face
    return FontsOrder(setting, tuple((name, face.family, face.weight, face.italic, tuple((glyph, text, face.widths[glyph]) for glyph, text in sorted(face.glyphs.items())))
                                     for name, face in sorted(named.items())))


def _folio_orders(setting: Setting, placed: Sequence[Fragment]) -> list[FoliosOrder]:
    kinds = [(page["side"], page["name"], page["blank"]) for part in placed for page in part.pages]
    total = len(kinds) if "counter(pages" in setting.style else 0
    return [FoliosOrder(setting, first + 1, total, tuple(kinds[first:first + SHEET])) for first in range(0, len(kinds), SHEET)]


def _stream(sheet: Fragment, page: dict) -> bytes:
    """The content of one sheet's page: what draws its number."""
    match = re.search(rb"/Contents \xffo(\d+);", sheet.objects[page["object"]])
    return sheet.streams[int(match[1])]
