"""Whatever stands in a file, reading it gives a pattern and findings, and nothing else."""

import string

import pytest
import yaml
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from tests.source.texts import BOOK, SMALL, book, read

from booklet.findings import Finding
from booklet.source.book import Book
from booklet.source.workspace import read_text


def check(data):
    """Reading never raises; a text without a pattern or without a piece has a reason; every finding is one line with a place in the file."""
    pattern, found = read(data)
    assert pattern is not None or found
    lines = (data if isinstance(data, str) else data.decode("utf-8", "replace")).count("\n") + 1
    for finding in found:
        assert isinstance(finding, Finding) and finding.message and "\n" not in finding.one_line() and finding.one_line().isprintable()
        assert finding.mark.file == "a.yaml" and 1 <= finding.mark.line <= max(lines, 1) + 1 and finding.mark.column >= 1
    return pattern, found


@given(st.binary(max_size=200))
def test_any_bytes(data):
    check(data)


@given(st.text(max_size=200))
def test_any_text(text):
    check(text)


@given(st.text("ab: -[]{},|>&*!'\"#%@`?\t\n\\<0", max_size=60))
def test_any_signs_of_yaml(text):
    check(text)
    book(text)


@given(st.integers(0, len(SMALL) - 1), st.integers(0, 12), st.text("WB1 :|-{}[]>\"'#\n\t&*", max_size=6))
@settings(max_examples=300)
def test_any_slip_of_the_pen(start, length, put):
    """A stretch of a good pattern is lost, and signs stand in its place."""
    check(SMALL[:start] + put + SMALL[start + length:])


NAMES = st.sampled_from([*[line.split(":")[0].strip(" -") for line in SMALL.split("\n") if ":" in line], "W", "B", "x", "<<", "1", "order", "page",
                         "kinds", "defaults", "spare", "item", "kind", "beads", "chart", "strands", "end", "before", "ladder"])
SCALARS = st.one_of(st.sampled_from(["true", "brick", "widest", "3", "-1", "1.4 m", "5 g", "10 %", "#fff", "3(2W 1B) > D", "| W B\n|  W\n", "guard", "loop",
                                     "A5", "matte", "cylinder 11/0", "", " ", "~", "on", "0", "9" * 40]), st.text(string.printable, max_size=15))
TREES = st.recursive(SCALARS, lambda inner: st.one_of(st.lists(inner, max_size=3), st.dictionaries(NAMES, inner, max_size=5)), max_leaves=15)


@given(st.dictionaries(NAMES, TREES, max_size=8), st.booleans())
@settings(max_examples=300, suppress_health_check=[HealthCheck.too_slow])
def test_any_tree(tree, flow):
    text = yaml.safe_dump(tree, default_flow_style=flow, sort_keys=False, allow_unicode=True)
    check(text)
    made, _ = book(text)
    assert isinstance(made, Book)


WHOLE = yaml.safe_load(SMALL)


def places(value, path=()):
    yield path
    entries = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    for name, item in entries:
        yield from places(item, (*path, name))


@given(st.sampled_from([path for path in places(WHOLE) if path]), TREES)
@settings(max_examples=300, suppress_health_check=[HealthCheck.too_slow])
def test_any_value_in_any_place(path, value):
    """One value of a good pattern is replaced by anything."""
    tree = yaml.safe_load(SMALL)
    target = tree
    for step in path[:-1]:
        target = target[step]
    target[path[-1]] = value
    check(yaml.safe_dump(tree, sort_keys=False, allow_unicode=True))


@given(TREES)
def test_any_default_of_a_book(value):
    made, _ = book(BOOK + yaml.safe_dump({"defaults": value, "kinds": value, "spare": value, "page": value}))
    pattern, _ = read_text(SMALL.replace("level: beginner\n", ""), "a.yaml", "a", made)
    assert pattern is not None


@pytest.mark.parametrize("size", [10, 1000, 100_000])
def test_large_files_end_soon(size):
    for unit in ("a", "a: b\n", "- a\n", "[", "{a: ", "'", "&a ", "- 12W\n", "12W ", "(", "| W W\n", "\t", "#", "a:\n ", "\u00e9"):
        check(unit * (size // len(unit)))
    check(SMALL.replace("12W 2B 1W", "12W " * (size // 4), 1))
    check(SMALL.replace("12W 2B 1W", "(" * size, 1))
    check(SMALL.replace("    3 |    B B\n", "    | B B\n" * (size // 10), 1))
    check(SMALL.replace("    3 |    B B\n", "    3 | " + "B " * (size // 2) + "\n", 1))
    check(SMALL.replace("steps: {}", "steps:\n" + "".join(f"  k{n}: x\n" for n in range(size // 10)), 1))
