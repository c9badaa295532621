"""The chart is its own mirror picture but for one to three beads.

A drawing that is symmetrical everywhere else is meant to be so here: a bead was changed on one side and forgotten on the other.

Bad:

    body:
      chart: |
        6 |      W W W
        5 |     W B B W
        4 |    W B W B W
        3 |   W B W W W W
        2 |  W B W B W B W
        1 | W B W W W W B W

Good:

    body:
      chart: |
        6 |      W W W
        5 |     W B B W
        4 |    W B W B W
        3 |   W B W W B W
        2 |  W B W B W B W
        1 | W B W W W W B W
"""

from __future__ import annotations

from collections.abc import Iterator

from ...craft.stitches import stitch_of
from ...findings import Finding, Mark, Severity
from ..mirrors import Cell, Slip, body_slips, upright_slips
from ..subject import Subject

ID, SEVERITY, NEEDS = "chart-nearly-symmetric", Severity.WARNING, "piece"


def check(subject: Subject) -> Iterator[Finding]:
    """Every pair of places that keeps the chart from being symmetrical, left to right or top to bottom."""
    seen: set[Cell] = set()
    for slip in body_slips(subject.piece):
        seen |= {slip.one, slip.other}
        yield _finding(subject, slip, "the two halves of the chart are mirror pictures everywhere else")
    for slip in upright_slips(subject.piece):
        if not seen & {slip.one, slip.other}:
            yield _finding(subject, slip, "the rows above and below the base row are mirror pictures everywhere else")


def _finding(subject: Subject, slip: Slip, why: str) -> Finding:
    (one, two), (first, second) = slip.keys, (slip.one, slip.other)
    if one is None:
        one, two, first, second = two, one, second, first
    opposite = f"{_place(subject, second)} is {two}" if two else "there is no bead opposite it"
    return Finding(_mark(subject, first), SEVERITY, ID, f"{_place(subject, first)} is {one}, but {opposite}", why)


def _place(subject: Subject, cell: Cell) -> str:
    """A bead in words: "stitch 3 of row 2", in a stitch of several "the lower bead of stitch 3 of row 2"."""
    level, height, at = cell
    row = next(row for row in subject.piece.rows if row.level == level)
    stitch = next(number for number, stitch in enumerate(row.stitches, 1) if stitch.at == at)
    drop, lying = subject.piece.drop, stitch_of(subject.piece).LYING
    which = ("left", "right", "the left") if lying else ("lower", "upper", "below")
    bead = "" if drop == 1 else f"the {which[height]} bead of " if drop == 2 else f"bead {height + 1} from {which[2]} of "
    return f"{bead}stitch {stitch} of row {row.number}"


def _mark(subject: Subject, cell: Cell) -> Mark:
    level, height, at = cell
    number = next(row.number for row in subject.piece.rows if row.level == level)
    line = subject.drawn_rows[number].lines[height if stitch_of(subject.piece).LYING else -1 - height]
    return next(bead.mark for bead in line if bead.at == at)
