"""Kinds of values that a field can have: each reads a node, and says itself as JSON Schema for editors.

`read` gives None where the node is not such a value; the reader then holds the finding.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from math import inf
from typing import Any, Protocol

from msgspec import Struct

from . import measures
from .files import strange_characters
from .nodes import TEXT, Node
from .reader import FieldPath, Reader, label
from .wording import did_you_mean, either, quoted
from .written import Written

TEXT_TYPES = ["string", "number"]   # an editor reads a bare 1.0 as a number; here it is text
MOST = 1_000_000                    # no number in a file is larger


class Value(Protocol):
    """What every kind of value can do."""

    def read(self, node: Node, reader: Reader, path: FieldPath) -> Any: ...

    def schema(self) -> dict[str, Any]: ...


def text_of(node: Node, reader: Reader, path: FieldPath) -> str | None:
    """The text of a scalar that is not empty and that can be printed."""
    if not reader.is_a(node, TEXT, path):
        return None
    text = node.text.strip()
    if not text:
        reader.empty(node, path)
        return None
    strange = next(strange_characters(text), None)
    if strange:
        reader.find(node, "strange-character", f"{label(path)} holds the invisible character U+{ord(strange.group()):04X}", "delete it")
        return None
    return text


class Text(Struct, frozen=True):
    """One line of text, or with `lines` a longer one."""

    longest: int = 200
    lines: bool = False

    def read(self, node: Node, reader: Reader, path: FieldPath) -> str | None:
        text = text_of(node, reader, path)
        if text is None:
            return None
        if not self.lines and "\n" in text:
            reader.find(node, "wrong-type", f"{label(path)} must be one line")
            return None
        if len(text) > self.longest:
            reader.find(node, "too-large", f"{label(path)} may have up to {self.longest:,} characters; found {len(text):,}")
            return None
        return text if self.lines else " ".join(text.split())

    def schema(self) -> dict[str, Any]:
        return {"type": "string" if self.lines else TEXT_TYPES, "minLength": 1, "maxLength": self.longest}


class Source(Struct, frozen=True):
    """Chart or run text, taken apart later: the text with the place of every character."""

    longest: int = 500_000

    def read(self, node: Node, reader: Reader, path: FieldPath) -> Written | None:
        if not reader.is_a(node, TEXT, path):
            return None
        if not node.text.strip():
            reader.empty(node, path)
            return None
        return reader.written(node)

    def schema(self) -> dict[str, Any]:
        return {"type": TEXT_TYPES, "minLength": 1, "maxLength": self.longest}


class Choice(Struct, frozen=True):
    """One of a few words."""

    names: tuple[str, ...]

    def read(self, node: Node, reader: Reader, path: FieldPath) -> str | None:
        text = text_of(node, reader, path)
        if text is None or text in self.names:
            return text
        reader.find(node, "unknown-choice", f"{label(path)} must be {either(self.names)}; found {quoted(text)}",
                    did_you_mean(text, self.names) if len(self.names) > 1 else "")
        return None

    def schema(self) -> dict[str, Any]:
        return {"enum": list(self.names)}


class Flag:
    """true or false, and nothing that merely looks like it."""

    def read(self, node: Node, reader: Reader, path: FieldPath) -> bool | None:
        text = Choice(("true", "false")).read(node, reader, path)
        return None if text is None else text == "true"

    def schema(self) -> dict[str, Any]:
        return {"type": "boolean"}


class Whole(Struct, frozen=True):
    """A whole number."""

    low: int = 0
    high: int = MOST

    def read(self, node: Node, reader: Reader, path: FieldPath) -> int | None:
        text = text_of(node, reader, path)
        if text is None:
            return None
        if not re.fullmatch("-?(0|[1-9][0-9]*)", text):
            reader.find(node, "wrong-type", f"{label(path)} must be a whole number; found {quoted(text)}")
            return None
        if len(text) > 8 or not self.low <= int(text) <= self.high:
            reader.find(node, "out-of-range", f"{label(path)} must be {self.low:,} to {self.high:,}; found {quoted(text)}")
            return None
        return int(text)

    def schema(self) -> dict[str, Any]:
        return {"type": "integer", "minimum": self.low, "maximum": self.high}


class Number(Struct, frozen=True):
    """A decimal number greater than 0."""

    high: float = MOST

    def read(self, node: Node, reader: Reader, path: FieldPath) -> float | None:
        text = text_of(node, reader, path)
        if text is None:
            return None
        if not re.fullmatch(measures.NUMBER, text):
            reader.find(node, "wrong-type", f"{label(path)} must be a number such as 1.5; found {quoted(text)}")
            return None
        if not 0 < float(text) <= self.high:
            reader.find(node, "out-of-range", f"{label(path)} must be greater than 0 and up to {self.high:g}; found {quoted(text)}")
            return None
        return float(text)

    def schema(self) -> dict[str, Any]:
        return {"type": "number", "exclusiveMinimum": 0, "maximum": self.high}


class Measure(Struct, frozen=True):
    """A number with its unit; `convert` makes it a number in one unit, `low` and `high` bound that."""

    like: str                                    # an example
    pattern: str                                 # for editors
    convert: Callable[[str], float | None]
    low: float
    high: float
    unit: str

    def read(self, node: Node, reader: Reader, path: FieldPath) -> float | None:
        text = text_of(node, reader, path)
        if text is None:
            return None
        number = self.convert(text)
        if number is None and re.fullmatch(self.pattern.replace(measures.NUMBER, r"[0-9]+(?:\.[0-9]+)?"), text):   # only too long
            number = inf
        if number is None:
            hint = "write a point, not a comma, before decimals" if re.match("[0-9]+,[0-9]", text) else ""
            reader.find(node, "bad-measure", f"{label(path)} must be a number and a unit, such as {self.like}; found {quoted(text)}", hint)
            return None
        if not self.low <= number <= self.high:
            reader.find(node, "out-of-range",
                        f"{label(path)} must be {self.low:g} to {self.high:g} {self.unit}; found {quoted(text)}")
            return None
        return number

    def schema(self) -> dict[str, Any]:
        return {"type": "string", "pattern": f"^\\s*{self.pattern}\\s*$", "examples": [self.like]}


def mm(like: str, low: float, high: float) -> Measure:
    """A length in mm."""
    return Measure(like, measures.LENGTH, measures.length, low, high, "mm")


def grams(like: str) -> Measure:
    """A mass in grams."""
    return Measure(like, rf"{measures.NUMBER} ?g", lambda text: measures.amount(text, "g"), 0.1, 10_000, "g")


def points(like: str, low: float, high: float) -> Measure:
    """A size of type in points of 1/72 in."""
    return Measure(like, rf"{measures.NUMBER} ?pt", lambda text: measures.amount(text, "pt"), low, high, "pt")


def percent(like: str) -> Measure:
    """A part of a hundred."""
    return Measure(like, rf"{measures.NUMBER} ?%", lambda text: measures.amount(text, "%"), 0, 200, "%")


class Colour(Struct, frozen=True):
    """#rgb or #rrggbb, given as #rrggbb in lower case."""

    pattern: str = "#([0-9A-Fa-f]{3}|[0-9A-Fa-f]{6})"

    def read(self, node: Node, reader: Reader, path: FieldPath) -> str | None:
        text = text_of(node, reader, path)
        if text is None:
            return None
        if not re.fullmatch(self.pattern, text):
            reader.find(node, "bad-colour", f"{label(path)} must be like #3d5a80 or #f80; found {quoted(text)}",
                        f'did you mean "#{text}"?' if re.fullmatch("[0-9A-Fa-f]{6}", text) else "")
            return None
        digits = text[1:].lower()
        return "#" + (digits if len(digits) == 6 else "".join(digit * 2 for digit in digits))

    def schema(self) -> dict[str, Any]:
        return {"type": "string", "pattern": f"^{self.pattern}$", "examples": ["#3d5a80"]}


class Shaped(Struct, frozen=True):
    """Text of a certain shape, said by a regular expression and in words."""

    pattern: str
    rule: str
    words: str             # "must be like this: ..."
    longest: int = 200

    def read(self, node: Node, reader: Reader, path: FieldPath) -> str | None:
        text = Text(self.longest).read(node, reader, path)
        if text is None or re.fullmatch(self.pattern, text):
            return text
        reader.find(node, self.rule, f"{label(path)} must be {self.words}; found {quoted(text)}")
        return None

    def schema(self) -> dict[str, Any]:
        return {"type": TEXT_TYPES, "pattern": f"^({self.pattern})$", "maxLength": self.longest}


SLUG = Shaped(r"[a-z0-9]+(-[a-z0-9]+)*", "bad-slug", "small letters, digits and single hyphens, such as cloud-shadow", 80)
VERSION = Shaped(r"[0-9]+(\.[0-9]+){0,3}", "bad-version", 'numbers with points, such as "1.0"', 20)
LINK = Shaped(r"https?://[^\s<>\"'\\]+", "bad-link", "a web address that begins with https://", 500)
LANGUAGE = Shaped(r"[A-Za-z]{2,3}(-[A-Za-z0-9]{2,8})*", "bad-language", "a language tag such as en-GB", 35)


class FileName(Struct, frozen=True):
    """A file under a folder of the workspace, with slashes; nothing that leads out of it."""

    like: str

    def read(self, node: Node, reader: Reader, path: FieldPath) -> str | None:
        text = Text(300).read(node, reader, path)
        if text is None:
            return None
        parts = re.split(r"[/\\]", text)
        if ".." in parts or not parts[0] or ":" in text or "\\" in text:
            reader.find(node, "outside-workspace", f"{label(path)} must be a file in the workspace, such as {self.like}; found {quoted(text)}")
            return None
        return "/".join(part for part in parts if part not in ("", "."))

    def schema(self) -> dict[str, Any]:
        return {"type": "string", "minLength": 1, "maxLength": 300, "examples": [self.like]}


class OrWord(Struct, frozen=True):
    """A value, or a word that stands for a way to find it."""

    value: Value
    word: str

    def read(self, node: Node, reader: Reader, path: FieldPath) -> Any:
        return self.word if node.kind == TEXT and node.text.strip() == self.word else self.value.read(node, reader, path)

    def schema(self) -> dict[str, Any]:
        return {"anyOf": [{"enum": [self.word]}, self.value.schema()]}


class BookNumber:
    """An ISBN, given as its thirteen digits; its last digit must be right."""

    def read(self, node: Node, reader: Reader, path: FieldPath) -> str | None:
        from stdnum import isbn   # loaded late: hardly any file of a folder has one
        from stdnum.exceptions import InvalidChecksum, ValidationError

        text = text_of(node, reader, path)
        if text is None:
            return None
        try:
            return isbn.to_isbn13(isbn.validate(text)).replace("-", "")
        except InvalidChecksum:
            reader.find(node, "bad-isbn", f"the last digit of {label(path)} does not go with the others; found {quoted(text)}", "compare it with the number that you were given")
        except ValidationError:
            reader.find(node, "bad-isbn", f"{label(path)} must be an ISBN such as 978-3-16-148410-0; found {quoted(text)}")
        return None

    def schema(self) -> dict[str, Any]:
        return {"type": TEXT_TYPES, "pattern": "^[0-9][0-9 -]{8,20}[0-9X]$"}


class PageSize:
    """A page size by name, or width x height."""

    def read(self, node: Node, reader: Reader, path: FieldPath) -> tuple[float, float] | None:
        text = text_of(node, reader, path)
        if text is None:
            return None
        size = measures.page_size(text)
        if size is None:
            reader.find(node, "bad-page-size",
                        f"{label(path)} must be {', '.join(measures.PAGE_SIZES)} or like 148 x 210 mm; found {quoted(text)}",
                        did_you_mean(text, measures.PAGE_SIZES))
            return None
        if not (90 <= size[0] <= 450 and 120 <= size[1] <= 600):
            reader.find(node, "out-of-range", f"a page must be 90 to 450 mm wide and 120 to 600 mm high; found {quoted(text)}")
            return None
        return size

    def schema(self) -> dict[str, Any]:
        return {"type": "string", "examples": [*measures.PAGE_SIZES, "148 x 210 mm"]}


class BaseRow:
    """Which row of the chart is row 1."""

    def read(self, node: Node, reader: Reader, path: FieldPath) -> str | int | None:
        text = text_of(node, reader, path)
        if text is None or text in ("bottom", "widest"):
            return text
        if re.fullmatch("[1-9][0-9]{0,3}", text):
            return int(text)
        reader.find(node, "unknown-choice", f"{label(path)} must be bottom, widest or a row counted from the bottom; found {quoted(text)}",
                    did_you_mean(text, ("bottom", "widest")))
        return None

    def schema(self) -> dict[str, Any]:
        return {"anyOf": [{"enum": ["bottom", "widest"]}, {"type": "integer", "minimum": 1, "maximum": 9999}]}
