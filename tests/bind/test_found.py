"""What is kept of a lint run is what a run would find: whatever a rule looks at is in the key."""

from pathlib import Path

import pytest

from booklet.bind.found import Found
from booklet.bind.press.cache import Cache
from booklet.lint.registry import rules_in
from booklet.lint.run import lint
from booklet.lint.subject import Subject
from booklet.source.pattern import Pattern
from booklet.source.workspace import Workspace, load
from tests.lint.books import PATTERN, write_book

BOOK = "title: B\norder: [rain, sun]\n"
FILES = {"book.yaml": BOOK, "rain.yaml": PATTERN, "sun.yaml": PATTERN.replace("title: Morning Cloud", "title: Sun Shower")}


class Other:
    """Another pattern of the workspace, of which nothing is known but what stands in the key."""

    def __init__(self, pattern: Pattern) -> None:
        self.slug, self.title = pattern.slug, pattern.title


class Narrow:
    """A workspace that has nothing but what stands in the key."""

    def __init__(self, workspace: Workspace, pattern: Pattern) -> None:
        self.root, self.book = workspace.root, workspace.book
        self.patterns = {slug: one if one is pattern else Other(one) for slug, one in workspace.patterns.items()}


class OwnText(Subject, frozen=True, dict=True):
    """A subject that reads no file but that of its pattern."""

    def text(self, name: str) -> str:
        assert name == self.pattern.file
        return super().text(name)


@pytest.fixture
def root(tmp_path):
    return write_book(tmp_path / "book", FILES)


def written(root, name, *changes):
    file = root / "patterns" / name
    text = file.read_text("utf-8")
    for old, new in changes:
        assert old in text
        text = text.replace(old, new)
    file.write_text(text, "utf-8")


def test_rules_whose_findings_are_kept_look_at_nothing_that_is_not_in_the_key(root):
    """A rule that asks for more raises AttributeError here, and its place is in a folder of registry.SELDOM."""
    for workspace in (load(root), load(Path(__file__).parents[2])):
        for pattern in workspace.patterns.values():
            subject, seen = Subject(workspace, pattern), OwnText(Narrow(workspace, pattern), pattern)
            for rule in rules_in(""):
                if subject.has(rule.needs):
                    assert list(rule.check(seen)) == list(rule.check(subject)), rule.id


def test_a_second_run_looks_at_no_pattern_and_finds_the_same(root, monkeypatch):
    written(root, "rain.yaml", ("summary:", "summary: It has 99 rows."), )
    cache = Cache(root / "cache")
    first = lint(load(root), kept=Found(cache))
    assert first == lint(load(root)) and first
    monkeypatch.setattr("booklet.lint.run._common", lambda subject: pytest.fail("looked again") if subject.pattern else iter(()))
    assert set(lint(load(root), kept=Found(cache))) == {finding for finding in first if finding.mark.file != "patterns/book.yaml"}


@pytest.mark.parametrize("name, old, new", [
    ("rain.yaml", "title: Morning Cloud", "title: Sun Shower\n"),
    ("sun.yaml", "title: Sun Shower", "title: Morning Cloud"),
    ("book.yaml", "title: B", "title: B\nthreads: {thin: {diameter: 0.1, material: nylon}}"),
])
def test_after_a_change_the_findings_are_those_of_a_new_run(root, name, old, new):
    cache = Cache(root / "cache")
    lint(load(root), kept=Found(cache))
    written(root, name, (old, new))
    assert lint(load(root), kept=Found(cache)) == lint(load(root))


def test_a_damaged_entry_is_not_believed(root):
    cache = Cache(root / "cache")
    whole = lint(load(root), kept=Found(cache))
    for path in (root / "cache").glob("??/*"):
        path.write_bytes(path.read_bytes()[:-1] + b"!")
    assert lint(load(root), kept=Found(cache)) == whole
