"""Chart text of a body to a drawn chart: rows of lines of beads, each bead with its place.

The drawing stands as the piece hangs, top row first. A row has `drop` lines, upper bead first. Before a bar
the row's number may stand; after it only spaces and bead keys.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from msgspec import Struct

from ..findings import Finding, Mark, Severity
from .wording import quoted
from .written import Written

KEYS = frozenset("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789")
MOST_LINES = 1000    # of a chart
WIDEST = 400         # characters of a line
MOST_SLIPS = 20      # wrong characters reported in one chart
RULE = "bad-chart-text"


class DrawnBead(Struct, frozen=True):
    """A bead key and its place."""

    key: str
    mark: Mark
    at: int   # chart column in half stitches; 0 for a bead of run text


class DrawnRow(Struct, frozen=True):
    """A row as drawn: `drop` lines, the upper beads first."""

    lines: tuple[tuple[DrawnBead, ...], ...]
    written: int | None          # the number before the bar
    number_mark: Mark | None
    mark: Mark                   # of its first line's beads

    @property
    def whole(self) -> bool:
        """Whether its stitches stand side by side without a gap."""
        return all(right.at - left.at == 2 for line in self.lines for left, right in zip(line, line[1:]))

    @property
    def width(self) -> int:
        """Half stitches from the first to the last bead."""
        ats = [line[end].at for line in self.lines if line for end in (0, -1)]
        return max(ats) - min(ats) if ats else 0


class DrawnChart(Struct, frozen=True):
    """A chart as drawn, top row first. `broken` says that it could not be read as rows."""

    rows: tuple[DrawnRow, ...] = ()
    broken: bool = False

    def base_index(self, base: str | int) -> int | None:
        """Index of the base row in `rows` ("bottom", "widest", or counted from the bottom, 1 first); None if there is no such row.

        Of equally wide rows the lowest is the widest; a row with a gap only where all rows have one.
        """
        if base == "widest":
            return max(range(len(self.rows)), key=lambda index: (self.rows[index].whole, self.rows[index].width, index), default=None)
        from_bottom = 1 if base == "bottom" else int(base)
        return len(self.rows) - from_bottom if 1 <= from_bottom <= len(self.rows) else None

    def numbers(self, base: str | int) -> tuple[int, ...]:
        """The working number of each row, top row first; empty if there is no such base row."""
        index = self.base_index(base)
        return () if index is None else (*range(index + 1, 0, -1), *range(index + 2, len(self.rows) + 1))


class Line(Struct, frozen=True):
    """One line of chart text, taken apart."""

    beads: tuple[DrawnBead, ...]
    number: int | None
    number_mark: Mark | None
    mark: Mark


def read_chart(written: Written, drop: int) -> tuple[DrawnChart, list[Finding]]:
    """Rows of a body's chart. What is drawn is kept even where something is wrong."""
    lines, found = read_lines(written, numbers=True)
    found += [finding for line in lines for finding in _crowded(line)]
    rows: list[list[Line]] = []
    for line in lines:
        # A number begins a row, so that one lost line is one fault.
        if not rows or len(rows[-1]) == drop or line.number is not None:
            rows.append([line])
        else:
            rows[-1].append(line)
    found += [_short_row(row, drop) for row in rows if len(row) < drop]
    drawn = tuple(DrawnRow(tuple(line.beads for line in row), row[0].number, row[0].number_mark, row[0].mark) for row in rows)
    return DrawnChart(drawn, broken=bool(found)), found


def read_lines(written: Written, numbers: bool) -> tuple[list[Line], list[Finding]]:
    """The lines of a chart text that are not blank. `numbers`: whether numbers may stand before the bar."""
    texts, offset = [], 0
    for text in written.text.split("\n"):
        if text.strip(" "):
            texts.append((text, offset))
        offset += len(text) + 1
    if len(texts) > MOST_LINES or max(len(text) for text, _ in texts) > WIDEST:
        return [], [error(written.whole, f"a chart may have up to {MOST_LINES:,} lines of up to {WIDEST} characters", rule="too-large")]
    if not written.keeps_lines:
        return [], [error(written.whole, "the lines of the chart run together", "write chart: | and the drawing on the lines after it")]
    bars = [text.find("|") for text, _ in texts]
    expected = next((bar for bar in bars if bar >= 0), None)
    lines, found = [], []
    for text, offset in texts:
        line, slips = _read_line(written, text, offset, expected, numbers)
        lines.append(line)
        found += slips
    if len(found) > MOST_SLIPS:
        found = [*found[:MOST_SLIPS], error(found[MOST_SLIPS].mark, "and more like these in this chart")]
    return lines, found


def _read_line(written: Written, text: str, offset: int, expected: int | None, numbers: bool) -> tuple[Line, list[Finding]]:
    """One line. `expected` is the column of the bars; None if the chart has none."""
    bar = text.find("|")
    start = bar + 1
    number, number_mark, found = _number(written, text[:max(bar, 0)], offset, numbers)
    first = start + len(text[start:]) - len(text[start:].lstrip())
    if expected is not None and bar < 0:
        mark = written.mark(offset + first)
        wrong = error(mark, "this line of the chart has no bar", "put a bar | before the drawing of every line")
        return Line((), None, None, mark), [_tab(written.mark(offset + text.index("\t"))) if "\t" in text else wrong]
    if expected is not None and bar != expected:
        found.append(error(written.mark(offset + bar), "this bar does not stand under the bar of the first line",
                           "the drawing is read from the bar on"))
    beads, slips = _beads(written, text, offset, start)
    if not beads and not slips:
        found.append(error(written.mark(offset + max(bar, 0)), "this line of the chart has no bead"))
    mark = written.mark(offset + min(first, len(text) - 1), max(len(text[first:].rstrip()), 1))
    return Line(beads, number, number_mark, mark), found + slips


def _number(written: Written, before: str, offset: int, numbers: bool) -> tuple[int | None, Mark | None, list[Finding]]:
    """What stands before the bar: nothing, or a row number."""
    label = before.strip(" ")
    if "\t" in before:
        return None, None, [_tab(written.mark(offset + before.index("\t")))]
    if not label:
        return None, None, []
    mark = written.mark(offset + before.index(label), len(label))
    if not numbers:
        return None, None, [error(mark, f"{quoted(label)} stands before the bar", "in a fringe chart nothing may stand there")]
    if not re.fullmatch("[0-9]{1,4}", label):
        return None, None, [error(mark, f"{quoted(label)} stands before the bar", "only a row number may stand there")]
    return int(label), mark, []


def _beads(written: Written, text: str, offset: int, start: int) -> tuple[tuple[DrawnBead, ...], list[Finding]]:
    file, places = written.document.file, written.places
    beads, found = [], []
    for index, char in enumerate(text[start:]):
        if char == " ":
            continue
        mark = Mark(file, *places[offset + start + index])
        if char in KEYS:
            beads.append(DrawnBead(char, mark, index))
        elif char == "\t":
            found.append(_tab(mark))
        else:
            found.append(error(mark, f"{quoted(char)} may not stand in the chart", "only spaces and bead keys stand after the bar"))
    return tuple(beads), found


def _crowded(line: Line) -> Iterator[Finding]:
    """Neighbours that stand on top of one another or between two places."""
    for left, right in zip(line.beads, line.beads[1:]):
        apart = right.at - left.at
        if apart % 2:
            yield error(right.mark, f"{left.key} and {right.key} stand {apart} character{'s' * (apart > 1)} apart",
                        "two neighbours of a row stand two characters apart")


def _short_row(row: list[Line], drop: int) -> Finding:
    return error(row[0].mark, f"this row has {len(row)} line{'s' * (len(row) > 1)}, but drop is {drop}",
                 f"draw {drop} lines for every row, upper beads first")


def _tab(mark: Mark) -> Finding:
    return error(mark, "a tab stands in the chart", "use spaces", "tab-in-chart")


def error(mark: Mark, message: str, hint: str = "", rule: str = RULE) -> Finding:
    """A finding of a chart."""
    return Finding(mark, Severity.ERROR, rule, message, hint)
