"""A text inside a YAML file, and where each of its characters stands in that file."""

from __future__ import annotations

import re
from functools import cached_property

from msgspec import Struct

from ..findings import Mark
from .nodes import Document, Node

_ESCAPE = r"(?s)\\(?:x([0-9A-Fa-f]{2})|u([0-9A-Fa-f]{4})|U([0-9A-Fa-f]{8})|(.?))"
_SPACE_ESCAPES = "ntrNLPv_\t \f"
Place = tuple[int, int]   # line and column, from 1


class Written(Struct, frozen=True, dict=True):
    """A scalar as text, with its place character by character."""

    text: str
    node: Node
    document: Document

    @property
    def whole(self) -> Mark:
        """The scalar as a whole."""
        return Mark(self.document.file, self.node.line, self.node.column, self.node.width)

    def mark(self, offset: int, width: int = 1) -> Mark:
        """The place of a character of the text; the place of its end if there is no such character."""
        places = self.places
        if offset < len(places):
            line, column = places[offset]
        elif places:
            line, column = places[-1][0], places[-1][1] + 1
        else:
            return self.whole
        return Mark(self.document.file, line, column, width)

    @cached_property
    def places(self) -> list[Place]:
        """The place of every character."""
        node = self.node
        if node.style == "|":
            return self._literal()
        if node.line == node.end_line:
            raw = self.document.lines[node.line - 1]
            for skip in (0, 1):   # plain, or quoted without any escape
                start = node.column - 1 + skip
                if bool(node.style) == bool(skip) and raw.startswith(self.text, start):
                    return [(node.line, start + 1 + index) for index in range(len(self.text))]
        return self._aligned()

    @property
    def keeps_lines(self) -> bool:
        """Whether no line of the file was folded into the one before it."""
        if self.node.style == "|":
            return True
        line_of: dict[int, int] = {}
        number = 0
        for char, (line, _) in zip(self.text, self.places):
            if char == "\n":
                number += 1
            elif char != " " and line_of.setdefault(number, line) != line:
                return False
        return True

    def _literal(self) -> list[Place]:
        """Lines stand one to one under the header; what the file's lines have more is their indent."""
        places: list[Place] = []
        for number, content in enumerate(self.text.split("\n"), self.node.line + 1):
            raw = self.document.lines[number - 1] if number <= len(self.document.lines) else ""
            indent = max(len(raw) - len(content), 0)
            places += [(number, indent + column) for column in range(1, len(content) + 2)]
        return places[:len(self.text)]

    def _aligned(self) -> list[Place]:
        """Folding changes only white space: the others stand in the file in the same order."""
        marks = iter(_marks_in(self.node, self.document.lines))
        places: list[Place] = []
        here = (self.node.line, self.node.column)
        for char in self.text:
            here = (here[0], here[1] + 1) if char.isspace() and places else next(marks, here) if not char.isspace() else here
            places.append(here)
        return places


def _marks_in(node: Node, lines: list[str]) -> list[Place]:
    """Places of the characters in the file that are not white space, quotes taken apart."""
    line, column = node.line, node.column - 1
    if node.style in ("|", ">"):
        line, column = line + 1, 0
    elif node.style:
        column += 1
    marks = []
    while line <= min(node.end_line, len(lines)):
        raw = lines[line - 1]
        end = node.end_column - 1 if line == node.end_line else len(raw)
        while column < end:
            char, width = _one(raw, column, node.style)
            if char and not char.isspace():
                marks.append((line, column + 1))
            column += width
        line, column = line + 1, 0
    return marks


def _one(raw: str, column: int, style: str) -> tuple[str, int]:
    """The character that stands there, and how many characters it takes in the file; "" for an escaped line end."""
    if style == "'" and raw.startswith("''", column):
        return "'", 2
    if style == '"' and raw[column] == "\\":
        match = re.compile(_ESCAPE).match(raw, column)
        number = match[1] or match[2] or match[3]
        if number:
            return chr(int(number, 16)), len(match[0])
        return ("" if not match[4] else " " if match[4] in _SPACE_ESCAPES else "\\"), len(match[0])
    return raw[column], 1
