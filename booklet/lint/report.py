"""Findings as text and as JSON."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence

from ..findings import Finding, Mark, Severity
from ..source.wording import shown, source_lines

WIDEST = 100   # columns of a source line that are shown around its marker
Paint = Callable[[str, str], str]


def lines(findings: Iterable[Finding]) -> Iterator[str]:
    """One line a finding: `file:line:column: severity: message (hint) [rule]`."""
    for finding in findings:
        yield one_line(finding)


def one_line(finding: Finding) -> str:
    """The line that editors and continuous integration read; never more than one, whatever was quoted."""
    return shown(finding.one_line(), 2000)


def grouped(findings: Sequence[Finding], text_of: Callable[[str], str], paint: Paint = lambda role, text: text) -> Iterator[str]:
    """For a person: findings file by file, each with its source line and a marker under the place.

    `text_of` gives the text of a file ("" if there is none); `paint(role, text)` may colour a text, the role being "file",
    "error", "warning", "note", "rule" or "quiet".
    """
    file, source = None, [""]
    for finding in findings:
        if finding.mark.file != file:
            if file is not None:
                yield ""
            file = finding.mark.file
            source = source_lines(text_of(file))
            yield paint("file", file)
        yield from _with_source(finding, source, paint)


def _with_source(finding: Finding, source: Sequence[str], paint: Paint) -> Iterator[str]:
    mark, level = finding.mark, str(finding.severity)
    yield f"  {mark.line}:{mark.column} {paint(level, level)}: {shown(finding.message, 1000)} {paint('rule', f'[{finding.rule}]')}"
    if mark.line <= len(source) and source[mark.line - 1].strip():
        text, pointer = marked(source[mark.line - 1], mark)
        gutter = f"{mark.line:>6} | "
        yield paint("quiet", gutter) + text
        yield paint("quiet", " " * (len(gutter) - 2) + "| ") + paint(level, pointer)
    if finding.hint:
        yield f"         {shown(finding.hint, 1000)}"


def marked(line: str, mark: Mark) -> tuple[str, str]:
    """The part of a source line around a mark, printable, and the marker that stands under it."""
    start = min(mark.column - 1, len(line))
    end = min(max(start + mark.width, start + 1), max(len(line), start + 1))
    first = max(0, min(start - WIDEST // 2, len(line) - WIDEST))
    last = first + WIDEST
    before, under, after = (_printable(part) for part in (line[first:start], line[start:min(end, last)], line[min(end, last):last]))
    cut, rest = ("…" if first else ""), ("…" if last < len(line) else "")
    return f"{cut}{before}{under}{after}{rest}", " " * (len(cut) + _columns(before)) + "^" * max(_columns(under), 1)


def _printable(text: str) -> str:
    """Tabs as one space, so that the marker fits; other control characters as a sign that does no harm."""
    return "".join(sign if sign.isprintable() else " " if sign == "\t" else "\N{REPLACEMENT CHARACTER}" for sign in text)


def _columns(text: str) -> int:
    """Columns that a text takes on a terminal."""
    from unicodedata import combining, east_asian_width

    return sum(0 if combining(sign) else 2 if east_asian_width(sign) in "WF" else 1 for sign in text)


def counted(findings: Iterable[Finding]) -> str:
    """The findings counted in words: "2 errors, 1 warning"; "nothing found" if there are none."""
    findings = list(findings)
    counts = [(sum(finding.severity is severity for finding in findings), str(severity)) for severity in Severity]
    return ", ".join(f"{count} {name}{'' if count == 1 else 's'}" for count, name in counts if count) or "nothing found"


def as_json(findings: Iterable[Finding]) -> str:
    """One JSON object: the findings, and how many there are of each severity."""
    import json

    findings = list(findings)
    listed = [{"file": finding.mark.file, "line": finding.mark.line, "column": finding.mark.column, "severity": str(finding.severity),
               "rule": finding.rule, "message": finding.message, "hint": finding.hint} for finding in findings]
    counts = {f"{severity}s": sum(finding.severity is severity for finding in findings) for severity in Severity}
    return json.dumps({"findings": listed, **counts}, ensure_ascii=False, indent=1)
