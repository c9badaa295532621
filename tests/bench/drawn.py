"""A pattern file as its author has it before her: lines of text, and where rows, beads and strands stand in them."""

from __future__ import annotations

from typing import NamedTuple

from booklet.lint.fixes.lines import with_change
from booklet.source.book import Book
from booklet.source.chart import DrawnBead
from booklet.source.pattern import Pattern
from booklet.source.resolve import read_pattern


class Drawn(NamedTuple):
    """The text of a pattern file, and what it says."""

    text: str
    pattern: Pattern
    book: Book

    @property
    def lines(self) -> list[str]:
        return self.text.split("\n")

    def with_text(self, text: str) -> Drawn | None:
        """The same file with another text; None where it is no pattern any more."""
        pattern, _ = read_pattern(text, self.pattern.file, self.pattern.slug, self.book)
        return Drawn(text, pattern, self.book) if pattern else None

    def with_lines(self, changed: dict[int, str]) -> str:
        """The text with other lines, by their numbers from 1."""
        lines = self.lines
        for number, line in changed.items():
            lines[number - 1] = line
        return "\n".join(lines)

    def with_bead(self, bead: DrawnBead, key: str) -> str:
        return with_change(self.text, bead.mark, key)

    @property
    def chart_lines(self) -> list[tuple[DrawnBead, ...]]:
        """The lines of the body's chart, top line first."""
        return [line for row in self.pattern.chart.rows for line in row.lines]

    @property
    def strand_lines(self) -> list[int]:
        """Numbers of the lines that each write one strand; none where the fringe is drawn."""
        marks = {strand.mark.line for strand in self.pattern.written_strands}
        return sorted(marks) if len(marks) > 1 else []

    @property
    def columns(self) -> list[list[DrawnBead]]:
        """The strands of a drawn fringe, each from the top down."""
        return [] if self.strand_lines else [list(strand.beads) for strand in self.pattern.written_strands]

    def with_column(self, column: list[DrawnBead], keys: list[str]) -> str:
        """The text with other beads in a column of the drawn fringe, which may be a bead longer or shorter."""
        lines, first = self.lines, column[0].mark
        for depth in range(max(len(column), len(keys))):
            line = lines[first.line - 1 + depth].ljust(first.column)
            if "|" not in line:
                return self.text   # there is no room under the drawing
            key = keys[depth] if depth < len(keys) else " "
            lines[first.line - 1 + depth] = (line[:first.column - 1] + key + line[first.column:]).rstrip()
        return "\n".join(lines)
