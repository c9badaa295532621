"""What the YAML parser complains about, said in plain words."""

from __future__ import annotations

import re

import yaml

from ..findings import Finding, Mark, Severity
from .wording import shown

# A fragment of the parser's words (both of its implementations), ours, and what to do.
_WORDS = (
    ("mapping values are not allowed", "a colon stands where none can be read",
     "put a text that holds a colon and a space in quotes, and begin fields of the same thing in the same column"),
    ("violates indentation", "a tab stands where only spaces may stand", "use spaces"),
    ("unexpected end of stream", "the quotation marks that open here are never closed", "close them"),
    ("',' or '}'", "this does not belong in the braces {...}",
     "part the fields by commas, close the braces, and put colours and texts that hold commas in quotes"),
    ("',' or ']'", "this does not belong in the brackets [...]", "part the entries by commas and close the brackets"),
    ("unknown escape", "a backslash in double quotes begins something unknown", "use single quotes"),
    ("undefined tag handle", "a tag stands here", "write the value alone"),
    ("chomping or indentation", "after | or > nothing may stand on the same line", "begin the text on the next line"),
    ("expected comment or line break", "after | or > nothing may stand on the same line", "begin the text on the next line"),
    ("expected '-'", "this does not belong in the list", "begin every entry of a list with a dash in the same column"),
    ("node content", "this character cannot begin a value", "put the value in quotes"),
    ("expected key", "this does not line up with the lines above it",
     "begin fields of the same thing in the same column, and put texts that hold quotes in quotes"),
    ("expected <block end>", "this does not line up with the lines above it",
     "begin fields of the same thing in the same column, and put texts that hold quotes in quotes"),
    ("expected ':'", "a colon is missing here", "a field is a name, a colon, a space and a value"),
    ("cannot start any token", "this character cannot begin a value", "put the value in quotes"),
)
_OPENING = ("unexpected end of stream",)   # complaints that belong where the trouble began
_BARE_COLOUR = r"[:\s](#[0-9A-Fa-f]{3,6})\b"
_CHART_LINE = r"\s*[A-Za-z0-9](?:\s+[A-Za-z0-9])*\s*$"


def syntax_finding(error: yaml.MarkedYAMLError, lines: list[str], file: str) -> Finding:
    """The finding for a parser error."""
    problem = error.problem or ""
    place = error.context_mark if problem.endswith(_OPENING) and error.context_mark else error.problem_mark
    row, column = (place.line, place.column) if place else (0, 0)
    if "maximum nesting depth" in problem:
        return Finding(Mark(file, row + 1, column + 1), Severity.ERROR, "too-deep", "nesting goes deeper than 20 levels")
    line = lines[row] if row < len(lines) else ""
    message, hint = _said(problem, line[column:column + 1])
    hint = _special_hint(error, row, lines) or hint
    return Finding(Mark(file, row + 1, column + 1), Severity.ERROR, "yaml-syntax", message, hint)


def _said(problem: str, character: str) -> tuple[str, str]:
    if character == "\t":
        return "a tab stands where only spaces may stand", "use spaces"
    for fragment, message, hint in _WORDS:
        if fragment in problem:
            return message, hint
    return f"this is not YAML: {shown(problem, 100)}", ""


def _special_hint(error: yaml.MarkedYAMLError, row: int, lines: list[str]) -> str:
    """What two traps of YAML need: # begins a comment, and the first line of a block sets its margin."""
    context = error.context_mark
    if context is not None and "flow" in (error.context or ""):
        for line in lines[context.line:row + 1]:
            bare = re.search(_BARE_COLOUR, line)
            if bare and not re.search(f"[\"'][^\"']*{bare.group(1)}", line):
                return f'put the colour in quotes, "{bare.group(1)}": a bare # begins a comment'
    if row < len(lines) and re.match(_CHART_LINE, lines[row]) and "chart:" in "\n".join(lines[max(row - 40, 0):row]):
        return "a chart whose top row is not its widest needs a bar | before every line"
    return ""
