"""A fringe as written, a list of runs or a drawn chart, to strands from left to right."""

from __future__ import annotations

from collections.abc import Collection, Sequence

from ..findings import Finding
from .chart import DrawnBead, Line, error, read_lines
from .runs import WrittenStrand, read_strand
from .written import Written

Strands = tuple[WrittenStrand, ...]


def read_strands(texts: Sequence[Written], end: tuple[DrawnBead, ...], keys: Collection[str]) -> tuple[Strands | None, list[Finding]]:
    """Strands from run text. `end`: end beads of those that have none of their own."""
    strands, found = [], []
    for text in texts:
        strand, wrong = read_strand(text, keys)
        strands.append(strand)
        found += wrong
    if found:
        return None, found
    return tuple(strand if strand.end else strand._replace(end=end) for strand in strands), []


def read_fringe_chart(written: Written, end: tuple[DrawnBead, ...]) -> tuple[Strands | None, list[Finding]]:
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
    return tuple(WrittenStrand(tuple(beads), end, beads[0].mark) for beads in columns.values()), []


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


def mirrored(strands: Strands, base_stitches: int | None) -> Strands:
    """The strands and, after the middle one, their mirror image.

    `k` strands make 2k - 1, the middle one hanging alone, or 2k if that is exactly the number of base stitches.
    """
    twice = 2 * len(strands) == base_stitches
    return strands + (strands[::-1] if twice else strands[-2::-1] if len(strands) > 1 else ())
