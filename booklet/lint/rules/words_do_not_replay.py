"""The written words, worked line by line, do not give the chart.

A buyer who follows the words would make another piece than the one in the chart. The words are worked by separate
code that knows nothing of the chart, and no pattern file should be able to bring this about: it is a fault in
booklet itself, and nothing is printed until it is mended. Please report it.
"""

from __future__ import annotations

from collections.abc import Iterator

from ...craft.replay import differences
from ...craft.words import row_words, strand_words
from ...findings import Finding, Severity
from ..subject import Subject

ID, SEVERITY, NEEDS = "words-do-not-replay", Severity.ERROR, "path"


def check(subject: Subject) -> Iterator[Finding]:
    """Every difference between the chart and what the words rebuild."""
    for piece in filter(None, (subject.piece, subject.pattern.second)):
        lines = [words.line for words in row_words(piece)], [words.line for words in strand_words(piece)]
        for text in differences(piece, *lines):
            yield Finding(subject.pattern.mark("body", "chart"), SEVERITY, ID, text)
