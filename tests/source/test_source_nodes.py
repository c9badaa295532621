"""YAML to nodes: text stays text, places are exact, and hostile input is a finding."""

import subprocess
import sys

import pytest
import yaml

from booklet.source import nodes
from booklet.source.nodes import LIST, MAP, TEXT, compose


@pytest.fixture(params=["fast", "plain"])
def loader(request, monkeypatch):
    """Both parsers: the C one where there is one, and the one in Python."""
    if request.param == "plain":
        monkeypatch.setattr(nodes, "LOADER", yaml.SafeLoader)
    return request.param


def said(text):
    document = compose(text, "a.yaml")
    assert (document.root is None) == any(f.rule != "unknown-tag" for f in document.findings)
    return [finding.one_line() for finding in document.findings]


def values(text):
    root = compose(text, "a.yaml").root
    return {key.text: value.text for key, value in root.pairs}


def test_scalars_stay_text(loader):
    assert values("a: 010\nb: on\nc: 1.0\nd: ~\ne: 2026-01-01\nf: 0x1F\ng: 1_000\nh: 'it''s'\ni: \"\\u00e9\"\nj:\n") == {
        "a": "010", "b": "on", "c": "1.0", "d": "~", "e": "2026-01-01", "f": "0x1F", "g": "1_000", "h": "it's", "i": "é", "j": ""}


def test_places_and_kinds(loader):
    root = compose("# remark\na: [x, 'yé']\nü: {k: |\n", "a.yaml").root
    assert root is None   # the braces are never closed
    root = compose("# remark\na: [x, 'yé']\nü: {k: v}\n", "a.yaml").root
    (key, entries), (other, fields) = root.pairs
    assert (root.kind, entries.kind, fields.kind, key.kind) == (MAP, LIST, MAP, TEXT)
    assert [(n.line, n.column, n.width) for n in (key, entries, *entries.items, other, fields, fields.pairs[0][1])] == [
        (2, 1, 1), (2, 4, 1), (2, 5, 1), (2, 8, 4), (3, 1, 1), (3, 4, 1), (3, 8, 1)]


def test_an_anchor_or_tag_is_no_part_of_the_value(loader):
    root = compose("a: &name  12W\nb: !!str  3B\nc: *name\n", "a.yaml").root
    assert [(value.text, value.line, value.column) for _, value in root.pairs] == [("12W", 1, 11), ("3B", 2, 11), ("12W", 1, 11)]


def test_lines_end_as_on_any_system(loader):
    document = compose("a: x\r\nb: |\r\n  W\r\n  B\r\nc: y\r\n", "a.yaml")
    assert document.lines == ["a: x", "b: |", "  W", "  B", "c: y", ""]
    assert [(value.text, value.line) for _, value in document.root.pairs] == [("x", 1), ("W\nB\n", 2), ("y", 5)]


SYNTAX = {
    "a: b: c\n": "1:5: error: a colon stands where none can be read (put a text that holds a colon and a space in quotes, and begin fields "
                 "of the same thing in the same column)",
    "a:\n\tb: 1\n": "2:1: error: a tab stands where only spaces may stand (use spaces)",
    'a: "abc\nb: 1\n': "1:4: error: the quotation marks that open here are never closed (close them)",
    "a: [1, 2\nb: 1\n": "2:2: error: this does not belong in the brackets [...] (part the entries by commas and close the brackets)",
    "a: {b: 1\n": "2:1: error: this does not belong in the braces {...} (part the fields by commas, close the braces, and put colours and "
                  "texts that hold commas in quotes)",
    'W: {colour: #f4f1ea, kind: x}\nB: {colour: "#fff"}\n': '2:2: error: this does not belong in the braces {...} (put the colour in '
                                                           'quotes, "#f4f1ea": a bare # begins a comment)',
    "a:\n    b: 1\n  c: 2\n": "3:3: error: this does not line up with the lines above it (begin fields of the same thing in the same "
                              "column, and put texts that hold quotes in quotes)",
    "a: 'it's'\n": "1:8: error: this does not line up with the lines above it (begin fields of the same thing in the same column, and put "
                   "texts that hold quotes in quotes)",
    "a:\n  - 1\n  b: 2\n": None,
    "a: @x\n": "1:4: error: this character cannot begin a value (put the value in quotes)",
    "a: b}\nc: }\n": "2:4: error: this character cannot begin a value (put the value in quotes)",
    "body:\n  chart: |\n      B B\n     B B B\nfringe: 1\n": "4:6: error: this does not line up with the lines above it (a chart whose top row "
                                                          "is not its widest needs a bar | before every line)",
}


@pytest.mark.parametrize("text", SYNTAX)
def test_error_syntax(loader, text):
    if SYNTAX[text]:
        assert said(text) == [f"a.yaml:{SYNTAX[text]} [yaml-syntax]"]
    else:   # the two parsers stop at the same place with other words
        (line,) = said(text)
        assert line.startswith("a.yaml:3:3: error: this does not ") and line.endswith(" [yaml-syntax]")


@pytest.mark.parametrize(("text", "line"), [
    ("a: *x\n", "1:4: error: '*x' stands for nothing: no &x comes before it [unknown-alias]"),
    ("a: &a [*a]\n", "1:8: error: '*a' stands inside the very thing that it stands for [endless-alias]"),
    ("a: &a {b: {c: *a}}\n", "1:15: error: '*a' stands inside the very thing that it stands for [endless-alias]"),
    ("a: 1\n---\nb: 2\n", "2:1: error: a second document starts here (one file holds one pattern) [several-documents]"),
    ("a: !!python/object/apply:os.system ls\n",
     "1:4: error: the tag '!!python/object/apply:os.system' is not read (write the value alone) [unknown-tag]"),
    ("a: !mine {b: c}\n", "1:4: error: the tag '!mine' is not read (write the value alone) [unknown-tag]"),
    ("a: " + "[" * 30 + "]" * 30 + "\n", "1:23: error: nesting goes deeper than 20 levels [too-deep]"),
    ("- " * 30 + "x\n", "1:41: error: nesting goes deeper than 20 levels [too-deep]"),
    ("\n".join(f"{'  ' * n}k:" for n in range(30)) + " x\n", "21:41: error: nesting goes deeper than 20 levels [too-deep]"),
])
def test_error_structure(loader, text, line):
    assert said(text) == [f"a.yaml:{line}"]


def test_error_aliases_that_explode(loader):
    names = "abcdefgh"
    text = "a: &a [x,x,x,x,x,x,x,x,x]\n" + "".join(f"{n}: &{n} [{','.join(['*' + m] * 9)}]\n" for m, n in zip(names, names[1:]))
    assert said(text) == ["a.yaml:5:11: error: with its aliases written out, the file holds more than 20,000 values [too-many-aliases]"]


def test_error_aliases_that_nest(loader):
    text = "a0: &a0 [x]\n" + "".join(f"a{n}: &a{n} [*a{n - 1}]\n" for n in range(1, 25))
    assert said(text) == ["a.yaml:20:12: error: nesting goes deeper than 20 levels [too-deep]"]


def test_error_too_many_values():
    assert said("- x\n" * 20_001) == ["a.yaml:20000:3: error: the file holds more than 20,000 values [too-large]"]


@pytest.mark.parametrize("text", ["[" * 200_000, "- " * 200_000, "{a: " * 100_000, "? " * 100_000, "&a " * 1000, "*a " * 1000, "!" * 100_000,
                                  "a: '" * 1000, "|" * 5000, "%" * 1000, "k: " * 5000, "\n".join(" " * n + "- a:" for n in range(300))])
def test_error_floods_of_signs_are_one_line(text):
    found = said(text)
    assert len(found) == 1 and "\n" not in found[0]


def test_reading_yaml_imports_nothing_heavy():
    """The reading must not slow the start of a command: no template engine, no typesetter, no terminal library."""
    code = "import sys, booklet.source.workspace; print([m for m in ('jinja2','weasyprint','rich','markdown','pydantic','difflib') if m in sys.modules])"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"
