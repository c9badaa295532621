"""A drawn fringe as run text."""

from __future__ import annotations

import re
from collections.abc import Iterator

from ...craft.runs import said
from ...source.nodes import MAP, Node, compose
from ...source.pattern import Pattern, WrittenStrand
from .lines import kept_lines, line_end


def as_runs(text: str, pattern: Pattern) -> Iterator[str]:
    """The text with the chart of its fringe replaced by a list of strands."""
    document = compose(text, pattern.file)
    fringe = _field(document.root, "fringe")
    chart = _field(fringe[1], "chart") if fringe else None
    if not chart or chart[1].style != "|":
        return
    key, drawing = chart
    lines = kept_lines(text)
    first, after = key.line - 1, drawing.line
    while after < len(lines) and (not lines[after].strip() or _indent(lines[after]) >= key.column):
        after += 1
    while not lines[after - 1].strip():   # blank lines under the drawing part it from what follows
        after -= 1
    head, end, indent = lines[first], line_end(lines[first]), " " * (key.column - 1)
    comment = re.search(r"\s+#.*", head[drawing.column:].rstrip("\r\n"))
    strands = [f"{indent}  - {run_text(strand)}{end}" for strand in _written(pattern)]
    yield "".join((*lines[:first], f"{head[:key.column - 1]}strands:{comment[0] if comment else ''}{end}", *strands, *lines[after:]))


def run_text(strand: WrittenStrand) -> str:
    """The beads of a strand, without its end beads, as a pattern file writes them: "3(2W 1B) 4W"."""
    words = said([(bead.key,) for bead in strand.beads])
    return words.replace(" × [", "(").replace("]", ")").replace(",", "")


def _written(pattern: Pattern) -> tuple[WrittenStrand, ...]:
    """The strands as drawn; of a mirrored fringe those up to the middle one."""
    strands = pattern.written_strands
    drawn = len({strand.mark for strand in strands})
    return strands[:drawn]


def _field(node: Node | None, name: str) -> tuple[Node, Node] | None:
    if node is None or node.kind != MAP:
        return None
    return next(((key, value) for key, value in node.pairs if key.text == name), None)


def _indent(line: str) -> int:
    return len(line) - len(line.lstrip(" "))
