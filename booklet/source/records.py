"""Groups of fields: a node tree to frozen forms whose fields say what they hold.

Everything that is wrong is found in one run. A value that is wrong is None in the result; a field that
is not written has its default.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Any, ClassVar

from msgspec import Struct

from .nodes import LIST, MAP, TEXT, Node
from .reader import FieldPath, Reader, label
from .values import Value
from .wording import did_you_mean, nearest, quoted


class Entry(Struct, frozen=True):
    """A field of a form: what it may hold, what it is for, and what it is where nothing is written."""

    value: Value
    about: str
    default: Any
    required: bool


def entry(value: Value, about: str, default: Any = None, required: bool = False) -> Any:
    """A field of a form that is read from a file."""
    return Entry(value, about, default, required)


class Form:
    """A frozen group of fields; its class names them with `entry`.

    Its fields say how each is read, which the fields of a library's structures cannot.
    """

    fields: ClassVar[dict[str, Entry]] = {}

    def __init_subclass__(cls) -> None:
        cls.fields = {name: value for name, value in vars(cls).items() if isinstance(value, Entry)}
        for name, field in cls.fields.items():
            setattr(cls, name, field.default)   # what an instance says where it was not told

    def __init__(self, *values: Any, **named: Any) -> None:
        given = dict(zip(self.fields, values), **named)
        if len(given) != len(values) + len(named) or not given.keys() <= self.fields.keys():
            raise TypeError(f"{type(self).__name__} has the fields {', '.join(self.fields)}")
        vars(self).update(given)

    def __setattr__(self, name: str, value: Any) -> None:
        raise AttributeError(f"{type(self).__name__} is frozen")

    def _values(self) -> tuple:
        return tuple(getattr(self, name) for name in self.fields)

    def __eq__(self, other: object) -> bool:
        return type(other) is type(self) and other._values() == self._values()

    def __hash__(self) -> int:
        return hash(self._values())

    def __repr__(self) -> str:
        return f"{type(self).__name__}({', '.join(f'{name}={value!r}' for name, value in vars(self).items())})"


class Record(Struct, frozen=True):
    """A mapping with known fields, read into a form."""

    form: type[Form]

    def read(self, node: Node, reader: Reader, path: FieldPath) -> Any:
        if not reader.is_a(node, MAP, path):
            return None
        read: dict[str, Any] = {}
        known, meant = self.form.fields, set()
        for name, key, value in reader.entries(node):
            if name in known:
                reader.marks[path + (name,)] = reader.mark(value)
                read[name] = known[name].value.read(value, reader, path + (name,))
            elif not reader.full:
                near = nearest(name, known)
                meant.add(near)
                where = f" in {label(path)}" if path else ""
                reader.find(key, "unknown-field", f"the field {quoted(name)} is not known{where}", f"did you mean {near}?" if near else "")
        for name, field in known.items():
            if field.required and name not in read and name not in meant:   # one slip of the pen is one fault
                reader.find(node, "missing-field", f"{label(path + (name,))} is missing")
        return self.form(**read)

    def schema(self) -> dict[str, Any]:
        properties, required = {}, []
        for name, field in self.form.fields.items():
            about = {"description": field.about}
            if isinstance(field.default, (bool, int, str)):
                about["default"] = field.default
            properties[name] = {**field.value.schema(), **about}
            if field.required:
                required.append(name)
        found: dict[str, Any] = {"type": "object", "properties": properties, "additionalProperties": False}
        return {**found, "required": required} if required else found


class Many(Struct, frozen=True):
    """A list."""

    of: Value
    most: int = 100

    def read(self, node: Node, reader: Reader, path: FieldPath) -> tuple | None:
        if not reader.is_a(node, LIST, path):
            return None
        if len(node.items) > self.most:
            reader.find(node, "too-large", f"{label(path)} may have up to {self.most:,} entries; found {len(node.items):,}")
            return None
        read = []
        for index, item in enumerate(node.items, 1):
            reader.marks[path + (index,)] = reader.mark(item)
            read.append(self.of.read(item, reader, path + (index,)))
        return tuple(read)

    def schema(self) -> dict[str, Any]:
        return {"type": "array", "items": self.of.schema(), "maxItems": self.most}


class OneOrMany(Struct, frozen=True):
    """A list, or one entry that stands for a list of itself; its place is then that of the field."""

    of: Record
    most: int = 100

    def read(self, node: Node, reader: Reader, path: FieldPath) -> tuple | None:
        if node.kind == LIST:
            return Many(self.of, self.most).read(node, reader, path)
        one = self.of.read(node, reader, path)
        return None if one is None else (one,)

    def schema(self) -> dict[str, Any]:
        return {"anyOf": [self.of.schema(), Many(self.of, self.most).schema()]}


class Named(Struct, frozen=True):
    """A mapping whose values are all of one kind, by names that have a shape or, without one, that are known.

    With both, the known names are for editors, and a rule checks them. A name of a shape stands for its entry: the
    entry's place is that of its name.
    """

    of: Value
    shape: str                                # regular expression of a name, or ""
    words: str                                # "a bead key is one letter or digit"
    known: Callable[[], tuple[str, ...]] = tuple
    most: int = 100

    def read(self, node: Node, reader: Reader, path: FieldPath) -> dict[str, Any] | None:
        if not reader.is_a(node, MAP, path):
            return None
        if len(node.pairs) > self.most:
            reader.find(node, "too-large", f"{label(path)} may have up to {self.most:,} entries; found {len(node.pairs):,}")
            return None
        read = {}
        for name, key, value in reader.entries(node):
            if self._fits(name):
                reader.marks[path + (name,)] = reader.mark(key if self.shape else value)
                read[name] = self.of.read(value, reader, path + (name,))
            else:
                reader.find(key, "bad-name" if self.shape else "unknown-field", f"{self.words}; found {quoted(name)}",
                            did_you_mean(name, self.known()) if not reader.full else "")
        return read

    def _fits(self, name: str) -> bool:
        return name in self.known() if not self.shape else re.fullmatch(self.shape, name) is not None

    def schema(self) -> dict[str, Any]:
        names = {"enum": list(self.known())} if self.known() else {"pattern": f"^({self.shape})$"}
        return {"type": "object", "propertyNames": names, "additionalProperties": self.of.schema(), "maxProperties": self.most}


class OrText(Struct, frozen=True):
    """A group of fields, or text alone, which stands for one of its fields."""

    record: Record
    name: str      # the field that the text stands for
    text: Value

    def read(self, node: Node, reader: Reader, path: FieldPath) -> Any:
        if node.kind != TEXT:
            return self.record.read(node, reader, path)
        text = self.text.read(node, reader, path)
        return None if text is None else self.record.form(**{self.name: text})

    def schema(self) -> dict[str, Any]:
        return {"anyOf": [self.text.schema(), self.record.schema()]}
