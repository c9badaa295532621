"""What a rule looks at: one pattern, or the book, in its workspace."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

from ..craft.piece import Fault, Piece, faults

if TYPE_CHECKING:
    from ..source.pattern import Pattern
    from ..source.schema import Book
    from ..source.workspace import Workspace


@dataclass(frozen=True)
class Subject:
    """One pattern (None where a rule is about the book as a whole), the book (None if there is none)."""

    workspace: Workspace
    pattern: Pattern | None = None

    @property
    def book(self) -> Book | None:
        return self.workspace.book

    @property
    def piece(self) -> Piece | None:
        return self.pattern.piece if self.pattern else None

    @cached_property
    def faults(self) -> tuple[Fault, ...]:
        """Why the piece cannot be worked; empty if it can."""
        return faults(self.piece) if self.piece else ()

    def has(self, need: str) -> bool:
        """Whether a rule that needs this ("pattern", "piece", "path" or "book") can run."""
        if need == "book":
            return self.pattern is None and self.book is not None
        if need == "pattern":
            return self.pattern is not None
        return self.piece is not None and (need == "piece" or not self.faults)
