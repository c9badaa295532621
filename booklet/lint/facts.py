"""What prose may state about a pattern, computed: every number with the placeholder that stands for it."""

from __future__ import annotations

from functools import cached_property

from msgspec import Struct

from ..craft.size import Size, hanging_length, mass, size
from ..craft.tally import BeadTally, Tally, tally
from ..craft.thread import thread_use
from .subject import Subject


class Fact(Struct, frozen=True):
    """One computed number."""

    value: float
    said: str               # "the base row has 13"
    placeholder: str = ""   # its name, if there is one


class Facts:
    """The numbers of one pattern."""

    def __init__(self, subject: Subject) -> None:
        self.subject, self.pattern, self.piece = subject, subject.pattern, subject.piece

    @cached_property
    def widths(self) -> dict[int, int]:
        """Stitches of each row, by row number."""
        return {row.number: len(row.stitches) for row in self.piece.drawn}

    @property
    def base(self) -> Fact:
        return Fact(self.widths[1], f"the base row has {self.widths[1]}", "base.stitches")

    @property
    def rows(self) -> Fact:
        return Fact(len(self.widths), f"the body has {len(self.widths)}", "rows")

    @property
    def strands(self) -> Fact:
        count = len(self.piece.strands)
        return Fact(count, f"the fringe has {count}", "strands") if count else Fact(0, "the piece has no fringe")

    @property
    def drop(self) -> Fact:
        return Fact(self.piece.drop, f"a stitch has {self.piece.drop}", "drop")

    @property
    def top(self) -> Fact:
        """Stitches of the row that hangs highest."""
        row = self.piece.drawn[-1]
        return Fact(len(row.stitches), f"the top row, row {row.number}, has {len(row.stitches)}")

    @cached_property
    def tally(self) -> Tally:
        pattern = self.pattern
        return tally(self.piece, pattern.pieces, pattern.spare_percent, pattern.least_spare, pattern.pack_grams)

    @property
    def beads(self) -> Fact:
        return Fact(self.tally.beads, f"a piece has {self.tally.beads:,}", "beads.piece")

    @property
    def all_beads(self) -> Fact:
        total = self.tally.beads * self.pattern.pieces
        return Fact(total, f"{'both pieces have' if self.pattern.pieces == 2 else 'it has'} {total:,}", "beads.total")

    @cached_property
    def known_counts(self) -> frozenset[float]:
        """Every count of beads that is true of something in the pattern."""
        parts = [self.tally.body, self.tally.fringe, self.tally.hanger]
        lines = [count for line in self.tally.lines for count in (line.piece, line.total, line.to_buy)]
        strands = [count for strand in self.piece.strands for count in (len(strand.all), len(strand.beads))]
        rows = [width * self.piece.drop for width in self.widths.values()]
        whole = [self.beads.value, self.all_beads.value, sum(line.to_buy for line in self.tally.lines)]
        return frozenset((*parts, *(part * self.pattern.pieces for part in parts), *lines, *strands, *rows, *whole))

    def line(self, name: str) -> BeadTally | None:
        """The counts of the bead that these words name: the whole name, or its end where only one name ends so."""
        folded = name.casefold()
        whole = [line for line in self.tally.lines if line.bead.name.casefold() == folded]
        partly = [line for line in self.tally.lines if line.bead.name.casefold().endswith(f" {folded}")]
        found = whole or partly
        return found[0] if len(found) == 1 else None

    @cached_property
    def size(self) -> Size:
        return size(self.piece)

    @cached_property
    def strand_sizes(self) -> tuple[float, ...]:
        """mm of each strand."""
        return tuple(hanging_length(self.piece, strand) for strand in self.piece.strands)

    @property
    def mass(self) -> float:
        """Grams of one piece."""
        return mass(self.piece)

    @cached_property
    def threads(self) -> tuple[float, ...]:
        """mm of thread that parts of the work take; none where the piece cannot be worked."""
        uses = thread_use(self.piece, self.pattern.thread) if self.subject.has("path") else ()
        lengths = [use.length for use in uses]
        return (*lengths, sum(lengths), *(length * self.pattern.pieces for length in (*lengths, sum(lengths))))
