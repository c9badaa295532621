"""The book file: title, texts, order, page, and what its patterns inherit."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from ..craft.beads import BeadKind
from ..craft.tally import PACK_GRAMS, SPARE_PERCENT
from ..findings import Finding, Mark
from .kinds import shipped_kinds, with_own
from .nodes import MAP, compose
from .schema import BOOK, TRIMS
from .shapes import Reading


@dataclass(frozen=True)
class Page:
    """The trimmed page in mm."""

    width: float = 148.0
    height: float = 210.0
    bleed: float = 0.0
    gutter: float = 4.0


@dataclass(frozen=True)
class Book:
    """What the book file says; a folder without one has a Book of its defaults."""

    file: str = ""
    title: str = ""
    subtitle: str = ""
    author: str = ""
    publisher: str = ""
    year: int | None = None
    edition: str = ""
    language: str = "en"
    copyright: str = ""
    licence: str = ""
    contact: str = ""
    order: tuple[str, ...] = ()
    front: tuple[str, ...] = ()
    back: tuple[str, ...] = ()
    page: Page = Page()
    defaults: Mapping[str, Any] = field(default_factory=dict)
    kinds: Mapping[str, BeadKind] = field(default_factory=shipped_kinds)
    spare_percent: float = SPARE_PERCENT
    least_spare: int = 0
    pack: float = PACK_GRAMS
    marks: Mapping[tuple, Mark] = field(default_factory=dict)

    def mark(self, *path) -> Mark:
        """The place of a field, or of what it is part of."""
        return nearest_mark(self.marks, path, self.file)


def nearest_mark(marks: Mapping[tuple, Mark], path: tuple, file: str) -> Mark:
    """The mark of the longest known beginning of a path; line 1 if nothing of it is known."""
    for end in range(len(path), 0, -1):
        if path[:end] in marks:
            return marks[path[:end]]
    return Mark(file)


def read_book(text: str, file: str) -> tuple[Book | None, list[Finding]]:
    """Read a book file; None with findings where it is no mapping at all."""
    document = compose(text, file)
    reading = Reading(document, list(document.findings))
    root = checked_root(document, reading, "a book")
    if root is None:
        return None, reading.findings
    values = {key: value for key, value in BOOK.value(root, reading, ()).items() if value is not None}
    spare = values.pop("spare", SPARE_PERCENT)
    spare = spare if isinstance(spare, dict) else {"percent": spare}
    kinds = with_own(values.pop("kinds", {}), reading)
    page = _page(values.pop("page", {}), reading)
    names = {key: tuple(name.removesuffix(".md") for name in values.pop(key, ()) if name) for key in ("front", "back")}
    order = tuple(slug for slug in values.pop("order", ()) if slug)
    made = Book(file=file, order=order, page=page, kinds=kinds, spare_percent=spare.get("percent") or 0.0 if "percent" in spare else SPARE_PERCENT,
                least_spare=spare.get("least") or 0, marks=reading.marks, **names, **values)
    return made, reading.findings


def _page(fields: Mapping[str, Any], reading: Reading) -> Page:
    wanted = fields.get("size") or "A5"
    if wanted in TRIMS:
        width, height = TRIMS[wanted]
    else:
        numbers = re.findall(r"[0-9]+(?:\.[0-9]+)?", wanted)[:2]
        scale = 25.4 if wanted.endswith("in") else 1.0
        width, height = (float(number) * scale for number in numbers) if len(numbers) == 2 else (0.0, 0.0)
        if not (90 <= width <= 450 and 120 <= height <= 600):
            reading.find(reading.nodes[("page", "size")], "wrong-value", f"a page of {wanted} cannot hold a pattern",
                         "the page may be 90 to 450 mm wide and 120 to 600 mm high")
            width, height = TRIMS["A5"]
    extra = {key: fields[key] for key in ("bleed", "gutter") if fields.get(key) is not None}
    for key, value in extra.items():
        if value > 30:
            reading.find(reading.nodes[("page", key)], "too-large", f"a {key} of {value:g} mm is more than 30 mm")
    return Page(width, height, **{key: min(value, 30.0) for key, value in extra.items()})


def checked_root(document, reading: Reading, what: str):
    """The root if it is a mapping; None with a finding if the file is empty or holds something else."""
    root = document.root
    if root is None:
        if not document.findings:
            reading.findings.append(_whole(document.file, "empty-file", f"{document.file} is empty", f"{what} file begins with its title"))
        return None
    if root.kind != MAP:
        reading.find(root, "not-a-mapping", f"{document.file} holds {'a list' if root.kind == 'list' else 'a text'} where fields are expected",
                     f"{what} file begins with title:")
        return None
    return root


def _whole(file: str, rule: str, message: str, hint: str) -> Finding:
    from ..findings import Severity
    return Finding(Mark(file), Severity.ERROR, rule, message, hint)
