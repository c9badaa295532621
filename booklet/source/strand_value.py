"""One entry of the list of strands: run text, nothing, or the fields of a loop or a twisted pair."""

from __future__ import annotations

from typing import Any

from msgspec import Struct

from .nodes import MAP, TEXT, Node
from .reader import FieldPath, Reader, label
from .records import Form, Record, entry
from .values import Choice, Source
from .written import Written


class LoopOrTwist(Form):
    """A strand that does not hang straight."""

    loop: Written | None = entry(Source(), "a loop: its beads, from this place to the one where it comes up")
    to: str | None = entry(Choice(("next", "after")), "where a loop comes up: at the next place, or at the one after it", "next")
    twist: Written | None = entry(Source(), "a twisted pair: its first line from the top down, such as 14W > 1D")
    second: Written | None = entry(Source(), "its second line, from the top down too; like the first if left out")


class StrandEntry(Struct, frozen=True):
    """What hangs at one place; nothing if all is None."""

    text: Written | None = None
    other: LoopOrTwist | None = None


class StrandValue:
    """Reads an entry as StrandEntry."""

    record = Record(LoopOrTwist)

    def read(self, node: Node, reader: Reader, path: FieldPath) -> StrandEntry | None:
        if node.kind == MAP:
            other = self._other(node, reader, path)
            return StrandEntry(other=other) if other else None
        if node.kind == TEXT and node.text.strip() == "~":
            return StrandEntry()
        if node.kind == TEXT and not node.text.strip():
            reader.find(node, "empty-value", f"{label(path)} is empty", "write the strand, or ~ to leave its place empty")
            return None
        text = Source().read(node, reader, path)
        return StrandEntry(text) if text else None

    def _other(self, node: Node, reader: Reader, path: FieldPath) -> LoopOrTwist | None:
        before = len(reader.findings)
        read = self.record.read(node, reader, path)
        if len(reader.findings) > before:
            return None
        if bool(read.loop) == bool(read.twist):
            reader.find(node, "missing-field", f"{label(path)} must have either loop or twist",
                        "a straight strand is run text alone")
            return None
        for name, whose in (("to", "loop"), ("second", "twist")):
            mark = reader.marks.get(path + (name,))
            if mark and not getattr(read, whose):
                reader.find_at(mark, "needless-field", f"{label(path + (name,))} belongs to a {whose}", "delete it")
                return None
        return read

    def schema(self) -> dict[str, Any]:
        text = {**Source().schema(), "description": "run text; a twig in brackets, a charm or ring of the findings in braces: "
                                                    "8W [3B > 1R] 6W {ring} 2W > 3B"}
        return {"anyOf": [text, {"type": "null", "description": "~ leaves the place empty"}, self.record.schema()]}
