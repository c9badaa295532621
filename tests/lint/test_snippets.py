"""Every rule fires on its bad snippets, and nothing at all is found in its good ones: they are the rules' own documentation."""

from pathlib import Path

import pytest

from booklet.findings import Severity
from booklet.lint import rules as package
from booklet.lint.explain import explain, explanation
from booklet.lint.registry import NEEDS, SELDOM, names, rules, rules_in
from booklet.lint.run import lint
from booklet.source.workspace import load
from tests.lint.books import BOOK, completed, several, write_book

# No pattern file alone can bring these about; test_messages.py and test_photos.py do.
WITHOUT_SNIPPETS = {"words-do-not-replay", "photo-too-coarse"}
BAD = [(name, snippet) for name, rule in rules().items() for snippet in explanation(rule).bad]
GOOD = [(name, snippet) for name, rule in rules().items() for snippet in explanation(rule).good]
EACH = pytest.mark.parametrize("rule", rules().values(), ids=rules())


def findings(root, snippet):
    one = {"book.yaml": BOOK, "morning-cloud.yaml": completed(snippet)}
    return lint(load(write_book(root, several(snippet) if snippet.startswith("# patterns/") else one)))


@pytest.mark.parametrize(("name", "snippet"), BAD)
def test_error_bad_snippet(name, snippet, tmp_path):
    assert name in {finding.rule for finding in findings(tmp_path, snippet)}


@pytest.mark.parametrize(("name", "snippet"), GOOD)
def test_good_snippet(name, snippet, tmp_path):
    assert findings(tmp_path, snippet) == ()


@EACH
def test_a_rule_has_a_bad_and_a_good_snippet(rule):
    has = bool(explanation(rule).bad), bool(explanation(rule).good)
    assert has == (rule.id not in WITHOUT_SNIPPETS, rule.id not in WITHOUT_SNIPPETS)


@EACH
def test_a_rule_bears_the_name_of_its_module(rule):
    assert rule.check.__module__.rpartition(".")[2] == rule.id.replace("-", "_")
    assert rule.severity in Severity and rule.needs in NEEDS


@EACH
def test_a_rule_that_seldom_runs_stands_in_a_folder_named_for_what_it_needs(rule):
    assert rule in (rules_in(rule.needs) if rule.needs in SELDOM else (*rules_in(""), *rules_in("extras")))


@EACH
def test_a_rule_is_explained_in_a_sentence_and_a_reason(rule):
    told = explanation(rule)
    assert "\n" not in told.fault and told.fault.endswith(".")
    assert told.why.endswith(".") and "    " not in told.why, "a snippet that was not recognised is left in the text"
    assert explain(rule.id) == f"{rule.id} ({rule.severity})\n\n{rule.text}\n"


@EACH
def test_a_rule_calls_no_other_rule(rule):
    text = Path(rule.module.__file__).read_text("utf-8")
    assert not any(f"import {other}" in text or f"from .{other}" in text for other in (name.replace("-", "_") for name in rules()))


def test_every_module_of_the_folder_is_a_rule():
    modules = {path.stem for path in Path(package.__file__).parent.rglob("*.py")} - {"__init__"}
    assert modules == {name.replace("-", "_") for name in rules()}
    assert names() == list(rules())


def test_a_rule_that_needs_more_than_could_be_read_does_not_run(tmp_path):
    found = findings(tmp_path, "body:\n  chart: |\n    2 |  B B\n    1 | W ? W\ncounted: {base: 9}\n")
    assert {finding.rule for finding in found} == {"bad-chart-text"}


def test_findings_of_reading_and_of_rules_come_in_one_run_sorted(tmp_path):
    found = findings(tmp_path, "summary: ''\nbody:\n  chart: |\n    3 |  B B\n    1 | W B W\nnotes: '{{ x }}'\ncounted: {beads: 6}\n")
    assert [(finding.mark.line, finding.rule) for finding in found] == [
        (2, "empty-value"), (11, "wrong-row-number"), (13, "unknown-placeholder"), (14, "counted-differs")]
    assert list(found) == sorted(found)


def test_the_book_is_left_out_where_single_patterns_are_asked_for(tmp_path):
    root = write_book(tmp_path, {"book.yaml": "title: B\norder: [a, a]\n", "morning-cloud.yaml": completed("")})
    assert {finding.rule for finding in lint(load(root))} == {"listed-twice", "missing-pattern", "not-in-book-order"}
    assert lint(load(root, [root / "patterns" / "morning-cloud.yaml"]), with_book=False) == ()
