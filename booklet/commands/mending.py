"""Mending pattern files in place, and the changes as a diff."""

from __future__ import annotations

import os
from collections.abc import Iterator
from difflib import unified_diff
from pathlib import Path
from typing import NamedTuple

from ..bind.files import write_file
from ..lint.fixes.lines import kept_lines
from ..lint.fixes.mend import mended
from ..source.files import read_file
from ..source.workspace import load
from .asked import Asked, patterns_of

MARK = "\ufeff"   # a byte order mark, which a file that has one keeps


class Change(NamedTuple):
    """A file before and after."""

    file: Path
    name: str     # as findings call it
    old: str
    new: str


def changes(folder: Path, asked: Asked, runs: bool) -> Iterator[Change]:
    """Every file that mending changes; a file that cannot be read is left to the findings."""
    for root, files in asked.items():
        book = load(root, []).book
        for file in patterns_of(root, files):
            old, _ = read_file(file, root)
            if old is not None:
                new = mended(old, file.stem, book, runs)
                if new != old:
                    yield Change(file, os.path.relpath(file, folder).replace(os.sep, "/"), old, new)


def write(change: Change) -> None:
    """Write a changed file, whole or not at all."""
    data = change.file.read_bytes()
    start = MARK if data.startswith(MARK.encode()) else ""
    if data == (start + change.old).encode():   # else somebody has just saved it, and what they wrote stays
        write_file(Path(os.path.realpath(change.file)), (start + change.new).encode())


def diff(change: Change) -> Iterator[str]:
    """The change, line by line."""
    old, new = ([line.rstrip("\r\n") for line in kept_lines(text)] for text in (change.old, change.new))
    yield from unified_diff(old, new, change.name, change.name, lineterm="")
