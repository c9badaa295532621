"""A text as lines that keep their ends, and marks in them."""

from __future__ import annotations

import re

from ...findings import Mark

_LINE = re.compile("[^\r\n]*(?:\r\n|\r|\n|$)")


def kept_lines(text: str) -> list[str]:
    """The lines, each with the end it has."""
    return [line for line in _LINE.findall(text) if line]


def with_change(text: str, mark: Mark, new: str) -> str:
    """The text with what stands at a mark, on one line, replaced."""
    lines = kept_lines(text)
    line, start = lines[mark.line - 1], mark.column - 1
    lines[mark.line - 1] = line[:start] + new + line[start + mark.width:]
    return "".join(lines)


def line_end(line: str) -> str:
    """What ends a line."""
    return line[len(line.rstrip("\r\n")):]
