"""Chart text to drawn rows, every bead with its place in the file."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from ..findings import Finding, Mark, Severity
from .nodes import Document, Node
from .wording import quoted

MOST_ROWS, MOST_ACROSS = 400, 800


@dataclass(frozen=True)
class DrawnBead:
    """A bead as drawn; `at` is its chart column in half stitches."""

    key: str
    mark: Mark
    at: int = 0


@dataclass(frozen=True)
class DrawnRow:
    """A row as drawn: `drop` lines, the upper one first."""

    lines: tuple[tuple[DrawnBead, ...], ...]
    written: int | None        # the number before the bar
    number_mark: Mark | None
    mark: Mark


@dataclass(frozen=True)
class DrawnChart:
    """Rows, the top one first."""

    rows: tuple[DrawnRow, ...] = ()


@dataclass(frozen=True)
class _Line:
    number: str
    number_column: int
    beads: tuple[DrawnBead, ...]
    mark: Mark


def read_chart(node: Node, document: Document, drop: int) -> tuple[DrawnChart, list[Finding]]:
    """A body chart. Its findings are about signs that may not stand in it; what it means is checked by rules."""
    lines, findings = _lines(node, document)
    if len(lines) > MOST_ROWS * drop:
        findings.append(Finding(lines[0].mark, Severity.ERROR, "too-large", f"the chart has more than {MOST_ROWS} rows"))
        return DrawnChart(), findings
    if not findings and len(lines) % drop:
        findings.append(Finding(lines[-1].mark, Severity.ERROR, "bad-chart-text",
                                f"the chart has {len(lines)} lines, which is not a multiple of {drop} (drop: {drop})",
                                f"every row is drawn with {drop} lines"))
    rows = []
    for top in range(0, len(lines) - drop + 1, drop):
        group = lines[top:top + drop]
        first = group[0]
        for other in group[1:]:
            if other.number:
                findings.append(_at_number(other, document, f"the number {other.number} stands beside the second line of a row",
                                           f"with drop {drop} a row has {drop} lines; its number stands beside the first"))
        mark = _number_mark(first, document) if first.number else None
        rows.append(DrawnRow(tuple(line.beads for line in group), int(first.number) if first.number else None, mark, first.mark))
    return DrawnChart(tuple(rows)), findings


def read_drawn_fringe(node: Node, document: Document) -> tuple[tuple[tuple[DrawnBead, ...], ...], list[Finding]]:
    """A fringe chart: one column per strand; the first line has a bead in each."""
    lines, findings = _lines(node, document)
    if not lines or findings:
        return (), findings
    columns = {bead.at: [bead] for bead in lines[0].beads}
    for depth, line in enumerate(lines[1:], 1):
        for bead in line.beads:
            strand = columns.get(bead.at)
            if strand is None or len(strand) != depth:
                why = "stands under no strand of the first line" if strand is None else "stands under a strand that has ended"
                findings.append(Finding(bead.mark, Severity.ERROR, "bad-chart-text", f"this bead {why}"))
            else:
                strand.append(bead)
    return tuple(tuple(strand) for strand in columns.values()), findings


def block_lines(node: Node, document: Document) -> Iterator[tuple[int, str]]:
    """The source lines of a block text, with their numbers; a text on one line gives that line's part."""
    if node.style in ("|", ">"):
        for number in range(node.line + 1, node.end_line + (1 if node.end_column > 1 else 0)):
            if number <= len(document.lines):
                yield number, document.lines[number - 1]
    else:
        yield node.line, " " * (node.column - 1 + bool(node.style)) + node.text.split("\n")[0]


def _lines(node: Node, document: Document) -> tuple[list[_Line], list[Finding]]:
    texts = [(number, text) for number, text in block_lines(node, document) if text.strip()]
    has_bars = any("|" in text for _, text in texts)
    lines, findings = [], []
    for number, text in texts:
        read = _line(number, text, has_bars, document.file)
        if isinstance(read, Finding):
            findings.append(read)
        else:
            lines.append(read)
    if not texts:
        findings.append(Finding(Mark(document.file, node.line, node.column), Severity.ERROR, "bad-chart-text", "the chart has no rows"))
    return lines, findings


def _line(number: int, text: str, has_bars: bool, file: str) -> _Line | Finding:
    def wrong(column: int, message: str, hint: str = "", rule: str = "bad-chart-text") -> Finding:
        return Finding(Mark(file, number, column + 1), Severity.ERROR, rule, message, hint)

    if "\t" in text:
        return wrong(text.index("\t"), "a tab stands in the chart", "use spaces", "tab-in-chart")
    bar = text.find("|")
    if has_bars and bar < 0:
        return wrong(len(text) - len(text.lstrip()), "this line of the chart has no bar", "put a bar | before the drawing")
    before, drawing = (text[:bar], text[bar + 1:]) if has_bars else ("", text)
    start = bar + 1 if has_bars else 0
    label = re.fullmatch(r"\s*([1-9][0-9]{0,3})?\s*", before)
    if not label:
        column = len(before) - len(before.lstrip())
        return wrong(column, f"{quoted(before.strip())} stands before the bar", "only a row number may stand there")
    if len(drawing.rstrip()) > MOST_ACROSS:
        return wrong(start, f"the row is wider than {MOST_ACROSS} characters", rule="too-large")
    strange = re.search(r"[^A-Za-z0-9 ]", drawing)
    if strange:
        return wrong(start + strange.start(), f"{quoted(strange[0])} may not stand in the chart", "only spaces and bead keys stand after the bar")
    beads = tuple(DrawnBead(sign, Mark(file, number, start + at + 1), at) for at, sign in enumerate(drawing) if sign != " ")
    if not beads:
        return wrong(max(bar, 0), "this line of the chart has no bead")
    return _Line(label[1] or "", label.start(1) if label[1] else 0, beads, beads[0].mark)


def _number_mark(line: _Line, document: Document) -> Mark:
    return Mark(document.file, line.mark.line, line.number_column + 1, len(line.number))


def _at_number(line: _Line, document: Document, message: str, hint: str) -> Finding:
    return Finding(_number_mark(line, document), Severity.ERROR, "bad-chart-text", message, hint)
