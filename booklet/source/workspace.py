"""A folder of patterns: its book file, its pattern files, and what was wrong in reading them."""

from __future__ import annotations

import os
import re
from collections.abc import Iterable, Mapping
from pathlib import Path
from typing import TYPE_CHECKING, Any

from msgspec import Struct
from msgspec.structs import replace

from ..findings import Finding, Mark, Severity
from .book import Book, read_book
from .chart import DrawnChart
from .files import checked, decode, inside, name_in, read_file
from .pattern import Pattern
from .resolve import read_pattern
from .values import SLUG
from .wording import quoted, shown

if TYPE_CHECKING:
    from .releases import Releases

FOLDER = "patterns"
BOOK_FILE = "book.yaml"
RELEASES_FILE = "releases.yaml"
OTHER_FILES = (BOOK_FILE, RELEASES_FILE)   # YAML files of the folder that are no patterns


class Workspace(Struct, frozen=True):
    """All that was read. Patterns stand in the order of the book; those that it does not name follow by name."""

    root: Path
    book: Book
    patterns: Mapping[str, Pattern]
    slugs: tuple[str, ...]              # of every pattern file there is, readable or not
    findings: tuple[Finding, ...]
    releases: Releases | None = None    # None where nothing was published


Known = dict[str, tuple["str | None", "Book | None", tuple[Any, list[Finding]]]]   # what was read, by name of file: its text, the book that it was read for, and what came of them


def load(root: Path, only: Iterable[Path] | None = None, known: Known | None = None) -> Workspace:
    """Read a workspace; with `only`, just these pattern files of it. A folder without a book file has a book of defaults.

    Whoever reads it again and again hands in the same `known`, an empty dictionary at first: files with the same text are not parsed again.

    Nothing raises: a folder or file that cannot be read is a finding.
    """
    book, findings = _book(root, known)
    everything, misnamed = _listed(root)
    findings += misnamed if only is None else []
    patterns: dict[str, Pattern] = {}
    for file in everything if only is None else only:
        pattern, found = read_one(file, root, book, known)
        findings += found
        if pattern is not None:
            patterns[pattern.slug] = pattern
    rank = {slug: place for place, slug in reversed(list(enumerate(book.order)))}
    released, found = _releases(root)
    ordered = dict(sorted(patterns.items(), key=lambda entry: (rank.get(entry[0], len(rank)), entry[0])))
    return Workspace(root, book, ordered, tuple(file.stem for file in everything), tuple(findings + found), released)


def without_charts(workspace: Workspace) -> Workspace:
    """The workspace without the places of single beads, which only lint asks for: a third of what a large book takes."""
    patterns = {slug: replace(pattern, chart=DrawnChart(), written_strands=()) for slug, pattern in workspace.patterns.items()}
    return replace(workspace, patterns=patterns)


def load_text(root: Path, data: str | bytes, name: str) -> Workspace:
    """A workspace whose one pattern is a text that is no file of it, such as standard input; the book file of `root` holds for it."""
    book, findings = _book(root)
    released, _ = _releases(root)   # faults in it are not those of the text
    name = shown(name, 400)
    slug = re.sub("[^a-z0-9]+", "-", Path(name).stem.lower()).strip("-") or "pattern"
    pattern, found = read_text(data, name, slug, book)
    return Workspace(root, book, {slug: pattern} if pattern else {}, (slug,), tuple(findings + found), released)


def pattern_files(root: Path) -> list[Path]:
    """The pattern files of a workspace, by name."""
    return _listed(root)[0]


def read_one(file: Path, root: Path, book: Book, known: Known | None = None) -> tuple[Pattern | None, list[Finding]]:
    """Read one pattern file."""
    name = name_in(file, root)
    text, findings = read_file(file, root)
    if not re.fullmatch(SLUG.pattern, file.stem):
        findings.append(_about(name, "bad-file-name", f"the name of a pattern file must have {SLUG.words}", "rename it"))
    if text is None:
        return None, findings
    known = {} if known is None else known
    if known.get(name, ())[:2] != (text, book):   # a book is equal to itself alone
        known[name] = text, book, read_pattern(text, name, file.stem, book)
    pattern, found = known[name][2]
    findings += found
    if pattern is not None and pattern.photo is not None and not inside(root / FOLDER / pattern.photo.file, root):
        findings.append(Finding(pattern.mark("photo", "file"), Severity.ERROR, "outside-workspace",
                                f"photo.file leads outside the workspace; found {quoted(pattern.photo.file)}"))
    return pattern, findings


def read_text(data: str | bytes, name: str, slug: str, book: Book) -> tuple[Pattern | None, list[Finding]]:
    """Read one pattern that is no file of a workspace, such as standard input. `name` is what findings call it."""
    text, findings = decode(data, name) if isinstance(data, bytes) else checked(data, name)
    if text is None:
        return None, findings
    return read_pattern(text, name, slug, book)


def _book(root: Path, known: Known | None = None) -> tuple[Book, list[Finding]]:
    path, known = root / FOLDER / BOOK_FILE, {} if known is None else known
    name, there = name_in(path, root), os.path.lexists(path)
    text, findings = read_file(path, root) if there else (None, [])
    if there and text is None:
        return Book(name, broken=True), findings
    if known.get(name, ())[:2] != (text, None):
        known[name] = text, None, read_book(text, name) if there else (Book(), [])
    book, findings = known[name][2]
    return book, list(findings)


def _releases(root: Path) -> tuple[Releases | None, list[Finding]]:
    path = root / FOLDER / RELEASES_FILE
    if not os.path.lexists(path):
        return None, []
    text, findings = read_file(path, root)
    if text is None:
        return None, findings
    from .releases import read_releases   # loaded here, because a book that was never published does not need it

    return read_releases(text, name_in(path, root))


def _listed(root: Path) -> tuple[list[Path], list[Finding]]:
    """Pattern files by name, and findings about files that only look like some."""
    folder = root / FOLDER
    try:
        names = sorted(os.listdir(folder))
    except OSError as error:
        reason = (error.strerror or "").lower()
        return [], [_about(FOLDER, "unreadable-folder", f"the folder {FOLDER}/ cannot be read: {reason}", "work in the folder that holds it")]
    files, found = [], []
    for name in names:
        path = folder / name
        if name.startswith(".") or name in OTHER_FILES:
            continue
        if name.endswith(".yaml"):
            files.append(path)
        elif path.suffix.lower() in (".yaml", ".yml"):
            found.append(_about(name_in(path, root), "bad-file-name", f"this file is not read, because its name ends in {path.suffix}",
                                "let it end in .yaml"))
    return files, found


def _about(file: str, rule: str, message: str, hint: str = "") -> Finding:
    return Finding(Mark(file), Severity.ERROR, rule, message, hint)
