"""Strands, read back from their printed lines.

A line names beads in the order in which they are picked up. A twig stands in brackets; a charm is a word before its name.
"""

from __future__ import annotations

import re
from functools import total_ordering
from types import ModuleType

from msgspec import Struct

from .items import CannotRead

_TIMES = r"(\d+) × \["
_RUN = r"(\d+)([A-Za-z0-9])(?![A-Za-z0-9])"


class ReadLine(Struct, frozen=True):
    """Beads and what hangs between them, then end beads. A twig is a line among the items, a charm is "the" and its name."""

    items: tuple[str | ReadLine, ...] = ()
    end: tuple[str, ...] = ()

    @property
    def count(self) -> int:
        """Beads, twigs included."""
        return sum(item.count if isinstance(item, ReadLine) else len(item) == 1 for item in (*self.items, *self.end))


@total_ordering
class ReadStrand(Struct, frozen=True):
    """A strand as the words tell it: where it goes down and comes up, and its lines, both from the top down."""

    number: int
    down: int
    up: int
    line: ReadLine
    second: tuple[str, ...] | None = None   # of a twisted pair

    def __lt__(self, other: ReadStrand) -> bool:
        return self.number < other.number


def read_strand(line: str, grammar: ModuleType) -> ReadStrand:
    """Raises CannotRead where the line makes no sense."""
    match = re.fullmatch(grammar.STRAND, line)
    if not match:
        raise CannotRead(f"cannot read this line back: {line!r}")
    number, reader = int(match[1]), _Reader(match[6], line, grammar)
    down, up = (int(match[3]), int(match[4])) if match[3] else (number, number)
    if number not in (down, up):
        raise CannotRead(f"strand {number} is a loop that hangs at other places: {line!r}")
    told = reader.line()
    second = tuple(reader.plain(reader.items()))[::-1] if match[5] and reader.takes(f"; {grammar.UP}") else None
    reader.ends()
    if match[3] and told.end or bool(match[5]) != (second is not None):
        raise CannotRead(f"strand {number} has other parts than its kind has: {line!r}")
    count = told.count + len(second or ())
    if count != int(match[2]):
        raise CannotRead(f"strand {number} says {match[2]} beads but names {count}: {line!r}")
    return ReadStrand(number, down, up, told, second)


class _Reader:
    """Reads one text from left to right."""

    def __init__(self, text: str, whole: str, grammar: ModuleType) -> None:
        self.text, self.whole, self.grammar, self.at = text, whole, grammar, 0

    def takes(self, text: str) -> bool:
        """Step over a text, if it stands here."""
        found = self.text.startswith(text, self.at)
        self.at += len(text) if found else 0
        return found

    def ends(self) -> None:
        if self.at < len(self.text):
            raise CannotRead(f"cannot read {self.text[self.at:]!r} in this line: {self.whole!r}")

    def line(self) -> ReadLine:
        if self.text.startswith((self.grammar.END, f"; {self.grammar.UP}"), self.at) or self.at == len(self.text):
            items: list = []
            has_end = self.takes(self.grammar.END)
        else:
            items = self.items()
            has_end = self.takes(f"; {self.grammar.END}")
        return ReadLine(tuple(items), tuple(self.plain(self.items()) if has_end else ()))

    def items(self) -> list[str | ReadLine]:
        found = self._item()
        while self.takes(", "):
            found += self._item()
        return found

    def plain(self, items: list[str | ReadLine]) -> list[str]:
        """The items, none of which may be a twig."""
        if any(isinstance(item, ReadLine) for item in items):
            raise CannotRead(f"a twig stands where none can hang: {self.whole!r}")
        return items

    def _item(self) -> list[str | ReadLine]:
        if self.takes(self.grammar.TWIG):
            twig = self.line()
            self.plain(list(twig.items))
            return self._closed([twig])
        times = self._match(_TIMES)
        if times:
            return self._closed(self.items()) * int(times[1])
        run = self._match(_RUN)
        if run:
            return [run[2]] * int(run[1])
        charm = self._match(self.grammar.CHARM)
        if charm:
            return [f"the {charm[1]}"]
        raise CannotRead(f"cannot read {self.text[self.at:]!r} in this line: {self.whole!r}")

    def _closed(self, found: list[str | ReadLine]) -> list[str | ReadLine]:
        if not self.takes("]"):
            raise CannotRead(f"a bracket is never closed in this line: {self.whole!r}")
        return found

    def _match(self, pattern: str) -> re.Match | None:
        match = re.compile(pattern).match(self.text, self.at)
        self.at = match.end() if match else self.at
        return match
