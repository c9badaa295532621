"""patterns/releases.yaml: what was published, oldest first. `booklet release` adds to its end, and lint holds the patterns against it.

A copy of each pattern file as it was released lies in patterns/releases/, so that corrections can be told row by row.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from typing import NamedTuple

from ..craft.tally import hand_counts, tally
from ..findings import Finding, Mark, Severity
from .book import given
from .content import facts, printed, stitched
from .nodes import LIST, compose
from .pattern import Pattern
from .reader import Reader
from .records import Form, Many, Named, Record, entry
from .schema import COUNTED, KEY
from .values import SLUG, VERSION, Shaped, Text, Whole

FOLDER = "releases"         # under patterns/
MOST_VALUES = 200_000       # of the file
_HASH = Shaped("[0-9a-f]{16}", "bad-content", "16 digits or letters from a to f, as booklet release wrote them", 16)


class ReleaseEntry(Form):
    """One thing that was published: a pattern, or a book of patterns."""

    pattern: str | None = entry(SLUG, "the pattern that was published")
    version: str | None = entry(VERSION, "its version")
    stitched: str | None = entry(_HASH, "a short mark of everything that is stitched")
    printed: str | None = entry(_HASH, "a short mark of everything that is printed")
    counted: Mapping[str, int | None] | None = entry(Named(Whole(), "", "base, rows, strands and beads are counted", lambda: COUNTED), "its counts, for one piece")
    beads: Mapping[str, int | None] | None = entry(Named(Whole(), KEY, "a bead key is one letter or digit"), "beads of each key in one piece")
    facts: Mapping[str, str | None] | None = entry(Named(Text(2000), "[a-z]+", "the name of a fact is one word"), "what else a maker goes by")
    book: str | None = entry(Text(200), "or the edition of the book that was published")
    patterns: Mapping[str, str | None] | None = entry(Named(VERSION, SLUG.pattern, "the name of a pattern", most=5000), "the version of every pattern in it")


RELEASES = Many(Record(ReleaseEntry), 50_000)


class Release(NamedTuple):
    """A pattern as it was published."""

    slug: str
    version: str
    stitched: str
    printed: str
    counted: Mapping[str, int]
    beads: Mapping[str, int]      # of one piece, by key
    facts: Mapping[str, str]
    mark: Mark

    def is_newer_than(self, version: str) -> bool:
        return order(self.version) > order(version)

    @property
    def copy(self) -> str:
        """The file as it was released, from the workspace on."""
        return f"patterns/{FOLDER}/{self.slug}-{self.version}.yaml"


class BookRelease(NamedTuple):
    """A book as it was published."""

    edition: str
    patterns: Mapping[str, str]   # version by slug
    mark: Mark


class Releases(NamedTuple):
    """Everything that was published, oldest first."""

    patterns: tuple[Release, ...] = ()
    books: tuple[BookRelease, ...] = ()

    def last(self, slug: str) -> Release | None:
        """The newest release of a pattern."""
        return max((one for one in self.patterns if one.slug == slug), key=lambda one: order(one.version), default=None)

    def at(self, slug: str, version: str) -> Release | None:
        """The release of a pattern in a version; 1.0 and 1 are the same."""
        return next((one for one in self.patterns if one.slug == slug and order(one.version) == order(version)), None)

    def before(self, slug: str, version: str) -> Release | None:
        """The newest release of a pattern that is older than a version."""
        older = (one for one in self.patterns if one.slug == slug and order(one.version) < order(version))
        return max(older, key=lambda one: order(one.version), default=None)

    def book_before(self, versions: Mapping[str, str]) -> BookRelease | None:
        """The newest release of the book that is not the one with these versions of its patterns."""
        return next((one for one in reversed(self.books) if one.patterns != versions), None)


def order(version: str) -> tuple[int, ...]:
    """What versions are compared by: 1.10 is newer than 1.9, and 1.0 is 1."""
    numbers = [int(number) for number in version.split(".") if number.isdecimal()]
    while numbers and numbers[-1] == 0:
        numbers.pop()
    return tuple(numbers)


def read_releases(text: str, file: str) -> tuple[Releases, list[Finding]]:
    """Read the file; entries with faults are left out and have their findings."""
    document = compose(text, file, MOST_VALUES)
    reader = Reader(document)
    if document.root is None:
        return Releases(), reader.findings
    if document.root.kind != LIST:
        reader.find(document.root, "wrong-type", "the file of releases must be a list", "booklet release writes it")
        return Releases(), reader.findings
    entries = RELEASES.read(document.root, reader, ()) or ()
    patterns, books = [], []
    for number, made in enumerate(entries, 1):
        mark = reader.marks[(number,)]
        if made is None:
            continue
        if made.book and made.patterns is not None:
            books.append(BookRelease(made.book, given(made.patterns), mark))
        elif made.pattern and made.version and made.stitched and made.printed:
            patterns.append(Release(made.pattern, made.version, made.stitched, made.printed, given(made.counted), given(made.beads), given(made.facts), mark))
        elif not any(finding.mark.line >= mark.line for finding in reader.findings):
            reader.add([Finding(mark, Severity.ERROR, "missing-field", "this entry has neither pattern, version, stitched and printed nor book and patterns")])
    return Releases(tuple(patterns), tuple(books)), reader.findings


def entry_of(pattern: Pattern) -> str:
    """The text that releases a pattern, to be added to the end of the file."""
    counts = {line.key: line.piece for line in tally(pattern.piece).lines}
    return "".join((
        f"- pattern: {pattern.slug}\n  version: {_text(pattern.version)}\n  stitched: {_text(stitched(pattern))}\n  printed: {_text(printed(pattern))}\n",
        f"  counted: {_group(hand_counts(pattern.piece))}\n  beads: {_group(counts)}\n",
        "  facts:\n", *(f"    {name}: {_text(text)}\n" for name, text in facts(pattern).items())))


def entry_of_book(edition: str, versions: Mapping[str, str]) -> str:
    """The text that releases a book with these versions of its patterns."""
    return f"- book: {_text(edition)}\n  patterns:\n" + "".join(f"    {slug}: {_text(version)}\n" for slug, version in versions.items())


def _group(values: Mapping[str, int]) -> str:
    """Fields on one line. A key that YAML might take for something else stands in quotes."""
    return "{" + ", ".join(f"{name if name.isalpha() and len(name) > 1 else _text(name)}: {count}" for name, count in values.items()) + "}"


def _text(text: str) -> str:
    """A text in double quotes, which YAML reads as JSON does."""
    return json.dumps(text, ensure_ascii=False)
