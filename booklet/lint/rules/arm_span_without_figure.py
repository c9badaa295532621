"""A text measures thread by the arm span and gives no figure.

Beaders use the word in two ways: from hand to hand, or the length of one arm. One of the two makers runs out of thread.

Bad:

    notes: |
      Thread an arm span of braid. The tail is 15 cm long.

Good:

    notes: |
      Thread an arm span of braid, {{ thread.length }} m. The tail is 15 cm long.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from ...findings import Finding, Severity
from ..passages import Passage
from ..placeholders import PLACEHOLDER
from ..subject import Subject

ID, SEVERITY, NEEDS = "arm-span-without-figure", Severity.WARNING, "pattern"

_SPAN = r"\b(?:arm[\s-]?spans?|wing[\s-]?spans?|arm'?s?[\s-]lengths?|arm lengths?)\b"
_FIGURE = r"[0-9]\s*(?:m|cm|mm|in|inch(?:es)?|ft|feet|yards?|yd|metres?)\b"


def check(subject: Subject) -> Iterator[Finding]:
    """Every arm span in a sentence without a length."""
    for passage in subject.passages:
        for match in passage.find(_SPAN, "arm", "wing"):
            if not _has_figure(passage, match.start()):
                yield Finding(passage.mark(match.start(), match.end()), SEVERITY, ID,
                              f"{match[0]!r} has no figure, and makers measure it in two ways", "write the length, such as {{ thread.length }} m")


def _has_figure(passage: Passage, place: int) -> bool:
    """Whether a length stands in the sentence at this place."""
    start, sentence = max((offset, sentence) for offset, sentence in passage.sentences() if offset <= place)
    written = passage.written[start:start + len(sentence)]
    return bool(re.search(_FIGURE, sentence, re.IGNORECASE)) or any("thread.length" in name for name in PLACEHOLDER.findall(written))
