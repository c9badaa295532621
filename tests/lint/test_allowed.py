"""What patterns allow and how books weigh rules."""

import pytest

from booklet.findings import Severity
from booklet.lint.registry import FIRM, rules
from booklet.lint.run import checked
from booklet.source.workspace import load
from tests.lint.books import BOOK, completed, found, write_book

FILE, BOOK_FILE = "patterns/morning-cloud.yaml", "patterns/book.yaml"
WRONG = "counted: {base: 4}\n"


def weighed(root, severity, text=WRONG):
    return found(root, text, BOOK + f"lint: {{severity: {{{severity}}}}}\n")


def test_an_allowed_finding_is_not_one_and_keeps_its_reason(tmp_path):
    root = write_book(tmp_path, {"morning-cloud.yaml": completed(WRONG + "lint: {allow: {counted-differs: Counted with the loop.}}\n")})
    run = checked(load(root))
    assert run.findings == () and [(finding.rule, reason) for finding, reason in run.allowed] == [("counted-differs", "Counted with the loop.")]


def test_what_one_pattern_allows_holds_for_no_other(tmp_path):
    allowing = completed(WRONG + "lint: {allow: {counted-differs: Counted with the loop.}}\n")
    root = write_book(tmp_path, {"a.yaml": allowing, "b.yaml": completed(WRONG)})
    assert [finding.mark.file for finding in checked(load(root)).findings] == ["patterns/b.yaml"]


@pytest.mark.parametrize("reason", ['""', "", "~"])
def test_error_allowed_without_a_reason(tmp_path, reason):
    lines = found(tmp_path, WRONG + f"lint:\n  allow:\n    counted-differs: {reason}\n")
    if reason == "~":   # a text here, as every scalar is
        assert lines == []
    else:
        assert f"{FILE}:16:{5 + len('counted-differs: ') - (reason == '')}: error: lint.allow.counted-differs is empty (give it a value or delete it) [empty-value]" in lines
        assert any("[counted-differs]" in line for line in lines)


def test_error_allowed_rule_that_there_is_not(tmp_path):
    assert found(tmp_path, "lint: {allow: {counted-differ: I know better.}}\n") == [
        f"{FILE}:13:16: error: there is no rule 'counted-differ' (did you mean counted-differs?) [unknown-rule]"]


def test_error_weighed_rule_that_there_is_not(tmp_path):
    assert weighed(tmp_path, "unused-key: off", "") == [
        f"{BOOK_FILE}:3:19: error: there is no rule 'unused-key' (did you mean unused-bead-key?) [unknown-rule]"]


@pytest.mark.parametrize(("wanted", "said"), [("error", ": error: "), ("warning", ": warning: "), ("note", ": note: ")])
def test_a_book_weighs_a_rule(tmp_path, wanted, said):
    (line,) = weighed(tmp_path, f"counted-differs: {wanted}")
    assert said in line and line.endswith("[counted-differs]")


def test_a_book_turns_a_rule_off(tmp_path):
    assert weighed(tmp_path, "counted-differs: off") == []


def test_error_a_book_weighs_a_rule_as_nothing_known(tmp_path):
    lines = weighed(tmp_path, "counted-differs: fatal")
    assert lines[0] == f"{BOOK_FILE}:3:36: error: lint.severity.counted-differs must be error, warning, note or off; found 'fatal' [unknown-choice]"


@pytest.mark.parametrize("name", sorted(FIRM))
def test_error_a_fault_with_which_nothing_can_be_printed_is_not_allowed(tmp_path, name):
    assert name in rules() and rules()[name].severity is Severity.ERROR
    (line,) = found(tmp_path, f"lint: {{allow: {{{name}: Why not.}}}}\n")
    assert line == f"{FILE}:13:16: error: {name} cannot be allowed: nothing can be printed with it [fault-cannot-be-allowed]"


def test_error_a_firm_rule_holds_whatever_the_files_say(tmp_path):
    text = "fringe: {end: 1B, strands: [2W]}\nlint: {allow: {strand-count: One is enough.}}\n"
    lines = found(tmp_path, text, BOOK + "lint: {severity: {strand-count: off}}\n")
    assert [line.rpartition("[")[2] for line in lines] == ["fault-cannot-be-allowed]", "strand-count]", "fault-cannot-be-allowed]"]
