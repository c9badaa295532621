"""Builds: the same bytes anywhere, nothing read from outside, and nothing lost when one fails."""

import asyncio
import os

import pytest

from booklet.bind import book, single
from booklet.bind.edition import edition
from booklet.errors import BookletError, FindingsError, UnreadableInput
from booklet.source.workspace import load
from tests.bind.copies import TINY, copy_of


def everything(folder):
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in sorted(folder.rglob("*")) if path.is_file()}


def test_two_folders_and_two_days_give_the_same_bytes(tiny, tmp_path, monkeypatch):
    monkeypatch.setattr("time.time", lambda: 1_000_000_000.0)   # another day, and no SOURCE_DATE_EPOCH
    root = copy_of(TINY, tmp_path / "elsewhere" / "deeper")
    book.build(load(root))
    mine, theirs = everything(root / "build"), everything(tiny.root / "build")
    theirs.pop("single/morning-cloud.pdf")
    assert mine.keys() == theirs.keys()
    assert mine == theirs


def test_no_path_of_this_machine_is_in_an_output(tiny):
    for name, content in everything(tiny.root / "build").items():
        assert os.fsencode(tiny.root) not in content, name
        assert b"site-packages" not in content, name


def test_a_given_date_is_kept(tiny, tmp_path, monkeypatch):
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "1767225600")
    on = edition(tiny.workspace.book)
    assert "2026-01-01T00:00:00Z" in book.book_html(tiny.workspace, asyncio.run(book.gathered(tiny.workspace, on)), on)


def test_error_a_failing_pattern_leaves_the_earlier_book(tiny, tmp_path):
    root = copy_of(tiny.root, tmp_path / "book")
    before = everything(root / "build")
    path = root / "patterns" / "morning-cloud.yaml"
    path.write_text(path.read_text("utf-8").replace("base.stitches", "base.stiches"), "utf-8")
    with pytest.raises(FindingsError) as caught:
        book.build(load(root))
    assert [finding.one_line() for finding in caught.value.findings] == [
        "patterns/morning-cloud.yaml:37:20: error: the placeholder 'base.stiches' is not known "
        "(did you mean base.stitches?) [unknown-placeholder]"]
    assert everything(root / "build") == before


def test_error_a_picture_outside_the_workspace_is_refused(tmp_path):
    root = copy_of(TINY, tmp_path / "book")
    (root / "templates").mkdir()
    for address in ("file:///etc/hostname", "../../../etc/hostname", "https://example.org/a.png"):
        (root / "templates" / "single.html.jinja").write_text(
            f'<html lang="en"><head><title>x</title></head><body><img alt="x" src="{address}"></body></html>', "utf-8")
        with pytest.raises(UnreadableInput, match="is not a file of this workspace"):
            single.build(load(root), "morning-cloud")
    assert not (root / "build").exists()


def test_a_users_own_template_wins(tmp_path):
    root = copy_of(TINY, tmp_path / "book")
    (root / "templates").mkdir()
    (root / "templates" / "web").mkdir()
    (root / "templates" / "web" / "index.html.jinja").write_text("<p>mine: {{ book.title }}</p>", "utf-8")
    (index,) = book.build(load(root), formats=["html"])
    assert index.read_text("utf-8") == "<p>mine: A Small Sky</p>"


@pytest.mark.parametrize("broken", ["{{ nothing }}", "{% if %}", "{{ book.nothing.more }}"])
def test_error_a_broken_template_is_one_clear_line(tmp_path, broken):
    root = copy_of(TINY, tmp_path / "book")
    (root / "templates").mkdir()
    (root / "templates" / "book.html.jinja").write_text(f"<html>\n{broken}", "utf-8")
    with pytest.raises(BookletError, match=r"^templates/book\.html\.jinja"):
        book.build(load(root), formats=["pdf"])
