"""A document in parts to one PDF: every part is set on its own, then all are joined.

Books can be large, so nothing holds more than a few parts at a time: their HTML is asked for when they are set, the set pages lie in the
workshop, and the PDF grows in a file.
"""

from __future__ import annotations

import asyncio
import json
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import partial
from itertools import chain, islice
from typing import NamedTuple

from ...errors import UnreadableInput
from .fragment import Face, unpacked
from .join import FIRST_KEY, FIRST_OBJECT, Join
from .link import Extent, LinkOrder, extent, unpacked_link
from .metadata import About
from .orders import FontsOrder, Held, PartOrder, Setting, SidesOrder
from .page_numbers import page_numbers
from .parts import Document
from .scratch import Scratch
from .workshop import Later, Workshop

LIKELY = 100   # a page number that is as wide as most
ROUNDS = 4     # in which page numbers and the parts that print them must have settled


@dataclass(frozen=True)
class Copy:
    """What a document is made of: its parts, what links in it lead to, and the pictures by their address."""

    document: Document
    titles: Mapping[str, str]
    files: Mapping[str, bytes]
    setting: Setting


@dataclass(frozen=True)
class Bound:
    """All that a PDF is joined from: its fragments, packed, one at a time, the same with their places in the file, and what draws the number of each page."""

    parts: Sequence[Held]
    links: Sequence[Later]
    fonts: bytes
    numbers: Iterator[bytes]
    about: About

    async def joined(self) -> Scratch:
        """The PDF. It can be asked for once; whoever works beside it gets a turn after every part."""
        made = Scratch()
        join = Join(made.file)
        for link in self.links:
            part = unpacked_link(link.make())
            join.add(part, list(islice(self.numbers, len(part.pages))))
            await asyncio.sleep(0)
        join.finish(unpacked(self.fonts), self.about)
        return made


def bind(copy: Copy, workshop: Workshop) -> bytes:
    """The PDF of a document. Raises UnreadableInput where it cannot be set."""
    async def whole() -> Scratch:
        return await (await bound(copy, workshop)).joined()

    return asyncio.run(whole()).read()


async def bound(copy: Copy, workshop: Workshop) -> Bound:
    """The set parts of a document, made beside other work. Raises UnreadableInput where one cannot be set."""
    placing = _Placing(copy, workshop)
    placed = await placing.settled()
    _check_links(placed)
    parts = [Held((key,), partial(placing.taken, at)) for at, key in enumerate(placing.keys)]
    numbers, links = await asyncio.gather(page_numbers(copy.setting, [page for part in placed for page in part.pages], workshop), _linked(parts, placed, workshop))
    fonts = await workshop.result(_fonts(copy.setting, chain(numbers.faces, (unpacked(part.load()).faces for part in parts))))
    return Bound(parts, links, fonts, numbers.streams, copy.document.about)


async def _linked(parts: Sequence[Held], placed: Sequence[_Head], workshop: Workshop) -> list[Later]:
    """The parts with their places in the file, one behind the other."""
    orders, base, key = [], FIRST_OBJECT, FIRST_KEY
    for part, head in zip(parts, placed):
        orders.append(Later(partial(LinkOrder, part, base, key)))
        base, key = base + head.extent.objects, key + head.extent.keys
    return [Later(partial(workshop.take, name, order)) for order, (name, _) in zip(orders, await workshop.each(orders, len))]


class _Place(NamedTuple):
    """All that the HTML of a part does not say about how it is to be set."""

    side: str
    following: str
    numbers: tuple[tuple[str, int], ...]   # page numbers that it prints


class _Head(NamedTuple):
    """What the rest of a book has to know of a set part."""

    pages: list
    names: Mapping[str, Sequence[float]]
    links: Sequence[str]
    extent: Extent


class _Placing:
    """Finds the pages of all parts: which side each begins on, and the page numbers that some of them print."""

    def __init__(self, copy: Copy, workshop: Workshop) -> None:
        self.copy, self.parts, self.workshop = copy, copy.document.parts, workshop
        self.forced = [""] * len(self.parts)
        self.places: list[_Place | None] = [None] * len(self.parts)   # where each was set
        self.placed: list[_Head | None] = [None] * len(self.parts)
        self.keys = [""] * len(self.parts)

    async def settled(self) -> list[_Head]:
        """What is to be known of all parts, set for where they stand."""
        openings = tuple(sorted({part.known.opening for part in self.parts}))
        sides = json.loads(await self.workshop.result(SidesOrder(self.copy.setting, openings)))
        self.forced = [sides[part.known.opening] for part in self.parts]
        await self._set(range(len(self.parts)))   # those that print page numbers show by it how many pages they take
        for _ in range(ROUNDS):
            changed = [at for at, place in enumerate(self.wanted()) if place != self.places[at]]
            if not changed:
                return self.placed
            await self._set(changed)
        raise UnreadableInput("the page numbers do not settle: a part that prints one takes more or fewer pages with each new number",
                              "leave more room for the numbers")

    async def _set(self, which: Sequence[int]) -> None:
        wanted = self.wanted()
        for at in which:
            self.places[at] = wanted[at]
        orders = [Later(partial(self.order, at), self.parts[at].known.length) for at in which]
        for at, (key, head) in zip(which, await self.workshop.each(orders, _head)):
            self.keys[at], self.placed[at] = key, head

    def taken(self, at: int) -> bytes:
        """A set part, packed."""
        return self.workshop.take(self.keys[at], Later(partial(self.order, at)))

    def order(self, at: int) -> PartOrder:
        """The order of a part for its place."""
        place = self.places[at]
        part = self.parts[at]
        titles = {name: self.copy.titles[name] for name in part.known.links if name in self.copy.titles}
        files = {name: self.copy.files[name] for name in part.known.files if name in self.copy.files}
        html = Held((part.known.digest, titles, place.numbers), partial(part.printed, titles, dict(place.numbers)))
        return PartOrder(self.copy.setting, html, place.side, place.following, files)

    def wanted(self) -> list[_Place]:
        """Where each part has to stand, as far as is known. What is not set yet is taken to be a page long."""
        numbers, wanted, pages = self._numbers(), [], 0
        for at, part in enumerate(self.parts):
            side = self.forced[at] or ("right" if pages % 2 == 0 else "left")
            following = self.forced[at + 1] if at + 1 < len(self.parts) else ""
            wanted.append(_Place(side, following, tuple((name, _number(name, numbers)) for name in part.known.folios)))
            pages += self._count(at)
        return wanted

    def _numbers(self) -> dict[str, int]:
        """Page numbers by id; all alike as long as a part is not set yet."""
        if None in self.placed:
            return {name: LIKELY for part in self.parts for name in part.known.folios}
        numbers, start = {}, 1
        for head in self.placed:
            for name, (page, *_) in head.names.items():
                numbers.setdefault(name, start + int(page))
            start += len(head.pages)
        return numbers

    def _count(self, at: int) -> int:
        return len(self.placed[at].pages) if self.placed[at] else 1


def _number(name: str, numbers: Mapping[str, int]) -> int:
    if name not in numbers:
        raise UnreadableInput(f"a page number is asked for {name!r}, which is no place of this book", "give the id of a section")
    return numbers[name]


def _head(content: bytes) -> _Head:
    fragment = unpacked(content)
    return _Head([(page["side"], page["name"], page["blank"]) for page in fragment.pages], fragment.names, list(fragment.links), extent(fragment))


def _check_links(placed: Sequence[_Head]) -> None:
    known = {name for part in placed for name in part.names}
    for part in placed:
        for name in part.links:
            if name not in known:
                raise UnreadableInput(f"a link leads to {name!r}, which is no place of this book", "give the id of a section")


def _fonts(setting: Setting, parts: Iterable[Mapping[str, Face]]) -> FontsOrder:
    """One font of each face for the whole book, with the glyphs that any part uses."""
    named: dict[str, Face] = {}
    for faces in parts:
        for name, face in faces.items():
            before = named.get(name)
            named[name] = replace(face, glyphs={**before.glyphs, **face.glyphs}, widths={**before.widths, **face.widths}) if before else face
    return FontsOrder(setting, tuple((name, face.family, face.weight, face.italic, tuple((glyph, text, face.widths[glyph]) for glyph, text in sorted(face.glyphs.items())))
                                     for name, face in sorted(named.items())))
