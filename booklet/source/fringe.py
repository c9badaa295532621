"""A fringe as written, a list of strands or a drawn chart, to strands from left to right.

Every place has its entry in the list; None stands for one that is left empty.
"""

from __future__ import annotations

from collections.abc import Collection, Sequence

from msgspec import Struct
from msgspec.structs import replace

from ..craft.strand import LOOP, TWIST
from ..findings import Finding
from .chart import Line, error, read_lines
from .runs import RULE, read_line, read_strand
from .strand_value import LoopOrTwist, StrandEntry
from .written import Written
from .written_strand import DrawnBead, DrawnCharm, WrittenStrand

Entries = tuple[WrittenStrand | None, ...]


class End(Struct, frozen=True):
    """The end of strands that have none of their own: beads, and charms between them."""

    beads: tuple[DrawnBead, ...] = ()
    charms: tuple[DrawnCharm, ...] = ()

    def on(self, strand: WrittenStrand) -> WrittenStrand:
        """The strand, with this end if it has none."""
        return strand if strand.end or strand.turned else replace(strand, end=self.beads, turned=self.charms)


def read_end(written: Written | None, keys: Collection[str]) -> tuple[End | None, list[Finding]]:
    """The end of every strand."""
    if written is None:
        return End(), []
    line, found = read_line(written, keys)
    return (End(line.beads, line.hung) if line else None), found


def read_strands(entries: Sequence[StrandEntry], end: End, keys: Collection[str]) -> tuple[Entries | None, list[Finding]]:
    """Strands from a list. `end`: the end of straight ones and twisted pairs that have none of their own."""
    strands, found = [], []
    for entry in entries:
        strand, wrong = _read(entry, end, keys)
        strands.append(strand)
        found += wrong
    return (None if found else tuple(strands)), found


def _read(entry: StrandEntry, end: End, keys: Collection[str]) -> tuple[WrittenStrand | None, list[Finding]]:
    if entry.other:
        return _loop(entry.other, keys) if entry.other.loop else _twist(entry.other, end, keys)
    if entry.text is None:
        return None, []
    strand, found = read_strand(entry.text, keys)
    return (end.on(strand) if strand else None), found


def _loop(other: LoopOrTwist, keys: Collection[str]) -> tuple[WrittenStrand | None, list[Finding]]:
    line, found = read_line(other.loop, keys)
    if line and not line.beads:
        found = [error(line.mark, "a loop without beads", rule=RULE)]
    return (None, found) if found else (replace(line, kind=LOOP, to=2 if other.to == "after" else 1), [])


def _twist(other: LoopOrTwist, end: End, keys: Collection[str]) -> tuple[WrittenStrand | None, list[Finding]]:
    first, found = read_strand(other.twist, keys)
    second, more = read_line(other.second, keys) if other.second else (first, [])
    if found or more:
        return None, found + more
    if not first.beads or not second.beads:
        return None, [error(first.mark, "a line of a twisted pair has no beads", rule=RULE)]
    hung = (*first.hung, *(second.hung if other.second else ()))
    if hung:
        return None, [error(hung[0].mark, "a twisted pair bears neither twigs nor charms, but for charms among its end beads", rule=RULE)]
    return replace(end.on(first), kind=TWIST, second=second.beads), []


def read_fringe_chart(written: Written, end: End) -> tuple[Entries | None, list[Finding]]:
    """Strands drawn as columns. The first line has a bead of every strand; a strand that has ended goes on blank."""
    lines, found = read_lines(written, numbers=False)
    if found:
        return None, found
    first, *later = lines
    columns: dict[int, list[DrawnBead]] = {bead.at: [bead] for bead in first.beads}
    if not columns:
        return None, [error(first.mark, "the first line of a fringe chart has a bead of every strand; found none")]
    for depth, line in enumerate(later, 1):
        found += _hang(columns, line, depth, first)
    if found:
        return None, found
    return tuple(end.on(WrittenStrand(tuple(beads), (), beads[0].mark)) for beads in columns.values()), []


def _hang(columns: dict[int, list[DrawnBead]], line: Line, depth: int, first: Line) -> list[Finding]:
    """Add the beads of one line, each under the one above it."""
    found = []
    for bead in line.beads:
        strand = columns.get(bead.at)
        if strand is None:
            found.append(error(bead.mark, f"this {bead.key} hangs under no bead of the first line",
                               "the first line has a bead of every strand, and a strand runs straight down"))
        elif len(strand) < depth:
            found.append(error(bead.mark, f"this {bead.key} comes after a blank in its strand", "a strand ends where it is blank"))
        else:
            strand.append(bead)
    return found


def mirrored(entries: Entries, places: int | None) -> tuple[Entries, list[Finding]]:
    """The strands and, after the middle one, their mirror image.

    `k` strands make 2k - 1, the middle one hanging alone, or 2k if that is exactly the number of places.
    """
    twice = 2 * len(entries) == places
    middle = entries[-1] if entries and not twice else None
    if middle is not None and middle.to:
        return entries, [error(middle.mark, "the middle strand is a loop, so the fringe is not alike on both sides",
                               "write the strands of both sides, without mirror: true", rule=RULE)]
    other = [strand.mirrored() if strand else None for strand in reversed(entries)]
    return entries + tuple(other if twice else other[1:]), []


def hung(entries: Entries) -> tuple[WrittenStrand, ...]:
    """The strands, each with the number of its place."""
    return tuple(replace(strand, place=place) for place, strand in enumerate(entries, 1) if strand)
