"""The fields of a file in the order of the format."""

from __future__ import annotations

import re
from collections.abc import Iterator

from ...source.nodes import MAP, Document, compose
from ...source.pattern import Pattern
from ...source.schema import PatternFile
from .lines import kept_lines, line_end


def in_order(text: str, pattern: Pattern) -> Iterator[str]:
    """The text with its fields moved into order, each with the comments and blank lines above it.

    What stands before the first field, such as a note about the whole file, stays there.
    """
    document = compose(text, pattern.file)
    names, starts = _fields(document)
    rank = list(PatternFile.fields)
    if not starts or any(name not in rank for name in names):
        return
    order = sorted(range(len(names)), key=lambda index: rank.index(names[index]))
    if order == sorted(order):
        return
    lines = kept_lines(text)
    parts = ["".join(lines[start:end]) for start, end in zip(starts, [*starts[1:], len(lines)])]
    yield "".join((*lines[:starts[0]], *_ended([parts[index] for index in order], lines)))


def _fields(document: Document) -> tuple[list[str], list[int]]:
    """Names of the fields, and the index of the line where each one begins with what stands above it; none if one line holds two."""
    root = document.root
    if root is None or root.kind != MAP or any(key.column != 1 for key, _ in root.pairs):
        return [], []
    starts = []
    for key, _ in root.pairs:
        start = key.line - 1
        while starts and start - 1 > starts[-1] and re.match(r"\s*$|#", document.lines[start - 1]):
            start -= 1
        starts.append(start)
    return [key.text for key, _ in root.pairs], starts if len(set(starts)) == len(starts) else []


def _ended(parts: list[str], lines: list[str]) -> list[str]:
    """The parts, with a line end between those that had none: the last line of a file may go without."""
    end = line_end(lines[0])
    parts = [part if line_end(part) else part + end for part in parts]
    return parts if line_end(lines[-1]) else [*parts[:-1], parts[-1].removesuffix(end)]
