"""One bead of the body lies alone among beads of one other colour, and no other bead does so.

Stars in a sky come in numbers. A single one, of a colour that is used elsewhere in clusters, is often a wrong key. On the middle
line of the body it is taken to be meant.

Bad:

    body:
      chart: |
        5 |     W W W
        4 |    W W W W
        3 |   W W W B W
        2 |  W W W W W W
        1 | B B B B B B B

Good:

    body:
      chart: |
        5 |     W W W
        4 |    W B W W
        3 |   W W W B W
        2 |  W W W W W W
        1 | B B B B B B B
"""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterator, Mapping

from ...findings import Finding, Severity
from ..mirrors import Cell, cells, middle_of
from ..places import bead_mark, bead_said
from ..subject import Subject

ID, SEVERITY, NEEDS = "stray-bead", Severity.NOTE, "piece"

FEWEST = 4   # beads round it; fewer do not make a ground
ROUND = ((0, -2), (0, 2), (-1, -1), (-1, 0), (-1, 1), (1, -1), (1, 0), (1, 1))   # lines up and half stitches to the right


def check(subject: Subject) -> Iterator[Finding]:
    """Every bead that is the only one to lie so on its ground."""
    piece = subject.piece
    placed, middle = cells(piece), middle_of(piece)
    lone: defaultdict[tuple[str, str], list[Cell]] = defaultdict(list)
    lines = {(level * piece.drop + height, at): key for (level, height, at), key in placed.items()}
    for (cell, key), (line, at) in zip(placed.items(), lines):
        ground = _ground(lines, line, at, key)
        if ground:
            lone[key, ground].append(cell)
    counts = Counter(placed.values())
    for (key, ground), found in lone.items():
        if len(found) == 1 and counts[key] > 1 and 2 * found[0][2] != middle:
            yield Finding(bead_mark(subject, found[0]), SEVERITY, ID,
                          f"{bead_said(piece, found[0])} is {key} and lies alone among {ground}, as no other bead of the body does")


def _ground(lines: Mapping[tuple[int, int], str], line: int, at: int, key: str) -> str:
    """The key of all beads round a bead; empty where that is its own, where they are of several keys, or too few."""
    ground, count = "", 0
    for up, aside in ROUND:
        other = lines.get((line + up, at + aside))
        if other is not None:
            if other == key or ground not in ("", other):
                return ""
            ground, count = other, count + 1
    return ground if count >= FEWEST else ""
