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
_NUMBER = r"(?<![\w.,/-])([0-9]+(?:\.[0-9]+)?)"
_ODD = re.compile(rf"{_NUMBER}(?:( ?)({'|'.join(sorted(_OTHERS, key=len, reverse=True))})(?!\w)|()(mm|cm|m|in|ft|yd|g|kg|lb)(?![\w/]))"
                  rf"|(?<![\w.,/-])([0-9]+),([0-9]{{1,2}}) ?(mm|cm|m|g|in)(?!\w)")


def check(subject: Subject) -> Iterator[Finding]:
    """Every odd unit in prose, sizes of findings and names of threads."""
    pattern = subject.pattern
    for passage in subject.passages:
        for match in _ODD.finditer(passage.words):
            if match[5] not in pattern.legend:   # 3g may be three beads of a key g
                yield Finding(passage.mark(match.start(), match.end()), SEVERITY, ID, f"{match[0]!r} is not how units are written", f"write {_right(match)}")
    written = [(("findings", number, name), getattr(item, name)) for number, item in enumerate(pattern.findings_list, 1) for name in ("item", "size")]
    written += [(("thread", part, "kind"), getattr(pattern.thread, part)) for part in ("body", "fringe")]
    for path, text in written:
        match = _ODD.search(text) if path[:1] in pattern.marks else None   # what is inherited is said of nothing here
        if match:
            yield Finding(pattern.mark(*path), SEVERITY, ID, f"{match[0]!r} is not how units are written", f"write {_right(match)}")


def _right(match: re.Match) -> str:
    if match[6]:
        return f"{match[6]}.{match[7]} {match[8]}"
    return f"{match[1]} {_OTHERS.get(match[3], match[5])}"
