"""Reading the words back out of the finished page, and holding them against the chart.

The lines are taken from the HTML that is printed, not from the model, so that a slip in a template is seen too.
"""

from __future__ import annotations

from collections.abc import Iterable
from html.parser import HTMLParser

from ..craft.language import spoken
from ..craft.piece import Piece
from ..craft.replay import differences
from ..errors import FindingsError
from ..findings import Finding, Severity
from ..source.pattern import Pattern

ROW, STRAND, SECOND = "row-words", "strand-words", "second"
_VOID = {"br", "img", "input", "hr", "meta", "link", "wbr"}


class _Lines(HTMLParser):
    """The text of every element of the two classes, white space folded; those of the second piece apart."""

    def __init__(self, second: bool) -> None:
        super().__init__(convert_charrefs=True)
        self.second = second
        self.lines: dict[str, list[str]] = {ROW: [], STRAND: []}
        self._inside: str | None = None
        self._depth, self._text = 0, ""

    def handle_starttag(self, tag, attrs):
        if tag in _VOID:
            return
        if self._inside:
            self._depth += 1
            return
        classes = set((dict(attrs).get("class") or "").split())
        wanted = classes & {ROW, STRAND}
        if wanted and (SECOND in classes) is self.second:
            self._inside, self._depth, self._text = wanted.pop(), 0, ""

    def handle_endtag(self, tag):
        if not self._inside or tag in _VOID:
            return
        if self._depth:
            self._depth -= 1
            return
        self.lines[self._inside].append(" ".join(self._text.split()))
        self._inside = None

    def handle_data(self, data):
        self._text += data if self._inside else ""


def printed_lines(html: str, second: bool = False) -> tuple[list[str], list[str]]:
    """Row lines and strand lines of a page, in the order in which they stand: those of the first piece, or of the second."""
    reader = _Lines(second)
    reader.feed(_without_pictures(str(html)))
    reader.close()
    return reader.lines[ROW], reader.lines[STRAND]


def _without_pictures(html: str) -> str:
    """A page without its pictures, which are most of it, and hold none of its words."""
    first, *pictured = html.split("<svg ")
    return "".join([first, *(text.partition("</svg>")[2] for text in pictured)])


def wrong_words(piece: Piece, second: Piece | None, html: str) -> tuple[str, ...]:
    """In what the printed words do not rebuild the chart of the piece, and of a second piece with words of its own."""
    wrong = differences(piece, *printed_lines(html), spoken().tag)
    if second:
        wrong += tuple(f"second piece: {what}" for what in differences(second, *printed_lines(html, second=True), spoken().tag))
    return wrong


def refuse(pattern: Pattern, wrong: Iterable[str]) -> None:
    """Raise FindingsError if anything is wrong with the printed words."""
    wrong = tuple(wrong)
    if wrong:
        raise FindingsError(Finding(pattern.mark("body", "chart"), Severity.ERROR, "words-do-not-replay",
                                    f"the printed words do not rebuild the chart: {what}") for what in wrong)


def check_words(pattern: Pattern, html: str) -> None:
    """Raise FindingsError unless the printed words rebuild the chart."""
    refuse(pattern, wrong_words(pattern.piece, pattern.second, html))
