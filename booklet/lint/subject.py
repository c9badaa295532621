"""What a rule looks at: one pattern, or the book, in its workspace."""

from __future__ import annotations

from functools import cached_property

from msgspec import Struct

from ..craft.layout import Layout, layout
from ..craft.passes import Threaded, threaded
from ..craft.piece import Fault, Piece
from ..craft.places import places, strands_fit
from ..craft.stitches import faults
from ..source.book import Book
from ..source.chart import DrawnRow
from ..source.files import read_file
from ..source.languages import ENGLISH, base_of
from ..source.pattern import Pattern
from ..source.workspace import Workspace
from .alike import Alike, alike
from .passages import Passage, passages


class Subject(Struct, frozen=True, dict=True):
    """A pattern and the workspace it stands in; the pattern is None where the book as a whole is looked at."""

    workspace: Workspace
    pattern: Pattern | None = None

    @property
    def book(self) -> Book:
        return self.workspace.book

    @property
    def piece(self) -> Piece | None:
        return self.pattern.piece if self.pattern else None

    @cached_property
    def faults(self) -> tuple[Fault, ...]:
        """Why the body cannot be worked; empty if it can."""
        return faults(self.piece) if self.piece else ()

    @cached_property
    def threaded(self) -> tuple[Threaded, ...]:
        """Every bead with the threads that go through it; for a piece that can be worked."""
        return threaded(self.piece, self.pattern.thread)

    @cached_property
    def places(self) -> int:
        """Places for strands that the body offers."""
        return len(places(self.piece)) if self.piece else 0

    @cached_property
    def strands_fit(self) -> bool:
        """Whether the fringe has an entry for each place, and every loop both its places, or there is no fringe at all."""
        return self.piece is not None and self.pattern.fringe_places in (0, self.places) and strands_fit(self.piece)

    @cached_property
    def drawn_rows(self) -> dict[int, DrawnRow]:
        """Rows as drawn, by their number in working order."""
        chart = self.pattern.chart
        return dict(sorted(zip(chart.numbers(self.pattern.base), chart.rows)))

    @cached_property
    def layout(self) -> Layout:
        """Where every bead of the finished piece lies."""
        return layout(self.piece)

    @property
    def is_english(self) -> bool:
        """Whether the texts of the pattern, or of the book, are English: rules that read words know no other language."""
        return base_of(self.pattern.language if self.pattern else self.book.language) == ENGLISH

    @cached_property
    def alike(self) -> tuple[Alike, ...]:
        """Pairs of beads that look alike to some eye."""
        return tuple(alike(self))

    @cached_property
    def passages(self) -> tuple[Passage, ...]:
        """The prose of the pattern, where it is in English."""
        return tuple(passages(self)) if self.is_english else ()

    def text(self, name: str) -> str:
        """The text of a file of the workspace; empty where it cannot be read, which reading or binding reports."""
        return read_file(self.workspace.root / name, self.workspace.root)[0] or ""

    def has(self, need: str) -> bool:
        """Whether a rule that needs this, one of registry.NEEDS, can run."""
        return self._can_be_worked if need == "path" else self._there[need]

    @cached_property
    def _can_be_worked(self) -> bool:
        return self.piece is not None and not self.faults and self.strands_fit

    @cached_property
    def _there(self) -> dict[str, bool]:
        pattern = self.pattern is not None
        book = not pattern and bool(self.book.file)
        return {"pattern": pattern, "piece": self.piece is not None, "prose": book or pattern, "photo": pattern and self.pattern.photo is not None,
                "release": pattern and self.workspace.releases is not None, "book": book,
                "extras": _has_extras(self.pattern) if pattern else bool(self.book.severities)}


def _has_extras(pattern: Pattern) -> bool:
    """Whether a pattern has colourways, steps of its own, rules that it allows, several hangers, loops, twigs or charms."""
    return bool(pattern.colourways or pattern.steps or pattern.allowed or len(pattern.hangers) > 1 or any(
        strand.to or strand.hung or strand.turned for strand in pattern.written_strands))
