"""The one finding type of every stage: what is wrong, where, and what to do about it."""

from __future__ import annotations

from enum import IntEnum
from typing import NamedTuple


class Severity(IntEnum):
    """How bad a finding is, worst first so that a sort puts errors on top of equal places."""

    ERROR = 0    # the printed pattern would be wrong
    WARNING = 1  # a reader would suffer
    NOTE = 2     # worth a look

    def __str__(self) -> str:
        return self.name.lower()


class Mark(NamedTuple):
    """A place in a file. Line and column count from 1; `width` is the span in characters."""

    file: str
    line: int = 1
    column: int = 1
    width: int = 1


class Finding(NamedTuple):
    """One thing that is wrong, in one line. Sorts by file, line, column, then severity and rule."""

    mark: Mark
    severity: Severity
    rule: str
    message: str
    hint: str = ""

    @property
    def is_error(self) -> bool:
        return self.severity is Severity.ERROR

    def one_line(self) -> str:
        """`file:line:column: severity: message [rule]`, the form that editors and CI read."""
        hint = f" ({self.hint})" if self.hint else ""
        mark = self.mark
        return f"{mark.file}:{mark.line}:{mark.column}: {self.severity}: {self.message}{hint} [{self.rule}]"
