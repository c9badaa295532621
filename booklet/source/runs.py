"""Run text to beads: "3(2W 1B) 4W > 1D".

A count stands before its key or parenthesis; a bare key counts one; parentheses repeat and nest; ">" starts the
end beads. Where the legend has digits as keys, the last digit of a number that stands alone is the key: "37" is three
of bead 7.
"""

from __future__ import annotations

import re
from collections.abc import Collection
from typing import NamedTuple

from ..findings import Finding, Mark, Severity
from .chart import DrawnBead
from .wording import quoted
from .written import Written

MOST_BEADS = 2000    # of a strand
MOST_REPEATS = 1000
DEEPEST = 20         # parentheses
RULE = "bad-run-text"

_TOKEN = re.compile(r"\s*(?:([0-9]*)([A-Za-z(])|([0-9]+)|([)>])|(\S))")


class WrittenStrand(NamedTuple):
    """The beads of a strand from the top down, runs written out. Mirrored strands share their marks."""

    beads: tuple[DrawnBead, ...]
    end: tuple[DrawnBead, ...]
    mark: Mark


class _Wrong(Exception):
    """Nothing after this place can be trusted. Holds a finding."""

    def __init__(self, mark: Mark, message: str, hint: str = "", rule: str = RULE) -> None:
        self.finding = Finding(mark, Severity.ERROR, rule, message, hint)


class _Group(NamedTuple):
    """Beads between parentheses, and how often they repeat."""

    offset: int
    times: int
    beads: list[DrawnBead]


def read_strand(written: Written, keys: Collection[str]) -> tuple[WrittenStrand | None, list[Finding]]:
    """A strand with its own end beads, if it has any. `keys`: the keys of the legend."""
    try:
        beads, end = _read(written, keys)
    except _Wrong as wrong:
        return None, [wrong.finding]
    return WrittenStrand(tuple(beads), tuple(end or ()), written.whole), []


def read_beads(written: Written, keys: Collection[str]) -> tuple[tuple[DrawnBead, ...] | None, list[Finding]]:
    """Beads where no end beads belong, such as a loop."""
    try:
        beads, end = _read(written, keys)
        if end is not None:
            raise _Wrong(written.mark(written.text.index(">")), "> begins end beads, and none belong here")
        if not beads:
            raise _Wrong(written.whole, "there are no beads")
    except _Wrong as wrong:
        return None, [wrong.finding]
    return tuple(beads), []


def _read(written: Written, keys: Collection[str]) -> tuple[list[DrawnBead], list[DrawnBead] | None]:
    """Beads, and end beads (None if there is no ">")."""
    text = written.text.rstrip()
    groups = [_Group(0, 1, [])]
    before: list[DrawnBead] | None = None
    offset = 0
    while offset < len(text):
        match = _TOKEN.match(text, offset)
        count, opening, number, sign, _ = match.groups()
        start, offset = match.end() - len(match[0].lstrip()), match.end()
        mark = written.mark(start, offset - start)
        if opening == "(":
            if len(groups) > DEEPEST:
                raise _Wrong(mark, f"parentheses nest deeper than {DEEPEST} levels", rule="too-deep")
            groups.append(_Group(start, _count(count, mark), []))
        elif opening:
            _extend(groups[-1], [DrawnBead(opening, mark, 0)], _count(count, mark), mark)
        elif number:
            count, key = _digit_key(number, keys, mark)
            _extend(groups[-1], [DrawnBead(key, mark, 0)], _count(count, mark), mark)
        elif sign == ")":
            _close(groups, mark)
        elif sign == ">":
            before, groups = _turn(groups, before, written, mark), [_Group(0, 1, [])]
        else:
            raise _Wrong(mark, f"{quoted(match[5])} may not stand here", "run text holds counts, bead keys, parentheses and one >")
    if len(groups) > 1:
        raise _Wrong(written.mark(groups[-1].offset), "this parenthesis is never closed")
    beads = groups[0].beads
    if before is None:
        return beads, None
    if not beads:
        raise _Wrong(written.mark(text.rindex(">")), "no end beads stand after >")
    if len(before) + len(beads) > MOST_BEADS:
        raise _too_long(written.whole)
    return before, beads


def _count(digits: str, mark: Mark) -> int:
    if not digits:
        return 1
    number = int(digits[:8])
    if len(digits) > 8 or number > MOST_REPEATS:
        raise _Wrong(mark, f"a count may be up to {MOST_REPEATS:,}; found {quoted(digits)}", rule="too-large")
    if number == 0:
        raise _Wrong(mark, "a count is 1 or more; found 0")
    return number


def _digit_key(number: str, keys: Collection[str], mark: Mark) -> tuple[str, str]:
    if number[-1] not in keys:
        raise _Wrong(mark, f"the count {number[:8]} has no bead key", "write the key right after it, as in 3W")
    return number[:-1], number[-1]


def _close(groups: list[_Group], mark: Mark) -> None:
    if len(groups) == 1:
        raise _Wrong(mark, "this parenthesis was never opened")
    group = groups.pop()
    if not group.beads:
        raise _Wrong(mark, "nothing stands between these parentheses")
    _extend(groups[-1], group.beads, group.times, mark)


def _turn(groups: list[_Group], before: list[DrawnBead] | None, written: Written, mark: Mark) -> list[DrawnBead]:
    if len(groups) > 1:
        raise _Wrong(written.mark(groups[-1].offset), "this parenthesis is not closed before >")
    if before is not None:
        raise _Wrong(mark, "> stands twice", "end beads begin once")
    return groups[0].beads


def _extend(group: _Group, beads: list[DrawnBead], times: int, mark: Mark) -> None:
    if len(group.beads) + len(beads) * times > MOST_BEADS:
        raise _too_long(mark)
    group.beads.extend(beads * times)


def _too_long(mark: Mark) -> _Wrong:
    return _Wrong(mark, f"a strand may have up to {MOST_BEADS:,} beads", rule="too-large")
