"""A folder of patterns: its book file, its pattern files, and what was wrong in reading them."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from pathlib import Path

from ..findings import Finding
from .book import Book, read_book
from .files import inside, name_in, read_file
from .pattern import Pattern, pattern_error, read_pattern
from .schema import SLUG

BOOK_FILE = "book.yaml"


@dataclass(frozen=True)
class Workspace:
    """All that was read. Patterns stand in the order of the book; those that it does not name follow by name."""

    root: Path
    book: Book
    patterns: Mapping[str, Pattern]
    slugs: tuple[str, ...]              # of every pattern file there is, readable or not
    findings: tuple[Finding, ...]


def pattern_files(root: Path) -> list[Path]:
    """The pattern files of a workspace, by name."""
    return sorted(path for path in (root / "patterns").glob("*.yaml") if path.name not in (BOOK_FILE, "releases.yaml"))


def load(root: Path, only: Iterable[Path] | None = None) -> Workspace:
    """Read a workspace; with `only`, just these pattern files of it. A folder without a book file has a book of defaults."""
    book, findings = Book(), []
    path = root / "patterns" / BOOK_FILE
    if path.is_file():
        text, found = read_file(path, root)
        findings += found
        if text is not None:
            read, found = read_book(text, name_in(path, root))
            book, findings = read or book, [*findings, *found]
    everything = pattern_files(root)
    files = everything if only is None else list(only)
    patterns = {}
    for file in files:
        pattern, found = read_one(file, root, book)
        findings += found
        if pattern is not None:
            patterns[pattern.slug] = pattern
    rank = {slug: n for n, slug in reversed(list(enumerate(book.order)))}
    ordered = dict(sorted(patterns.items(), key=lambda entry: (rank.get(entry[0], len(rank)), entry[0])))
    return Workspace(root, book, ordered, tuple(file.stem for file in everything), tuple(findings))


def read_one(file: Path, root: Path, book: Book) -> tuple[Pattern | None, list[Finding]]:
    """Read one pattern file."""
    name, slug = name_in(file, root), file.stem
    text, findings = read_file(file, root)
    if text is None:
        return None, findings
    if not re.fullmatch(SLUG, slug):
        findings.append(pattern_error(name, "bad-file-name", f"the file name {file.name} is not in small letters, digits and hyphens"))
    pattern, found = read_pattern(text, name, slug, book)
    if pattern is not None and pattern.photo is not None and not inside(root / "patterns" / pattern.photo.file, root):
        from ..findings import Severity
        found.append(Finding(pattern.mark("photo", "file"), Severity.ERROR, "outside-workspace", "photo.file leads outside the workspace"))
    return pattern, [*findings, *found]
