"""Front and back pages: Markdown files in patterns/pages/, and the pages that come with booklet: on charts and words, and on techniques."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace

from markupsafe import Markup

from ..craft.language import spoken
from ..errors import FindingsError
from ..findings import Finding, Severity
from ..lint.placeholders import PLACEHOLDER
from ..source.files import mark_at, read_file
from ..source.languages import ENGLISH, base_of
from ..source.workspace import Workspace
from .passages import Passage, passage
from .prose import prose
from .techniques import TECHNIQUES, with_pictures, with_sizes
from .templates import text_of

PAGES = "patterns/pages"
BEGIN = "before-you-begin"
GLOSSARY = "glossary"
SHIPPED = (BEGIN, TECHNIQUES, GLOSSARY)   # pages that come with booklet, in the order in which a book has them; the last stands at its back


@dataclass(frozen=True)
class Page:
    """A page of prose."""

    slug: str
    title: str
    html: Markup


def page(workspace: Workspace, name: str, hand: str = "", times: float = 1.0) -> Page:
    """One page, with step pictures for this hand and so many times as large as in small type: the workspace's own file, of the folder of the language if it has one, or ours of that name. Raises FindingsError where it cannot be read."""
    here, written = base_of(spoken().tag), base_of(workspace.book.language)
    file = next((file for file in (f"{here}/{name}.md", f"{name}.md") if (workspace.root / PAGES / file).is_file()), f"{name}.md")
    if not (workspace.root / PAGES / file).is_file() and name in SHIPPED:
        shipped = made(name, with_sizes(text_of(workspace.root, f"pages/{name}.md" if here == ENGLISH else f"pages/{here}/{name}.md")))
        return replace(shipped, html=with_pictures(shipped.html, hand, times))
    text, findings = read_file(workspace.root / PAGES / file, workspace.root)
    if text is None:
        raise FindingsError(findings)
    values = book_values(workspace)
    unknown = [match for match in PLACEHOLDER.finditer(text) if match[1] not in values]
    if unknown:
        raise FindingsError(_unknown(f"{PAGES}/{file}", text, match) for match in unknown)
    foreign = here != written and file == f"{name}.md"
    return made(name, passage(text, workspace.book.language) if foreign else text, values)


def made(name: str, text: str, values: dict[str, str] | None = None) -> Page:
    """A page of Markdown; its title is its first heading."""
    title = re.search(r"^# (.+)$", text, re.MULTILINE)
    named = title[1].strip() if title else name.replace("-", " ").capitalize()
    return Page(name, passage(named, text.lang) if isinstance(text, Passage) else named, prose(text, values or {}))


def book_values(workspace: Workspace) -> dict[str, str]:
    """What placeholders of a page may name."""
    book = workspace.book
    return {"title": book.title, "author": book.author, "patterns": str(len(workspace.patterns))}


def front_pages(workspace: Workspace, hand: str = "", times: float = 1.0) -> tuple[Page, ...]:
    """The book's front pages; those that come with booklet stand last unless the book places them."""
    return tuple(page(workspace, name, hand, times) for name in (*workspace.book.front, *_more(workspace, BEGIN, TECHNIQUES)))


def back_pages(workspace: Workspace) -> tuple[Page, ...]:
    """The book's back pages, and the glossary unless the book places it, or has a pattern of that name."""
    return tuple(page(workspace, name) for name in (*workspace.book.back, *(name for name in _more(workspace, GLOSSARY) if name not in workspace.patterns)))


def _more(workspace: Workspace, *names: str) -> list[str]:
    """Those of our pages that the book does not place itself."""
    return [name for name in names if name not in (*workspace.book.front, *workspace.book.back)]


def _unknown(file: str, text: str, match: re.Match) -> Finding:
    return Finding(mark_at(text, match.start(), file, len(match[0])), Severity.ERROR, "unknown-placeholder",
                   f"the placeholder {match[1]!r} is not known on a page", "a page may name title, author and patterns")
