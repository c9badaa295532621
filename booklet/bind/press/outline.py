"""Bookmarks of a book, which come one by one with their levels, as a tree."""

from __future__ import annotations

from typing import NamedTuple


class Bookmark(NamedTuple):
    """One entry; `place` is where it leads, as PDF."""

    title: str
    place: str
    closed: bool
    below: list[Bookmark]


class Outline:
    """The tree that grows. A level that is left out between two headings makes no empty step."""

    def __init__(self) -> None:
        self.top: list[Bookmark] = []
        self._open: list[tuple[int, list[Bookmark]]] = []   # level of each open entry, and what is below it

    def add(self, level: int, title: str, place: str, closed: bool) -> None:
        """Put an entry below the last one of a higher level."""
        while self._open and self._open[-1][0] >= level:
            self._open.pop()
        entry = Bookmark(title, place, closed, [])
        (self._open[-1][1] if self._open else self.top).append(entry)
        self._open.append((level, entry.below))
