"""The piece asks for a technique that the book places above the pattern's level.

A buyer chooses by the level. One who meets a technique that she has never been taught, in a pattern called beginner, puts it
aside and does not buy the next. Techniques have a usual level, and a book can place them differently, under levels: in
book.yaml. Two levels too low is a warning; one level is a note.

Bad:

    level: beginner
    body:
      base: widest
      chart: |
        2 |  B
        1 | W W
        3 |  B

Bad:

    level: beginner
    body:
      drop: 2
      chart: |
        2 |  B
          |  B
        1 | W W
          | W W

Good:

    level: intermediate
    body:
      base: widest
      chart: |
        2 |  B
        1 | W W
        3 |  B
"""

from __future__ import annotations

from collections.abc import Iterator

from ...craft.techniques import LEVELS, Technique, needed_level, techniques
from ...findings import Finding, Severity
from ..subject import Subject

ID, SEVERITY, NEEDS = "level-too-low", Severity.WARNING, "piece"


def check(subject: Subject) -> Iterator[Finding]:
    """Once, with the techniques of the highest level that is asked for."""
    piece, level, placed = subject.piece, subject.pattern.level, subject.book.placed
    needed = needed_level(piece, placed)
    above = LEVELS.index(needed) - LEVELS.index(level) if level else 0
    if above > 0:
        asked = [technique for technique in techniques(piece) if placed[technique.id] == needed]
        said = ", ".join(technique.said(piece) for technique in asked)
        yield Finding(subject.pattern.mark("level"), SEVERITY if above > 1 else Severity.NOTE, ID,
                      f"the level is {level}, but the piece asks for what this book calls {needed}: {said}",
                      f"write level: {needed}, or place {_names(asked)} lower under levels: in book.yaml")


def _names(asked: list[Technique]) -> str:
    return ", ".join(technique.id for technique in asked)
