"""The building blocks of the file format: what a value may be, how it is read, and its JSON Schema.

Each block reads a node into a value and gathers findings in a `Reading`; a value that is wrong becomes None.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from ..findings import Finding, Mark, Severity
from .nodes import LIST, MAP, TEXT, Document, Node
from .wording import did_you_mean, either, quoted

MM = {"mm": 1.0, "cm": 10.0, "m": 1000.0, "in": 25.4, "ft": 304.8}
GRAMS = {"g": 1.0}
PERCENT = {"%": 1.0}
_CALLED = {TEXT: "a text", LIST: "a list", MAP: "fields"}


@dataclass
class Reading:
    """What is gathered while a document is read."""

    document: Document
    findings: list[Finding] = field(default_factory=list)
    marks: dict[tuple, Mark] = field(default_factory=dict)
    nodes: dict[tuple, Node] = field(default_factory=dict)

    def mark(self, node: Node) -> Mark:
        return Mark(self.document.file, node.line, node.column, node.width)

    def find(self, node: Node, rule: str, message: str, hint: str = "") -> None:
        """Add an error at a node."""
        self.findings.append(Finding(self.mark(node), Severity.ERROR, rule, message, hint))


class Block:
    """A value of the format. `called` says in words what may stand there."""

    called = "a value"
    kind = TEXT

    def read(self, node: Node, reading: Reading, path: tuple) -> Any:
        """The value, or None with a finding."""
        reading.marks[path], reading.nodes[path] = reading.mark(node), node
        if node.kind != self.kind:
            reading.find(node, "wrong-type", f"{_name(path)} must be {self.called}, not {_CALLED[node.kind]}")
            return None
        return self.value(node, reading, path)

    def value(self, node: Node, reading: Reading, path: tuple) -> Any:
        raise NotImplementedError

    def schema(self) -> dict:
        raise NotImplementedError


def _name(path: tuple) -> str:
    return ".".join(str(part) for part in path) or "the file"


@dataclass
class Text(Block):
    """A text, perhaps one that must match a pattern or be one of several."""

    choices: tuple[str, ...] = ()
    pattern: str = ""
    called: str = "a text"
    rule: str = "wrong-value"
    may_be_empty: bool = False

    def value(self, node, reading, path):
        if not self.may_be_empty and not node.text.strip():
            return reading.find(node, "missing-value", f"{_name(path)} is empty")
        if self.choices and node.text not in self.choices:
            return reading.find(node, self.rule, f"{_name(path)} is {quoted(node.text)}, but may be {either(self.choices)}",
                                did_you_mean(node.text, self.choices))
        if self.pattern and not re.fullmatch(self.pattern, node.text):
            return reading.find(node, self.rule, f"{_name(path)} is {quoted(node.text)}, but must be {self.called}")
        return node.text

    def schema(self):
        found: dict = {"type": "string"}
        if self.choices:
            found["enum"] = list(self.choices)
        if self.pattern:
            found["pattern"] = f"^(?:{self.pattern})$"
        return found


@dataclass
class Whole(Block):
    """A whole number in a range."""

    least: int
    most: int

    @property
    def called(self):
        return f"a whole number from {self.least:,} to {self.most:,}"

    def value(self, node, reading, path):
        if re.fullmatch(r"[0-9]{1,9}", node.text) and self.least <= int(node.text) <= self.most:
            return int(node.text)
        return reading.find(node, "wrong-type", f"{_name(path)} is {quoted(node.text)}, but must be {self.called}")

    def schema(self):
        return {"type": "integer", "minimum": self.least, "maximum": self.most}


@dataclass
class Number(Block):
    """A number above 0."""

    most: float
    called = "a number above 0"

    def value(self, node, reading, path):
        if re.fullmatch(r"[0-9]{1,7}(\.[0-9]{1,4})?", node.text) and 0 < float(node.text) <= self.most:
            return float(node.text)
        return reading.find(node, "wrong-type", f"{_name(path)} is {quoted(node.text)}, but must be {self.called}")

    def schema(self):
        return {"type": "number", "exclusiveMinimum": 0, "maximum": self.most}


@dataclass
class Flag(Block):
    """true or false, and nothing else that YAML would take for it."""

    called = "true or false"

    def value(self, node, reading, path):
        if node.text in ("true", "false"):
            return node.text == "true"
        return reading.find(node, "wrong-type", f"{_name(path)} is {quoted(node.text)}, but must be true or false")

    def schema(self):
        return {"type": "boolean"}


@dataclass
class Measure(Block):
    """A number with a unit, read into the first unit's scale (mm, grams or per cent)."""

    units: Mapping[str, float]
    most: float
    least: float = 0.0

    @property
    def called(self):
        return f"a number with a unit ({either(self.units)})"

    def value(self, node, reading, path):
        match = re.fullmatch(r"([0-9]{1,7}(?:\.[0-9]{1,4})?) ?([a-z%]+)", node.text)
        if not match or match[2] not in self.units:
            return reading.find(node, "wrong-type", f"{_name(path)} is {quoted(node.text)}, but must be {self.called}")
        number = round(float(match[1]) * self.units[match[2]], 6)
        if not self.least <= number <= self.most:
            return reading.find(node, "too-large", f"{_name(path)} is {quoted(node.text)}, outside {self.least:g} to {self.most:g} {next(iter(self.units))}")
        return number

    def schema(self):
        units = "|".join(re.escape(unit) for unit in self.units)
        return {"type": "string", "pattern": f"^[0-9]{{1,7}}(\\.[0-9]{{1,4}})? ?({units})$"}


@dataclass
class ListOf(Block):
    """A list of one kind of thing."""

    of: Block
    most: int = 500
    kind = LIST
    called = "a list"

    def value(self, node, reading, path):
        if len(node.items) > self.most:
            return reading.find(node, "too-large", f"{_name(path)} has {len(node.items)} entries, more than {self.most}")
        return tuple(self.of.read(item, reading, (*path, n)) for n, item in enumerate(node.items, 1))

    def schema(self):
        return {"type": "array", "items": self.of.schema(), "maxItems": self.most}


@dataclass
class MapOf(Block):
    """Free names with one kind of thing each."""

    of: Block
    names: str = r".{1,60}"
    named: str = "a name"
    most: int = 100
    kind = MAP
    called = "fields"

    def value(self, node, reading, path):
        found = {}
        for key, item in checked_pairs(node, reading, path):
            if not re.fullmatch(self.names, key.text):
                reading.find(key, "wrong-name", f"{quoted(key.text)} cannot stand in {_name(path)}: it must be {self.named}")
                continue
            found[key.text] = self.of.read(item, reading, (*path, key.text))
            reading.marks[(*path, key.text)] = reading.mark(key)
        if len(found) > self.most:
            reading.find(node, "too-large", f"{_name(path)} has {len(found)} entries, more than {self.most}")
        return found

    def schema(self):
        return {"type": "object", "patternProperties": {f"^(?:{self.names})$": self.of.schema()},
                "additionalProperties": False, "maxProperties": self.most}


@dataclass
class Fields(Block):
    """Known fields; the ones in `required` must be there. Those left out do not appear in the value."""

    of: Mapping[str, Block]
    required: tuple[str, ...] = ()
    kind = MAP
    called = "fields"

    def value(self, node, reading, path):
        found = {}
        for key, item in checked_pairs(node, reading, path):
            if key.text not in self.of:
                where = f" in {_name(path)}" if path else ""
                reading.find(key, "unknown-field", f"the field {quoted(key.text)} is not known{where}", did_you_mean(key.text, self.of))
                continue
            found[key.text] = self.of[key.text].read(item, reading, (*path, key.text))
        for name in self.required:
            if name not in found:
                reading.find(node, "missing-field", f"{_name((*path, name))} is missing")
        return found

    def schema(self):
        found = {"type": "object", "properties": {name: block.schema() for name, block in self.of.items()}, "additionalProperties": False}
        return {**found, "required": list(self.required)} if self.required else found


@dataclass
class OneOf(Block):
    """A text in one form, or something else in another."""

    text: Block
    other: Block

    def read(self, node, reading, path):
        return (self.text if node.kind == TEXT else self.other).read(node, reading, path)

    def schema(self):
        return {"anyOf": [self.text.schema(), self.other.schema()]}


def checked_pairs(node: Node, reading: Reading, path: tuple) -> list[tuple[Node, Node]]:
    """The pairs of a mapping whose keys are texts and stand for the first time; the others become findings."""
    first: dict[str, Node] = {}
    good = []
    for key, value in node.pairs:
        if key.kind != TEXT:
            reading.find(key, "wrong-type", f"a name in {_name(path)} must be a text")
        elif key.text in first:
            reading.find(key, "duplicate-key", f"{quoted(key.text)} stands here a second time; the first is in line {first[key.text].line}")
        else:
            first[key.text] = key
            good.append((key, value))
    return good
