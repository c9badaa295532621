"""All mendings, one after the other, each proved before it is kept."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from msgspec.structs import asdict

from ...source.book import Book
from ...source.pattern import Pattern
from ...source.resolve import read_pattern
from .counts import right_counts
from .field_order import in_order
from .fringe import as_runs
from .row_numbers import right_numbers

Mending = Callable[[str, Pattern], Iterator[str]]   # the texts that would be right, the best first

# Where and how a thing is written, not what it is.
_WRITING = {"marks", "chart", "written_strands", "hanger_beads"}


def mended(text: str, slug: str, book: Book, runs: bool = False) -> str:
    """The text with right row numbers, right counts and its fields in order; with `runs` a drawn fringe as run text too.

    A text that holds no readable pattern comes back as it is.
    """
    text = _made(text, slug, book, right_numbers)
    text = _made(text, slug, book, right_counts, {"counted"})
    if runs:
        text = _made(text, slug, book, as_runs)
    return _made(text, slug, book, in_order)


def _made(text: str, slug: str, book: Book, mending: Mending, may_change: set[str] = frozenset()) -> str:
    """The first text of a mending that says the same as before; the old text if there is none."""
    before, found = _read(text, slug, book)
    if before is None or before.piece is None:
        return text
    for better in mending(text, before):
        after, still = _read(better, slug, book)
        if after is not None and len(still) <= len(found) and _said(before, may_change) == _said(after, may_change):
            return better
    return text


def _read(text: str, slug: str, book: Book) -> tuple[Pattern | None, list]:
    return read_pattern(text, slug, slug, book)


def _said(pattern: Pattern, but: set[str]) -> dict:
    return {name: value for name, value in asdict(pattern).items() if name not in _WRITING | but}
