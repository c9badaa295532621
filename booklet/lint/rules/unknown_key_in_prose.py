"""The prose names a bead key that the legend does not have.

A key was changed in the legend and the chart, but not in the text, or the text came with another pattern. A maker
would look for a pile of beads that the materials do not list.

Bad:

    notes: |
      Pick up 3W, 2R and pass back up. Bead R is the darker one.
    body:
      chart: |
        2 |  B B
        1 | W B W

Good:

    notes: |
      Pick up 3W, 2B and pass back up. Bead B is the darker one. Braid of 6 lb and a bead of 2 g do no harm.
    body:
      chart: |
        2 |  B B
        1 | W B W
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from ...findings import Finding, Severity
from ..passages import Passage
from ..subject import Subject

ID, SEVERITY, NEEDS = "unknown-key-in-prose", Severity.ERROR, "pattern"

_NAMED = re.compile(r"\b(?:bead\s+key|key|bead|beads)\s+([A-Z])(?=[\s,.;:)]|$)(?!\s+[A-Z][a-z])|\b([A-Z])\s+beads?\b")
_RUN = re.compile(r"(?<![\w./#-])[1-9][0-9]{0,2}([A-Za-z])(?![\w/-])")
_PICKED = r"\b(?:pick(?:s|ing)? up|string|thread on|add|skip|end(?:s)? (?:in|with)|work)\b"
_UNITS = frozenset("mgx")          # 3m, 5g, 2x
_NOT_RUNS = frozenset({"2D", "3D"})   # of pictures and films
_WORDS = frozenset("AI")           # "a bead I like"


def check(subject: Subject) -> Iterator[Finding]:
    """Each unknown key, at the first place of each text that names it."""
    pattern = subject.pattern
    known = {*pattern.legend, *(path[1] for path in pattern.marks if len(path) == 2 and path[0] == "beads")}
    for passage in subject.passages:
        said: set[str] = set()
        for key, start, end in _keys(passage, known):
            if key not in known and key not in said:
                said.add(key)
                other = key.swapcase()
                hint = f"did you mean {other}?" if other in known else f"the legend has {', '.join(pattern.legend)}"
                yield Finding(passage.mark(start, end), SEVERITY, ID, f"{passage.does('name')} bead {key}, but the legend has no such key", hint)


def _keys(passage: Passage, known: set[str]) -> Iterator[tuple[str, int, int]]:
    for match in _NAMED.finditer(passage.words):
        key = match[1] or match[2]
        if key not in _WORDS or key in known:
            yield key, match.start(), match.end()
    for offset, sentence in passage.sentences():
        runs = list(_RUN.finditer(sentence))
        if runs and (any(match[1] in known for match in runs) or re.search(_PICKED, sentence, re.IGNORECASE)):
            for match in runs:
                if match[1] not in _UNITS and match[0] not in _NOT_RUNS:
                    yield match[1], offset + match.start(), offset + match.end()
