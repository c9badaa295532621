"""A unit is not written as everywhere else in the book.

Computed figures stand as "4 mm", "1.40 m", "0.5 in", "5 g", so the text should write its units the same way. "gr" can also mean a
gross, which is 144 beads.

Bad:

    findings:
      - {item: thread guard, size: 4mm, each: 1}
    notes: |
      A tube holds 5 gr.

Good:

    findings:
      - {item: thread guard, size: 4 mm, each: 1}
    notes: |
      A tube holds 5 g.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from ...findings import Finding, Severity
from ..subject import Subject

ID, SEVERITY, NEEDS = "odd-unit", Severity.NOTE, "pattern"

_OTHERS = {"gr": "g", "grs": "g", "gm": "g", "gms": "g", "grm": "g", "grms": "g", "mms": "mm", "cms": "cm", "mtr": "m", "mtrs": "m", "mts": "m", "ins": "in",
           '"': "in", "″": "in", "”": "in"}
_UNITS = frozenset("mm cm m in ft yd g kg lb".split())
_MEASURE = re.compile(r"(?<![\w.,/-])([0-9]+(?:[.,][0-9]+)?)( ?)([A-Za-z]+(?![\w/])|[\"″”](?!\w))")
_COMMA = r"([0-9]+),([0-9]{1,2})"


def check(subject: Subject) -> Iterator[Finding]:
    """Every odd unit in prose, sizes of findings and names of threads."""
    pattern = subject.pattern
    for passage in subject.passages:
        for match, right in _odd(passage.words):
            if match[2] or match[3] not in pattern.legend:   # 3g may be three beads of a key g
                yield Finding(passage.mark(match.start(), match.end()), SEVERITY, ID, f"{match[0]!r} is not how units are written", f"write {right}")
    written = [(("findings", number, name), getattr(item, name)) for number, item in enumerate(pattern.findings_list, 1) for name in ("item", "size")]
    written += [(("thread", part, "kind"), getattr(pattern.thread, part)) for part in ("body", "fringe")]
    for path, text in written:
        for match, right in _odd(text) if path[:1] in pattern.marks else ():   # what is inherited is said of nothing here
            yield Finding(pattern.mark(*path), SEVERITY, ID, f"{match[0]!r} is not how units are written", f"write {right}")
            break


def _odd(text: str) -> Iterator[tuple[re.Match, str]]:
    """Every measure that is not written as the book writes them, and how it would be."""
    for match in _MEASURE.finditer(text):
        number, gap, unit = match.groups()
        comma = re.fullmatch(_COMMA, number)
        if comma and unit in _UNITS - {"ft", "yd", "kg", "lb"}:
            yield match, f"{comma[1]}.{comma[2]} {unit}"
        elif "," not in number and (unit in _OTHERS or unit in _UNITS and not gap):
            yield match, f"{number} {_OTHERS.get(unit, unit)}"
