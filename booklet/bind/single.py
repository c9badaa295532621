"""One pattern bound alone, for sale: its own cover, everything it needs to be worked, licence and version."""

from __future__ import annotations

import asyncio
from collections.abc import Awaitable, Callable, Iterable
from functools import partial
from pathlib import Path

from markupsafe import Markup

from ..craft.language import _
from ..craft.pair import mirrored
from ..craft.piece import Piece
from ..errors import BookletError, WrongUse
from ..findings import Finding
from ..source.pattern import Pattern
from ..source.workspace import Workspace
from .book import shared, style, workable
from .edition import Edition, edition, editions
from .errata import errata_of
from .files import write_file
from .front import front_of
from .geometry import print_room, sheet
from .grey import greyed, greyed_photos
from .html import paper_setter
from .looking import seen_in
from .page_fit import Report, page_findings, seen_findings, unheard, without_errors
from .pages import SHIPPED, Page, page
from .pdf import typeset
from .photos import photos
from .press.scratch import Scratch
from .sections import sections
from .translated import printing
from .volume import volume


AT_ONCE = 16   # singles that are under way at a time: more than there are workers, and few enough for the memory
Done = Callable[[str, "list[Path] | BookletError"], None]


def build(workspace: Workspace, slug: str, name: str = "") -> list[Path]:
    """Build build/single/SLUG.pdf in the edition of this name, or in all. Raises the errors of booklet.errors."""
    return asyncio.run(_built(workspace, slug, name, unheard))


def build_each(workspace: Workspace, name: str, done: Done, report: Report = unheard) -> None:
    """Build the singles of all patterns, side by side. `done` is told of every pattern, in their order: the files, or why there are none.

    `report` is told what is found on the pages besides errors.
    """
    asyncio.run(side_by_side(workspace.patterns, partial(_built, workspace, name=name, report=report), done))


async def side_by_side(slugs: Iterable[str], build: Callable[[str], Awaitable[list[Path]]], done: Done) -> None:
    """Build singles, a few at a time. `done` is told of every one, in their order: the files, or why there are none."""
    room = asyncio.Semaphore(AT_ONCE)

    async def one(slug: str) -> list[Path] | BookletError:
        async with room:
            try:
                return await build(slug)
            except BookletError as error:   # the others are bound all the same
                return error

    tasks = [(slug, asyncio.create_task(one(slug))) for slug in slugs]
    for slug, task in tasks:
        done(slug, await task)


async def _built(workspace: Workspace, slug: str, name: str, report: Report) -> list[Path]:
    if slug not in workspace.patterns:
        raise WrongUse(f"there is no pattern {slug!r}")
    files, found = {}, []
    for on in editions(workspace.book, name):
        files |= await volume(workspace, on, slug, lambda on: bound(workspace, slug, on, found.extend))
    report(without_errors(workspace, found))
    return [write_file(workspace.root / "build" / "single" / file, content) for file, content in files.items()]


async def bound(workspace: Workspace, slug: str, on: Edition, report: Report = unheard) -> Scratch:
    """The PDF of a single in one edition, as it is typeset. `report` is told what is found on its pages."""
    pictures = photos(workspace.root, [workspace.patterns[slug]])
    whole = await typeset(await single_html(workspace, slug, on), workspace.root, greyed_photos(pictures) if on.grey else pictures, {}, on)
    seen, file = await asyncio.gather(seen_in(whole, sheet(on)), whole.joined())
    report(list(seen_findings(workspace, workspace.patterns[slug], seen, on)))
    return file


def fit_findings(workspace: Workspace, patterns: Iterable[Pattern]) -> list[Finding]:
    """What is wrong with the pages of patterns that would be bound alone. Raises the errors of booklet.errors."""
    return asyncio.run(_fit_findings(workspace, patterns))


async def _fit_findings(workspace: Workspace, patterns: Iterable[Pattern]) -> list[Finding]:
    on, room = edition(workspace.book), asyncio.Semaphore(AT_ONCE)

    async def one(pattern: Pattern) -> list[Finding]:
        async with room:
            found = list(page_findings(pattern, print_room(on)))
            if not any(finding.is_error for finding in found):
                await bound(workspace, pattern.slug, on, found.extend)
            return found

    return [finding for found in await asyncio.gather(*map(one, patterns)) for finding in found]


async def single_html(workspace: Workspace, slug: str, on: Edition) -> str:
    """The single as one HTML document for print."""
    with printing(workspace, on.language) as workspace:
        return await _html(workspace, slug, on)


async def _html(workspace: Workspace, slug: str, on: Edition) -> str:
    pattern = workable(workspace, [workspace.patterns[slug]], on.hand)[0]
    said = _("Pattern, version {version}", version=pattern.version)
    (section,), front_page, front = await asyncio.gather(
        sections(workspace, [pattern], on), front_of(_pieces(pattern), on, pattern.title, pattern.summary, [workspace.book.author, said]), _front_pages(workspace, on))
    errata = errata_of(workspace, pattern)
    setter = paper_setter(workspace.root, on, **shared(workspace))
    html = setter.fill("single.html.jinja", style=style(workspace.root, on), title=section.title, description=section.summary, single=section, patterns=[section],
                       front_page=front_page, sections=[Markup("<!--section-->")], front=front, errata=[errata] if errata else [])
    return (greyed(html) if on.grey else html).replace("<!--section-->", section.html)


async def _front_pages(workspace: Workspace, on: Edition) -> list[Page]:
    await asyncio.sleep(0)   # first let the workers have their orders
    return [page(workspace, name, on.hand, print_room(on).steps) for name in SHIPPED]


def _pieces(pattern: Pattern) -> list[Piece]:
    """What is shown at the front: one piece, or both of a pair."""
    if pattern.pieces == 1:
        return [pattern.piece]
    return [pattern.piece, mirrored(pattern.piece) if pattern.mirror else pattern.piece]
