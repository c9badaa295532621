"""A lint run: what reading the files found, and what every rule finds, in one sorted list."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from ..findings import Finding
from .registry import rules
from .subject import Subject

if TYPE_CHECKING:
    from ..source.workspace import Workspace


def lint(workspace: Workspace) -> tuple[Finding, ...]:
    """All findings of a workspace, sorted by place. Rules that need more than could be read do not run."""
    subjects = [Subject(workspace), *(Subject(workspace, pattern) for pattern in workspace.patterns.values())]
    found = {finding for subject in subjects for finding in _findings(subject)}
    return tuple(sorted(found | set(workspace.findings)))


def _findings(subject: Subject) -> Iterator[Finding]:
    for rule in rules().values():
        if subject.has(rule.needs):
            yield from rule.check(subject)
