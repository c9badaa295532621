"""YAML text to nodes with positions. Every scalar stays text; what YAML would guess is never asked.

The nodes are built from the parser's events, without recursion, so that deep or endless input cannot hurt:
nesting, the number of nodes, and what aliases expand to are bounded.
"""

from __future__ import annotations

import re
from functools import cached_property

import yaml
from msgspec import Struct, field

from ..findings import Finding, Mark, Severity
from .wording import quoted, source_lines

LOADER = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
DEEPEST = 20         # levels of nesting; a pattern file uses 5
MOST_NODES = 20_000  # with aliases expanded; a long pattern uses about 700
CORE = "tag:yaml.org,2002:"
PLAIN_TAGS = {"!", *(CORE + name for name in ("str", "int", "float", "bool", "map", "seq"))}

TEXT, LIST, MAP = "text", "list", "fields"


class Node(Struct, eq=False):
    """A scalar, a list or a mapping, and where it stands (line and column count from 1)."""

    kind: str                   # TEXT | LIST | MAP
    line: int
    column: int
    end_line: int = 0
    end_column: int = 0
    text: str = ""              # of a scalar
    style: str = ""             # of a scalar: "" (plain), "'", '"', "|" or ">"
    items: list[Node] = field(default_factory=list)                # of a list
    pairs: list[tuple[Node, Node]] = field(default_factory=list)   # of a mapping, in order
    size: int = 1               # nodes in it, aliases expanded
    height: int = 0             # levels of nesting in it

    @property
    def width(self) -> int:
        """Characters it takes up; 1 where it spans several lines or is a list or mapping."""
        on_one_line = self.kind == TEXT and self.line == self.end_line
        return max(self.end_column - self.column, 1) if on_one_line else 1


class Document(Struct, frozen=True, dict=True):
    """One file taken apart. `root` is None where `findings` say why."""

    file: str
    text: str
    root: Node | None
    findings: tuple[Finding, ...]

    @cached_property
    def lines(self) -> list[str]:
        """The file's lines, as YAML counts them."""
        return source_lines(self.text)


class _Stop(Exception):
    """Nothing after this place can be trusted."""


def compose(text: str, file: str, most: int = MOST_NODES) -> Document:
    """Take a YAML text apart. `most`: how many values it may hold, aliases written out."""
    builder = _Builder(text, file, most)
    try:
        for event in yaml.parse(text, Loader=LOADER):
            builder.take(event)
    except yaml.MarkedYAMLError as error:
        from .syntax import syntax_finding   # loaded here, because good files never need it

        builder.findings.append(syntax_finding(error, builder.lines, file))
        builder.root = None
    except _Stop:
        builder.root = None
    return Document(file, text, builder.root, tuple(builder.findings))


class _Builder:
    def __init__(self, text: str, file: str, most: int) -> None:
        self.file, self.lines, self.most = file, source_lines(text), most
        self.findings: list[Finding] = []
        self.root: Node | None = None
        self.documents = 0
        self.open: list[Node] = []                   # collections not yet ended, outermost first
        self.keys: list[Node | None] = []            # the key that waits for its value, one for each of them
        self.anchors: dict[str, Node] = {}

    def take(self, event: yaml.Event) -> None:
        """Add one event of the parser to the tree."""
        if isinstance(event, yaml.ScalarEvent):
            node = self._start(TEXT, event)
            node.text, node.style = event.value, event.style or ""
            node.end_line, node.end_column = event.end_mark.line + 1, event.end_mark.column + 1
            self._add(node)
        elif isinstance(event, (yaml.MappingStartEvent, yaml.SequenceStartEvent)):
            self.open.append(self._start(MAP if isinstance(event, yaml.MappingStartEvent) else LIST, event))
            self.keys.append(None)
            if len(self.open) > DEEPEST:
                self._stop(self.open[-1], "too-deep", f"nesting goes deeper than {DEEPEST} levels")
        elif isinstance(event, (yaml.MappingEndEvent, yaml.SequenceEndEvent)):
            self.keys.pop()
            self._add(self.open.pop())
        elif isinstance(event, yaml.AliasEvent):
            self._alias(event)
        elif isinstance(event, yaml.DocumentStartEvent):
            self.documents += 1
            if self.documents == 2:
                self._stop(_at(event), "several-documents", "a second document starts here", "one file holds one pattern")

    def _start(self, kind: str, event: yaml.NodeEvent) -> Node:
        node = _at(event, kind)
        if event.anchor or event.tag:
            self._tag(node, event)
            self._skip_properties(node)
        if event.anchor:
            self.anchors[event.anchor] = node
        return node

    def _tag(self, node: Node, event: yaml.NodeEvent) -> None:
        if event.tag and event.tag not in PLAIN_TAGS:
            tag = event.tag.replace(CORE, "!!", 1)
            self._find(node, "unknown-tag", f"the tag {quoted(tag)} is not read", "write the value alone")

    def _skip_properties(self, node: Node) -> None:
        """Move the node's place behind its anchor and tag, which YAML counts as part of it."""
        properties = re.compile(r"(?:[&!]\S*\s*)+")
        match = properties.match(self.lines[node.line - 1], node.column - 1)
        if match and match.end() < len(self.lines[node.line - 1]):
            node.column = match.end() + 1

    def _alias(self, event: yaml.AliasEvent) -> None:
        target, here = self.anchors.get(event.anchor), _at(event)
        name = quoted("*" + event.anchor)
        if target is None:
            self._stop(here, "unknown-alias", f"{name} stands for nothing: no &{event.anchor} comes before it")
        if any(target is node for node in self.open):
            self._stop(here, "endless-alias", f"{name} stands inside the very thing that it stands for")
        if len(self.open) + target.height > DEEPEST:
            self._stop(here, "too-deep", f"nesting goes deeper than {DEEPEST} levels")
        self._add(target, here)

    def _add(self, node: Node, here: Node | None = None) -> None:
        """Hang a finished node under the collection that is open; `here` is where an alias to it stands."""
        if not self.open:
            self.root = node
            return
        parent = self.open[-1]
        parent.size += node.size
        parent.height = max(parent.height, node.height + 1)
        if sum(opened.size for opened in self.open) > self.most:
            alias = here is not None
            self._stop(here or node, "too-many-aliases" if alias else "too-large",
                       f"{'with its aliases written out, ' if alias else ''}the file holds more than {self.most:,} values")
        if parent.kind == LIST:
            parent.items.append(node)
        elif self.keys[-1] is None:
            self.keys[-1] = node
        else:
            parent.pairs.append((self.keys[-1], node))
            self.keys[-1] = None

    def _find(self, node: Node, rule: str, message: str, hint: str = "") -> None:
        mark = Mark(self.file, node.line, node.column, node.width)
        self.findings.append(Finding(mark, Severity.ERROR, rule, message, hint))

    def _stop(self, node: Node, rule: str, message: str, hint: str = "") -> None:
        self._find(node, rule, message, hint)
        raise _Stop


def _at(event: yaml.Event, kind: str = TEXT) -> Node:
    mark = event.start_mark
    return Node(kind, mark.line + 1, mark.column + 1)
