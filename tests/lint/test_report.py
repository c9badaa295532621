"""Reports: the line for editors, the source line with its marker, JSON."""

import json

import pytest

from booklet.findings import Finding, Mark, Severity
from booklet.lint.report import as_json, counted, grouped, lines, marked
from booklet.source.wording import shown

ERROR = Finding(Mark("patterns/a.yaml", 2, 5, 3), Severity.ERROR, "some-fault", "this is wrong", "do that")
WARNING = Finding(Mark("patterns/a.yaml", 9), Severity.WARNING, "other-fault", "this is odd")
NOTE = Finding(Mark("patterns/b.yaml", 1), Severity.NOTE, "third-fault", "look here")
TEXTS = {"patterns/a.yaml": "title: A\nab: \tXYZ end\n", "patterns/b.yaml": "title: B\n"}


def test_one_line_a_finding():
    assert list(lines([ERROR, WARNING])) == [
        "patterns/a.yaml:2:5: error: this is wrong (do that) [some-fault]",
        "patterns/a.yaml:9:1: warning: this is odd [other-fault]"]


def test_grouped_by_file_with_the_source_line_and_a_marker():
    assert list(grouped([ERROR, WARNING, NOTE], TEXTS.__getitem__)) == [
        "patterns/a.yaml",
        "  2:5 error: this is wrong [some-fault]",
        "     2 | ab:  XYZ end",
        "       |     ^^^",
        "         do that",
        "  9:1 warning: this is odd [other-fault]",
        "",
        "patterns/b.yaml",
        "  1:1 note: look here [third-fault]",
        "     1 | title: B",
        "       | ^"]


def test_the_colours_are_those_of_the_roles():
    painted = list(grouped([ERROR], TEXTS.__getitem__, lambda role, text: f"<{role}>{text}</>"))
    assert painted[:2] == ["<file>patterns/a.yaml</>", "  2:5 <error>error</>: this is wrong <rule>[some-fault]</>"]
    assert painted[3] == "<quiet>       | </>" + "<error>    ^^^</>"


@pytest.mark.parametrize(("line", "column", "width", "pointer"), [
    ("abc", 2, 1, " ^"), ("abc", 2, 9, " ^^"), ("abc", 4, 1, "   ^"), ("abc", 50, 3, "   ^"), ("", 1, 1, "^"),
    ("珠x", 2, 1, "  ^"), ("珠x", 1, 1, "^^"), ("e\u0301x", 3, 1, " ^"), ("\t\tx", 3, 1, "  ^"),
])
def test_the_marker_stands_under_the_place(line, column, width, pointer):
    assert marked(line, Mark("f", 1, column, width))[1] == pointer


def test_a_long_line_is_cut_around_the_place():
    text, pointer = marked("a" * 300 + "X" + "b" * 300, Mark("f", 1, 301))
    assert len(text) == 102 and text[pointer.index("^")] == "X" and text.startswith("…a") and text.endswith("b…")


def test_nothing_of_a_file_can_move_the_cursor():
    text, _ = marked("a\x1b[2Jb\x07", Mark("f", 1, 1))
    assert text == "a\N{REPLACEMENT CHARACTER}[2Jb\N{REPLACEMENT CHARACTER}"
    hostile = Finding(Mark("f"), Severity.ERROR, "some-fault", "one\ntwo\x1b[2J")
    (line,) = lines([hostile])
    assert line == "f:1:1: error: one\\ntwo\\x1b[2J [some-fault]"
    assert shown("\x1b") in list(grouped([hostile], lambda name: ""))[1]


def test_json():
    assert json.loads(as_json([ERROR, NOTE])) == {
        "findings": [
            {"file": "patterns/a.yaml", "line": 2, "column": 5, "severity": "error", "rule": "some-fault", "message": "this is wrong", "hint": "do that"},
            {"file": "patterns/b.yaml", "line": 1, "column": 1, "severity": "note", "rule": "third-fault", "message": "look here", "hint": ""}],
        "errors": 1, "warnings": 0, "notes": 1}


@pytest.mark.parametrize(("findings", "said"), [
    ([], "nothing found"), ([ERROR], "1 error"), ([ERROR, ERROR, WARNING], "2 errors, 1 warning"), ([NOTE], "1 note")])
def test_counts_in_words(findings, said):
    assert counted(findings) == said
