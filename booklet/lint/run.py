"""A lint run: what reading the files found, and what every rule finds, in one sorted list."""

from __future__ import annotations

from collections.abc import Iterator

from ..findings import Finding
from ..source.workspace import Workspace
from .registry import rules
from .subject import Subject


def lint(workspace: Workspace, with_book: bool = True) -> tuple[Finding, ...]:
    """All findings of a workspace, sorted by place. Rules that need more than could be read do not run.

    `with_book`: also check the book as a whole; left out where single patterns are asked for, which do not
    depend on the book's order and pages.
    """
    subjects = [Subject(workspace)] if with_book else []
    subjects += [Subject(workspace, pattern) for pattern in workspace.patterns.values()]
    found = {finding for subject in subjects for finding in _findings(subject)}
    return tuple(sorted(found | set(workspace.findings)))


def _findings(subject: Subject) -> Iterator[Finding]:
    for rule in rules().values():
        if subject.has(rule.needs):
            yield from rule.check(subject)
