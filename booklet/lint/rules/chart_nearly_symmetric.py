"""The chart is its own mirror picture but for one to three beads.

A drawing that is symmetrical everywhere else is meant to be so here: a bead was changed on one side and forgotten on the other.
Two or three beads of a colour that the body has nowhere on both sides may be an accent, so they are a note.

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

from ...findings import Finding, Severity
from ..mirrors import Cell, Slip, body_slips, upright_slips
from ..places import bead_mark, bead_said
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
    opposite = f"{bead_said(subject.piece, second)} is {two}" if two else "there is no bead opposite it"
    return Finding(bead_mark(subject, first), Severity.NOTE if slip.accent else SEVERITY, ID, f"{bead_said(subject.piece, first)} is {one}, but {opposite}", why)
