"""booklet lint as it is called: from a shell, an editor, a hook."""

import json
import re
import stat
from pathlib import Path

import pytest
import yaml
from click.testing import CliRunner

from booklet.cli import main
from booklet.commands import mending
from tests.lint.books import BOOK, completed, write_book

ROOT = Path(__file__).parents[2]
WRONG = completed("counted: {base: 4}   # by hand\n")


def run(*words, **settings):
    return CliRunner().invoke(main, [str(word) for word in words], **settings)


def lint(root, *words, **settings):
    return run("-C", root, "lint", *words, **settings)


def test_a_note_is_shown_and_counts_only_when_strict(tmp_path):
    write_book(tmp_path, {"morning-cloud.yaml": WRONG, "book.yaml": BOOK + "lint: {severity: {counted-differs: note}}\n"})
    assert lint(tmp_path).exit_code == 0 and ": note: counted.base is 4" in lint(tmp_path).output
    assert lint(tmp_path, "--strict").exit_code == 1


@pytest.mark.parametrize("form", ["json", "sarif", "github"])
def test_every_format_tells_the_same_findings(tmp_path, form):
    write_book(tmp_path, {"morning-cloud.yaml": WRONG})
    result = lint(tmp_path, "--format", form)
    assert result.exit_code == 1 and "counted-differs" in result.output and "patterns/morning-cloud.yaml" in result.output
    if form != "github":
        assert json.loads(result.output)
    write_book(tmp_path, {"morning-cloud.yaml": completed("")})
    clean = lint(tmp_path, "--format", form)
    assert clean.exit_code == 0 and (json.loads(clean.output) if form != "github" else clean.output == "")


def test_standard_input_is_a_pattern_under_its_name(tmp_path):
    write_book(tmp_path, {"book.yaml": BOOK})
    result = lint(tmp_path, "-", "--name", "patterns/evening-star.yaml", input=WRONG)
    assert (result.exit_code, result.output) == (1, "patterns/evening-star.yaml:13:17: error: counted.base is 4, but the pattern has 3 [counted-differs]\n")
    assert lint(tmp_path, "-", input=completed("")).output == ""


def test_standard_input_needs_no_folder_of_patterns_and_may_be_anything(tmp_path):
    assert lint(tmp_path, "-", input=completed("")).exit_code == 0
    result = lint(tmp_path, "-", input=b"\xff\xfe")
    assert (result.exit_code, result.output) == (1, "patterns/stdin.yaml:1:1: error: byte 0xff is not UTF-8 text (save the file as UTF-8) [not-utf-8]\n")


@pytest.mark.parametrize("words", [("-", "cloud-shadow"), ("-", "--fix"), ("-", "--diff")])
def test_error_standard_input_with_something_else(words):
    result = lint(ROOT, *words, input="")
    assert result.exit_code == 2 and "Standard input is checked alone" in result.output


def test_a_list_of_files_as_a_hook_gives_it(tmp_path):
    write_book(tmp_path, {"a.yaml": WRONG, "b.yaml": WRONG, "c.yaml": WRONG, "book.yaml": "title: B\norder: [a, b]\n"})
    result = lint(tmp_path, "patterns/a.yaml", "patterns/c.yaml", "patterns/book.yaml")
    assert {line.split(":")[0] for line in result.output.splitlines()} == {"patterns/a.yaml", "patterns/book.yaml", "patterns/c.yaml"}


def test_fix_shows_what_it_changed_and_then_finds_nothing(tmp_path):
    write_book(tmp_path, {"morning-cloud.yaml": WRONG})
    file = tmp_path / "patterns" / "morning-cloud.yaml"
    file.chmod(0o640)
    result = lint(tmp_path, "--fix")
    assert result.exit_code == 0 and file.read_text("utf-8") == WRONG.replace("base: 4", "base: 3")
    assert result.output.splitlines()[:2] == ["--- patterns/morning-cloud.yaml", "+++ patterns/morning-cloud.yaml"]
    assert result.output.splitlines()[-2:] == ["-counted: {base: 4}   # by hand", "+counted: {base: 3}   # by hand"]
    assert stat.S_IMODE(file.stat().st_mode) == 0o640 and [path.name for path in file.parent.iterdir()] == [file.name]
    assert lint(tmp_path, "--fix").output == ""


def test_diff_changes_nothing(tmp_path):
    write_book(tmp_path, {"morning-cloud.yaml": WRONG})
    result = lint(tmp_path, "--diff")
    assert result.exit_code == 0 and "+counted: {base: 3}" in result.output
    assert (tmp_path / "patterns" / "morning-cloud.yaml").read_text("utf-8") == WRONG


def test_fix_leaves_what_has_no_one_right_answer(tmp_path):
    text = WRONG.replace("W B W", "W Q W")
    write_book(tmp_path, {"morning-cloud.yaml": text})
    result = lint(tmp_path, "--fix")
    assert result.exit_code == 1 and "[unknown-bead-key]" in result.output and (tmp_path / "patterns" / "morning-cloud.yaml").read_text("utf-8") == text


@pytest.mark.parametrize("ends", [b"\n", b"\r\n"])
@pytest.mark.parametrize("start", [b"", b"\xef\xbb\xbf"])
def test_fix_keeps_line_ends_and_byte_order_mark(tmp_path, start, ends):
    root = write_book(tmp_path, {"morning-cloud.yaml": ""})
    file = root / "patterns" / "morning-cloud.yaml"
    file.write_bytes(start + WRONG.encode().replace(b"\n", ends))
    assert lint(root, "--fix").exit_code == 0
    assert file.read_bytes() == start + WRONG.replace("base: 4", "base: 3").encode().replace(b"\n", ends)


def test_fix_never_overwrites_what_was_saved_in_between(tmp_path):
    root = write_book(tmp_path, {"morning-cloud.yaml": WRONG})
    file = root / "patterns" / "morning-cloud.yaml"
    (change,) = mending.changes(root, {root: None}, runs=False)
    file.write_text("something newer", "utf-8")
    mending.write(change)
    assert file.read_text("utf-8") == "something newer"


def test_fix_writes_runs_where_they_are_asked_for(tmp_path):
    drawn = completed("fringe:\n  end: 1B\n  chart: |\n    | W W W\n    | B W B\n")
    root = write_book(tmp_path, {"morning-cloud.yaml": drawn})
    assert lint(root, "--fix").output == "" and "- 1W 1B" in lint(root, "--fix", "--runs").output
    assert lint(root).output == "" and (root / "patterns" / "morning-cloud.yaml").read_text("utf-8").endswith("  strands:\n    - 1W 1B\n    - 2W\n    - 1W 1B\n")


def test_the_hook_names_a_command_that_there_is():
    (hook,) = yaml.safe_load((ROOT / ".pre-commit-hooks.yaml").read_text("utf-8"))
    assert hook["entry"] == "booklet lint" and hook["language"] == "python"
    for name, wanted in (("patterns/a.yaml", True), ("book/patterns/a.yaml", True), ("patterns/pages/a.md", False), ("other.yaml", False)):
        assert (re.search(hook["files"], name) is not None) is wanted
