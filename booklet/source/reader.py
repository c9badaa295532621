"""What reads one file: gathers its findings and the place of everything in it."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping

from ..findings import Finding, Mark, Severity
from .nodes import LIST, MAP, TEXT, Document, Node
from .wording import quoted, shown
from .written import Written

MOST_FINDINGS = 200   # of one file; a file with more is not a pattern
FieldPath = tuple[str | int, ...]

_KINDS = {TEXT: "a text", LIST: "a list", MAP: "a group of fields"}


class Reader:
    """Findings and marks of one document. A path such as ("beads", "W", "colour") names a place."""

    def __init__(self, document: Document) -> None:
        self.document = document
        self.marks: dict[FieldPath, Mark] = {}
        self._found: dict[Finding, None] = {}   # in order, each once: an alias is read where it is used
        self.full = False                       # nothing more is gathered
        self.add(document.findings)

    @property
    def findings(self) -> list[Finding]:
        """What was found, in the order of reading."""
        return list(self._found)

    def add(self, findings: Iterable[Finding]) -> None:
        """Take over findings, as many as one file may have."""
        for finding in findings:
            if self.full:
                return
            self._found[finding] = None
            if len(self._found) == MOST_FINDINGS:
                self.full = True
                more = f"{MOST_FINDINGS} faults of this file are listed; there may be more"
                self._found[Finding(Mark(self.document.file), Severity.ERROR, "too-many-faults", more)] = None

    def find(self, node: Node, rule: str, message: str, hint: str = "") -> None:
        """Add an error at a node."""
        self.find_at(self.mark(node), rule, message, hint)

    def find_at(self, mark: Mark, rule: str, message: str, hint: str = "") -> None:
        """Add an error at a place."""
        self.add([Finding(mark, Severity.ERROR, rule, message, hint)])

    def mark(self, node: Node) -> Mark:
        return Mark(self.document.file, node.line, node.column, node.width)

    def written(self, node: Node) -> Written:
        return Written(node.text, node, self.document)

    def is_a(self, node: Node, kind: str, path: FieldPath) -> bool:
        """Whether the node is what it must be; else a finding."""
        if node.kind == kind:
            return True
        if node.kind == TEXT and not node.text.strip():
            self.empty(node, path)
        elif not self.full:
            found = quoted(node.text) if node.kind == TEXT else _KINDS[node.kind]
            self.find(node, "wrong-type", f"{label(path)} must be {_KINDS[kind]}; found {found}")
        return False

    def empty(self, node: Node, path: FieldPath) -> None:
        """A finding for a field without a value."""
        hint = "give it a value or delete it"
        line = self.document.lines[node.line - 1] if node.line <= len(self.document.lines) else ""
        rest = line[node.column - 1:].strip()
        if not node.style and re.match("#[0-9A-Fa-f]{3,6}\\b", rest):
            hint = "# begins a comment: put the value in quotes"
        self.find(node, "empty-value", f"{label(path)} is empty", hint)

    def entries(self, node: Node) -> Iterator[tuple[str, Node, Node]]:
        """Key text, key and value of a mapping; keys that are no plain texts or stand twice are findings."""
        seen: dict[str, Node] = {}
        for key, value in node.pairs:
            if key.kind != TEXT:
                self.find(key, "wrong-type", f"the name of a field must be a text; found {_KINDS[key.kind]}")
            elif key.text == "<<" and not key.style:
                self.find(key, "merge-key", "merge keys (<<) are not read", "write the fields out")
            elif key.text in seen:
                first = seen[key.text]
                self.find(key, "duplicate-key", f"{quoted(key.text)} stands twice; the first is on line {first.line}",
                          "keep one of them")
            else:
                seen[key.text] = key
                yield key.text, key, value


def nearest_mark(marks: Mapping[FieldPath, Mark], path: FieldPath, file: str) -> Mark:
    """The mark of a path, or of the longest beginning of it that has one; else line 1."""
    for length in range(len(path), 0, -1):
        if path[:length] in marks:
            return marks[path[:length]]
    return Mark(file)


def label(path: FieldPath) -> str:
    """What a message calls the value at a path: "beads.W.colour"; entries of lists count from 1."""
    return shown(".".join(map(str, path)), 80) if path else "the file"
