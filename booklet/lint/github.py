"""Findings as workflow commands, the lines that a GitHub workflow turns into annotations of the changed files."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from ..findings import Finding
from ..source.wording import shown

LEVELS = {"error": "error", "warning": "warning", "note": "notice"}


def github_lines(findings: Iterable[Finding]) -> Iterator[str]:
    """One command a finding."""
    for finding in findings:
        mark = finding.mark
        where = {"file": mark.file, "line": mark.line, "col": mark.column, "endColumn": mark.column + mark.width, "title": finding.rule}
        properties = ",".join(f"{name}={_property(str(value))}" for name, value in where.items())
        hint = f" ({finding.hint})" if finding.hint else ""
        yield f"::{LEVELS[str(finding.severity)]} {properties}::{_data(shown(finding.message + hint, 2000))}"


def _data(text: str) -> str:
    """The signs that would end or forge a command, written as it wants them."""
    return text.replace("%", "%25").replace("\r", "%0D").replace("\n", "%0A")


def _property(text: str) -> str:
    return _data(text).replace(":", "%3A").replace(",", "%2C")
