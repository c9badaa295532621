"""A colour has one single bead in the piece, away from its middle.

Such a bead is often a wrong key. If it is meant, the buyer still has to buy a pack for it.

Bad:

    beads:
      W: {name: chalk white, colour: "#f4f1ea", finish: matte, kind: cylinder 11/0}
      B: {name: storm blue, colour: "#3d5a80", finish: lustre, kind: cylinder 11/0}
      R: {name: brick red, colour: "#a03a2c", finish: matte, kind: cylinder 11/0}
    body:
      chart: |
        5 |     B B B
        4 |    B W W B
        3 |   B W B W B
        2 |  B B W R B B
        1 | W W B W B W W

Good:

    beads:
      W: {name: chalk white, colour: "#f4f1ea", finish: matte, kind: cylinder 11/0}
      B: {name: storm blue, colour: "#3d5a80", finish: lustre, kind: cylinder 11/0}
      R: {name: brick red, colour: "#a03a2c", finish: matte, kind: cylinder 11/0}
    body:
      chart: |
        5 |     B B B
        4 |    B W W B
        3 |   B W R W B
        2 |  B B W W B B
        1 | W W B W B W W
"""

from __future__ import annotations

from collections.abc import Iterator

from ...craft.piece import Piece
from ...craft.tally import tally
from ...findings import Finding, Mark, Severity
from ..subject import Subject

ID, SEVERITY, NEEDS = "lone-bead", Severity.NOTE, "piece"

FEWEST = 20   # beads of a piece in which one bead is lonely


def check(subject: Subject) -> Iterator[Finding]:
    """Every bead of the legend that stands once, in body or fringe, and not on the middle line."""
    piece = subject.piece
    counts, loops = tally(piece), {key for hanger in piece.hangers for key in hanger.beads}
    for line in counts.lines if counts.beads >= FEWEST else ():
        if line.piece == 1 and line.key not in loops and not _is_in_middle(piece, line.key):
            yield Finding(_mark(subject, line.key), SEVERITY, ID, f"this is the only bead {line.key} ({line.bead.name}) of the piece")


def _is_in_middle(piece: Piece, key: str) -> bool:
    rows = any(row.first + row.last == 2 * stitch.at for row in piece.drawn for stitch in row.stitches if key in stitch.beads)
    middle = piece.strands[len(piece.strands) // 2].all if len(piece.strands) % 2 else ()
    return rows or key in middle


def _mark(subject: Subject, key: str) -> Mark:
    pattern = subject.pattern
    beads = [bead for row in pattern.chart.rows for line in row.lines for bead in line]
    beads += [bead for strand in pattern.written_strands for bead in strand.every]
    return next(bead.mark for bead in beads if bead.key == key)
