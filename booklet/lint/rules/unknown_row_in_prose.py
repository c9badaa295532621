"""The prose names a row or strand that the piece does not have.

It was left behind when the piece became smaller, or came with another pattern. A maker looks for it in vain.

Bad:

    notes: |
      Rows 2 and 4 are worked loosely.
    body:
      chart: |
        2 |  B B
        1 | W B W

Good:

    notes: |
      Row 2 is worked loosely.
    body:
      chart: |
        2 |  B B
        1 | W B W
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from ...craft.piece import Piece
from ...findings import Finding, Severity
from ..figures import NUMBER, may_name, value_of
from ..subject import Subject

ID, SEVERITY, NEEDS = "unknown-row-in-prose", Severity.ERROR, "piece"

_ONE = rf"\b(?P<kind>row|strand)\s+(?P<number>{NUMBER})(?!\s*(?:mm|cm|m|in|g)\b)(?:(?<=[0-9])(?P<part>[a-z]{{1,2}}))?\b"
_MORE = r"\b(?P<kinds>rows|strands)\s+(?P<numbers>[0-9]+(?:\s*(?:,|to|and|or|-|–)\s*[0-9]+)+)\b"
_NAMED = f"{_ONE}|{_MORE}"


def check(subject: Subject) -> Iterator[Finding]:
    """Every row or strand that is named by a number beyond the last, and every part that a row does not have."""
    most = {"row": len(subject.piece.drawn), "strand": max((strand.number for strand in subject.piece.strands), default=0)}
    for passage in subject.passages:
        for match in re.finditer(_NAMED, passage.words, re.IGNORECASE) if may_name(passage.words, "row", "rows", "strand", "strands") else ():
            kind = (match["kind"] or match["kinds"][:-1]).lower()
            for number in _numbers(match):
                if not 1 <= number <= most[kind]:
                    yield Finding(passage.mark(match.start(), match.end()), SEVERITY, ID,
                                  f"{passage.does('name')} {kind} {number}, but {_had(kind, most[kind])}")
                elif kind == "row" and match["part"] and match["part"].lower() not in _parts(subject.piece, number):
                    yield Finding(passage.mark(match.start(), match.end()), SEVERITY, ID,
                                  f"{passage.does('name')} row {number}{match['part']}, but {_has(number, _parts(subject.piece, number))}")


def _numbers(match: re.Match) -> Iterator[int]:
    if match["number"]:
        yield int(value_of(match["number"]))
    else:
        yield from map(int, re.findall("[0-9]+", match["numbers"]))


def _parts(piece: Piece, number: int) -> list[str]:
    return [row.part for row in piece.rows if row.number == number and row.part]


def _has(number: int, parts: list[str]) -> str:
    return f"row {number} has parts {parts[0]} to {parts[-1]}" if parts else f"row {number} has no parts"


def _had(kind: str, most: int) -> str:
    where = "the body" if kind == "row" else "the fringe"
    return f"{where} has {most} {kind}{'' if most == 1 else 's'}" if most else "the piece has no fringe"
