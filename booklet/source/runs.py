"""Run text to beads: "3(2W 1B) 4W > 1D", "8W [3B > 1R] 6W {ring} 2W > 3B".

A count stands before its key or parenthesis; a bare key counts one; parentheses repeat and nest; ">" starts the
end beads. Brackets hold a twig with end beads of its own; braces name a charm or ring of the findings. Where the legend
has digits as keys, the last digit of a number that stands alone is the key: "37" is three of bead 7.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Sequence

from msgspec import Struct
from msgspec.structs import replace

from ..findings import Finding, Mark, Severity
from .chart import DrawnBead
from .wording import quoted
from .written import Written
from .written_strand import Beads, DrawnCharm, DrawnTwig, WrittenStrand

MOST_BEADS = 2000    # of a strand
MOST_REPEATS = 1000
DEEPEST = 20         # parentheses
RULE = "bad-run-text"

_TOKEN = re.compile(r"\s*(?:([0-9]*)([A-Za-z(\[]|\{[^{}]*\})|([0-9]+)|([)\]>])|(\S))")
# Names are printed in the words and read back from there, so they hold none of the signs that words are made of.
_NAME = r"[^\W_](?:[\w .'’/&×-]{0,58}[^\W_])?"
_Thing = DrawnBead | DrawnTwig | DrawnCharm


class _Wrong(Exception):
    """Nothing after this place can be trusted. Holds a finding."""

    def __init__(self, mark: Mark, message: str, hint: str = "", rule: str = RULE) -> None:
        self.finding = Finding(mark, Severity.ERROR, rule, message, hint)


class _Group(Struct):
    """What stands between parentheses or brackets, and how often it repeats."""

    offset: int
    times: int
    things: list[_Thing]
    sign: str = ""                       # what opened it
    before: list[_Thing] | None = None   # what stands before >
    weight: int = 0                      # beads of its things, those of twigs counted

    @property
    def name(self) -> str:
        return {"(": "parenthesis", "[": "bracket"}[self.sign]


def read_strand(written: Written, keys: Collection[str]) -> tuple[WrittenStrand | None, list[Finding]]:
    """A strand with its own end beads, if it has any. `keys`: the keys of the legend."""
    try:
        things, end = _read(written, keys)
        beads, hung = _parted(things)
        ends, turned = _parted(end or [])
    except _Wrong as wrong:
        return None, [wrong.finding]
    return WrittenStrand(beads, ends, written.whole, hung=hung, turned=turned), []


def read_beads(written: Written, keys: Collection[str]) -> tuple[Beads | None, list[Finding]]:
    """Beads where neither end beads nor twigs nor charms belong, such as a loop of the hanger."""
    strand, found = read_line(written, keys)
    if strand and strand.hung:
        return None, [Finding(strand.hung[0].mark, Severity.ERROR, RULE, "charms belong in the fringe")]
    return strand.beads if strand else None, found


def read_line(written: Written, keys: Collection[str]) -> tuple[WrittenStrand | None, list[Finding]]:
    """Beads and charms where neither end beads nor twigs belong, such as the end of every strand."""
    try:
        things, end = _read(written, keys)
        if end is not None:
            raise _Wrong(written.mark(written.text.index(">")), "> begins end beads, and none belong here")
        beads, hung = _parted(things)
        for thing in hung:
            if isinstance(thing, DrawnTwig):
                raise _Wrong(thing.mark, "a twig cannot hang here", "twigs hang on straight strands")
        if not beads and not hung:
            raise _Wrong(written.whole, "there are no beads")
    except _Wrong as wrong:
        return None, [wrong.finding]
    return WrittenStrand(beads, (), written.whole, hung=hung), []


def _parted(things: Sequence[_Thing]) -> tuple[Beads, tuple[DrawnTwig | DrawnCharm, ...]]:
    """Beads by themselves, and what hangs between them with the number of beads before it."""
    beads: list[DrawnBead] = []
    hung = []
    for thing in things:
        if isinstance(thing, DrawnBead):
            beads.append(thing)
        else:
            hung.append(replace(thing, at=len(beads)))
    return tuple(beads), tuple(hung)


def _read(written: Written, keys: Collection[str]) -> tuple[list[_Thing], list[_Thing] | None]:
    """What stands before and after ">"; None for the latter if there is no ">"."""
    text = written.text.rstrip()
    groups = [_Group(0, 1, [])]
    offset = 0
    while offset < len(text):
        match = _TOKEN.match(text, offset)
        start, offset = match.end() - len(match[0].lstrip()), match.end()
        _take(groups, match, start, written.mark(start, offset - start), written, keys)
    if len(groups) > 1:
        raise _Wrong(written.mark(groups[-1].offset), f"this {groups[-1].name} is never closed")
    whole = groups[0]
    if whole.before is None:
        return whole.things, None
    if not whole.things:
        raise _Wrong(written.mark(text.rindex(">")), "no end beads stand after >")
    if _weight(whole.before) + _weight(whole.things) > MOST_BEADS:
        raise _too_long(written.whole)
    return whole.before, whole.things


def _take(groups: list[_Group], match: re.Match, start: int, mark: Mark, written: Written, keys: Collection[str]) -> None:
    """One token."""
    count, opening, number, sign, other = match.groups()
    if other:
        raise _Wrong(mark, f"{quoted(other)} may not stand here", "run text holds counts, bead keys, parentheses and one >")
    if opening in ("(", "["):
        if len(groups) > DEEPEST:
            raise _Wrong(mark, f"parentheses nest deeper than {DEEPEST} levels", rule="too-deep")
        if opening == "[" and (any(group.sign == "[" for group in groups) or groups[0].before is not None):
            where = "among end beads" if groups[0].before is not None else "on a twig"
            raise _Wrong(mark, f"a twig cannot hang {where}", "twigs hang on the strand itself")
        groups.append(_Group(start, _count(count, mark), [], opening))
    elif opening:
        thing = DrawnCharm(0, _name(opening, mark), mark) if opening[0] == "{" else DrawnBead(opening, mark, 0)
        _extend(groups[-1], [thing], _count(count, mark), mark)
    elif number:
        count, key = _digit_key(number, keys, mark)
        _extend(groups[-1], [DrawnBead(key, mark, 0)], _count(count, mark), mark)
    elif sign == ">":
        _turn(groups, written, mark)
    else:
        _close(groups, sign, written, mark)


def _name(braces: str, mark: Mark) -> str:
    name = " ".join(braces[1:-1].split())
    if not re.fullmatch(_NAME, name):
        raise _Wrong(mark, f"braces name a finding, such as {{ring}}; found {quoted(braces)}",
                     "a name has letters, digits, spaces and hyphens" if name else "")
    return name


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


def _close(groups: list[_Group], sign: str, written: Written, mark: Mark) -> None:
    group = groups[-1]
    wanted = {")": "(", "]": "["}[sign]
    if group.sign != wanted:
        if group.sign and any(other.sign == wanted for other in groups):
            raise _Wrong(written.mark(group.offset), f"this {group.name} is not closed before {sign}")
        raise _Wrong(mark, f"this {'parenthesis' if sign == ')' else 'bracket'} was never opened")
    groups.pop()
    if sign == "]":
        _extend(groups[-1], [_twig(group, written, mark)], group.times, mark)
        return
    if not group.things:
        raise _Wrong(mark, "nothing stands between these parentheses")
    _extend(groups[-1], group.things, group.times, mark)


def _twig(group: _Group, written: Written, mark: Mark) -> DrawnTwig:
    if group.before is None or not group.things:
        raise _Wrong(written.mark(group.offset), "this twig has no end bead, so the needle has nothing to turn on",
                     "write > and its end beads, as in [3B > 1R]")
    beads, hung = _parted(group.before)
    end, turned = _parted(group.things)
    return DrawnTwig(0, beads, end, written.mark(group.offset), hung, turned)


def _turn(groups: list[_Group], written: Written, mark: Mark) -> None:
    group = groups[-1]
    if group.sign == "(":
        raise _Wrong(written.mark(group.offset), "this parenthesis is not closed before >")
    if group.before is not None:
        raise _Wrong(mark, "> stands twice", "end beads begin once")
    group.before, group.things, group.weight = group.things, [], 0


def _extend(group: _Group, things: Sequence[_Thing], times: int, mark: Mark) -> None:
    group.weight += _weight(things) * times
    if len(group.things) + len(things) * times > MOST_BEADS or group.weight > MOST_BEADS:
        raise _too_long(mark)
    group.things += [*things] * times


def _weight(things: Sequence[_Thing]) -> int:
    """Beads, those of twigs counted."""
    return sum(len(thing.beads) + len(thing.end) if isinstance(thing, DrawnTwig) else 1 for thing in things)


def _too_long(mark: Mark) -> _Wrong:
    return _Wrong(mark, f"a strand may have up to {MOST_BEADS:,} beads", rule="too-large")
