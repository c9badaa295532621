"""The prose of a pattern: its summary, its notes and its own texts of steps, with the place of every phrase in the file."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cached_property
from typing import TYPE_CHECKING

from msgspec import Struct

from ..findings import Mark
from ..source.files import mark_at
from .placeholders import PLACEHOLDER

if TYPE_CHECKING:
    from .subject import Subject

_BLIND = re.compile(rf"{PLACEHOLDER.pattern}|\]\([^)\s]*\)|https?://\S+", re.DOTALL)   # what is not read as words
_END = re.compile(r"(?<=[.!?])[\s)]+|(?<=[;:])[\s)]+(?!it\b)|\n\s*\n|\n(?=\s*[-*#>] )")


class Passage(Struct, frozen=True, dict=True):
    """A piece of prose as a reader meets it."""

    name: str                  # "the notes", "the step fringe"
    written: str               # as it stands in the file, folded as YAML folds it
    words: str                 # the same with placeholders, addresses and signs of emphasis blanked out, each character in its place
    path: tuple[str, ...]      # of its field
    subject: Subject

    @property
    def filled_in(self) -> bool:
        """Whether placeholders are filled in here."""
        return self.path != ("summary",)

    def does(self, verb: str) -> str:
        """Name and verb: "the notes name", "the summary names"."""
        return f"{self.name} {verb}{'' if self.name == 'the notes' else 's'}"

    @cached_property
    def plain(self) -> str:
        """The words in small letters, with single spaces."""
        return " ".join(self.words.lower().split())

    def find(self, pattern: str, *signs: str) -> Iterator[re.Match]:
        """Every match of a regular expression in the words, in large or small letters.

        It has to have one of these `signs`, parts of `plain`: to make an expression takes longer than to search with it, and most texts need few.
        """
        if any(sign in self.plain for sign in signs):
            yield from re.finditer(pattern, self.words, re.IGNORECASE)

    def sentences(self) -> Iterator[tuple[int, str]]:
        """Sentences and parts of sentences up to a colon or semicolon, each with its offset. What follows with "it" belongs to the part before."""
        start = 0
        for end in _END.finditer(self.words):
            yield start, self.words[start:end.start()]
            start = end.end()
        yield start, self.words[start:]

    def mark(self, start: int, end: int) -> Mark:
        """The place of a phrase in the file; that of the whole text where it is written with escapes."""
        pattern = self.subject.pattern
        whole = pattern.mark(*self.path)
        phrase = re.compile(r"\s+".join(map(re.escape, self.written[start:end].split())))
        before = sum(1 for _ in phrase.finditer(self.written, 0, start))
        text = self.subject.text(pattern.file)
        lines = text.splitlines(keepends=True)
        first = len("".join(lines[:whole.line - 1])) + whole.column - 1
        for number, match in enumerate(phrase.finditer(text, first)):
            if number == before:
                return mark_at(text, match.start(), whole.file, len(match[0].splitlines()[0]))
        return whole


def passages(subject: Subject) -> Iterator[Passage]:
    """Every text of a pattern that is prose."""
    pattern = subject.pattern
    texts = [("the summary", pattern.summary, ("summary",)), ("the notes", pattern.notes, ("notes",))]
    texts += [(f"the step {name}", getattr(step, part), ("steps", name, part)) for name, step in pattern.steps.items() for part in ("before", "text", "after")]
    for name, written, path in texts:
        if written:
            yield Passage(name, written, _blanked(written), path, subject)


def _blanked(written: str) -> str:
    words = _BLIND.sub(lambda match: "\0" * len(match[0]), written)
    return words.replace("*", " ").replace("_", " ").replace("\N{RIGHT SINGLE QUOTATION MARK}", "'")
