"""What stops a command: a tiny tree of exceptions, caught in one place, booklet/cli.py.

Faults in a pattern or book file are findings, not exceptions. An exception that is not in this tree is
a bug of ours and shows its traceback.
"""

from __future__ import annotations

from collections.abc import Iterable

from .findings import Finding


class BookletError(Exception):
    """The command cannot go on. `message` states the fact in one line, `hint` says what to do."""

    exit_code = 2

    def __init__(self, message: str, hint: str = "") -> None:
        super().__init__(message)
        self.message = message
        self.hint = hint


class WrongUse(BookletError):
    """The command was asked for something that is not there, such as an unknown pattern."""


class UnreadableInput(BookletError):
    """A folder or file that the command needs is missing or cannot be read."""


class UnwritableOutput(BookletError):
    """A result cannot be written where it belongs."""


class FindingsError(BookletError):
    """The input is readable but wrong: the findings say where. Nothing has been written."""

    exit_code = 1

    def __init__(self, findings: Iterable[Finding], message: str = "nothing was written, because there are errors") -> None:
        super().__init__(message)
        self.findings = tuple(findings)
