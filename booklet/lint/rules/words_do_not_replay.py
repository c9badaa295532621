"""The written words do not rebuild the chart."""

from ...craft.replay import differences
from ...craft.words import row_words, strand_words
from ...findings import Finding, Severity

ID, SEVERITY, NEEDS = "words-do-not-replay", Severity.ERROR, "path"


def check(subject):
    """Every difference."""
    piece = subject.piece
    if piece.strands and len(piece.strands) != len(piece.base.stitches):
        return
    lines = [words.line for words in row_words(piece)], [words.line for words in strand_words(piece)]
    for text in differences(piece, *lines):
        yield Finding(subject.pattern.mark("body", "chart"), SEVERITY, ID, text)
