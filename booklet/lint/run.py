"""A lint run: what reading the files found, and what every rule finds, in one sorted list."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator

from msgspec import Struct

from ..findings import Finding, Severity
from ..source.workspace import Workspace
from .registry import FIRM, SELDOM, rules_in
from .subject import Subject

OFF = "off"
Kept = Callable[[Subject, Callable[[Subject], Iterable[Finding]]], Iterable[Finding]]   # knows what was found in a pattern, or lets it be looked at


class Checked(Struct, frozen=True):
    """The findings of a run, sorted by place."""

    findings: tuple[Finding, ...]
    allowed: tuple[tuple[Finding, str], ...]   # those that their pattern allows, with the reason


def lint(workspace: Workspace, with_book: bool = True, kept: Kept | None = None) -> tuple[Finding, ...]:
    """All findings of a workspace that are not allowed, sorted by place. Rules that need more than could be read do not run.

    `with_book`: also check the book as a whole; left out where single patterns are asked for, which do not
    depend on the book's order and pages. `kept`: what was found in patterns before.
    """
    return checked(workspace, with_book, kept).findings


def checked(workspace: Workspace, with_book: bool = True, kept: Kept | None = None) -> Checked:
    """As `lint`, with what the patterns allow told apart."""
    subjects = (Subject(workspace, pattern) for pattern in (*([None] if with_book else []), *workspace.patterns.values()))
    found = (finding for subject in subjects for finding in _findings(subject, kept))   # one after the other: what is worked out for one is not kept
    return weighed(Checked(workspace.findings, ()), found, workspace)


def weighed(run: Checked, found: Iterable[Finding], workspace: Workspace) -> Checked:
    """A run with more findings, as the book weighs them and each pattern allows them."""
    weighed_ones = {_weighed(finding, workspace.book.severities) for finding in found}
    reasons = {pattern.file: pattern.allowed for pattern in workspace.patterns.values() if pattern.allowed}
    kept, allowed = set(run.findings), list(run.allowed)
    for finding in weighed_ones - {None}:
        reason = reasons.get(finding.mark.file, {}).get(finding.rule)
        if reason is None or finding.rule in FIRM:
            kept.add(finding)
        else:
            allowed.append((finding, reason))
    return Checked(tuple(sorted(kept)), tuple(sorted(allowed)))


def _findings(subject: Subject, kept: Kept | None) -> Iterator[Finding]:
    yield from kept(subject, _common) if kept and subject.pattern else _common(subject)
    for folder in filter(subject.has, SELDOM):
        yield from _found(subject, folder)


def _common(subject: Subject) -> Iterator[Finding]:
    return _found(subject, "")


def _found(subject: Subject, folder: str) -> Iterator[Finding]:
    for rule in rules_in(folder):
        if subject.has(rule.needs):
            yield from rule.check(subject)


def _weighed(finding: Finding, severities: dict[str, str]) -> Finding | None:
    """The finding as the book weighs it; None where the book does not want to see it."""
    wanted = severities.get(finding.rule)
    if wanted is None or finding.rule in FIRM:
        return finding
    return None if wanted == OFF else finding._replace(severity=Severity[wanted.upper()])
