"""Page numbers apart from pages, so that a fragment can move in the book without being set again.

A margin box whose content names a page counter is left empty in parts (it keeps its room), and is the only one that is filled on
the sheets of page numbers, which the join lays over the pages. Such a box holds nothing but numbers and fixed text.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence

from ...errors import UnreadableInput
from .orders import NumberedPage

_COMMENT = re.compile(r"/\*.*?\*/", re.DOTALL)
_PAGE_RULE = re.compile(r"@page\b([^{};]*)\{")
_CONTENT = re.compile(r"(?<![\w-])content\s*:\s*([^;}]*)")
_COUNTER = re.compile(r"counters?\(\s*(pages?)\b[^)]*\)")
_GROUND = re.compile(r"(?<![\w-])background(?:-[a-z]+)?\s*:[^;}]*;?")
BLANK = "booklet-blank"
MOST_PAGES = 10**8


def for_parts(style: str) -> str:
    """The style sheet for parts: boxes of page numbers are there and cannot be seen."""
    return _page_rules(style, lambda content: 'content: "000"; visibility: hidden' if _COUNTER.search(content) else None)


def for_folios(style: str, total: int, first: int) -> str:
    """The style sheet for sheets of page numbers: all other boxes and all grounds are gone, and blank pages are pages of a name.

    The first page of the book is page `first` of the sheet; 0 if it is not there.
    """
    def numbered(content: str) -> str:
        if not _COUNTER.search(content):
            return "content: none"
        if re.search(r"\b(?:string|element|target-\w+)\(", content):
            raise UnreadableInput(f"a margin box holds a page number together with running text: content: {content.strip()}",
                                  "give them a box each in the style sheet of pages")
        return "content: " + _COUNTER.sub(lambda match: f'"{total}"' if match[1] == "pages" else match[0], content)

    return _page_rules(style, numbered, lambda selector: selector.replace(":blank", f" {BLANK}").replace(":first", f":nth({first})"), lambda rule: _GROUND.sub("", rule))


def are_decimal(style: str) -> bool:
    """Whether a style sheet counts pages in no other way than in decimal numbers."""
    return not any("," in match[0] for match in _COUNTER.finditer(style))


def folio_pages(pages: Sequence[NumberedPage]) -> str:
    """Empty pages with these numbers, of these types. Numbers that no book has, which are laid out as samples, stay on one line."""
    names = [BLANK if page.blank else page.name for page in pages]
    rules = "".join(f"@page :nth({at}) {{ counter-reset: page {page.number}; {'white-space: nowrap' if page.number > MOST_PAGES else ''} }}" for at, page in enumerate(pages, 1))
    rows = (f'<div style="break-before: page{f"; page: {name}" if name else ""}"></div>' for name in names)
    return f"<style>{rules}</style>" + "".join(rows)


def _page_rules(style: str, content: Callable[[str], str | None], selector: Callable[[str], str] = lambda text: text,
                rule: Callable[[str], str] = lambda text: text) -> str:
    """The style sheet with every content of a margin box as `content` gives it; None leaves one as it is."""
    style, made, at = _COMMENT.sub("", style), [], 0
    while match := _PAGE_RULE.search(style, at):
        end = _closing(style, match.end())
        inner = _CONTENT.sub(lambda found: content(found[1]) or found[0], style[match.end():end])
        made += [style[at:match.start()], f"@page{selector(match[1])}{{{rule(inner)}"]
        at = end
    return "".join([*made, style[at:]])


def _closing(style: str, at: int) -> int:
    """The place of the brace that closes a rule."""
    depth = 1
    for match in re.compile(r"[{}]|\"[^\"]*\"|'[^']*'").finditer(style, at):
        depth += {"{": 1, "}": -1}.get(match[0], 0)
        if not depth:
            return match.start()
    raise UnreadableInput("a page rule of the style sheet is never closed", "close its brace")
