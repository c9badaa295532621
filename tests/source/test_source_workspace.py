"""Folders of patterns."""

import os
import shutil
from pathlib import Path

import pytest
from tests.source.texts import BOOK, SMALL

from booklet.source.workspace import load, pattern_files, read_one, without_charts

PLAIN = SMALL.replace('photo: {file: photos/cloud-shadow.jpg, alt: "..."}\n', "")


@pytest.fixture
def root(tmp_path):
    (tmp_path / "work" / "patterns" / "pages").mkdir(parents=True)
    return tmp_path / "work"


def put(root, name, text):
    path = root / "patterns" / name
    path.parent.mkdir(exist_ok=True)
    path.write_bytes(text if isinstance(text, bytes) else text.encode())
    return path


def said(root, **more):
    return [finding.one_line() for finding in load(root, **more).findings]


def test_patterns_without_a_book(root):
    put(root, "b.yaml", PLAIN)
    put(root, "a.yaml", PLAIN)
    workspace = load(root)
    assert workspace.findings == () and list(workspace.patterns) == ["a", "b"] == list(workspace.slugs)
    assert workspace.book.file == "" and workspace.patterns["b"].file == "patterns/b.yaml" and workspace.patterns["b"].piece


@pytest.mark.parametrize("book", ["", BOOK])
def test_what_has_not_changed_is_not_read_again(root, book):
    put(root, "a.yaml", PLAIN)
    put(root, "b.yaml", PLAIN)
    if book:
        put(root, "book.yaml", book)
    known = {}
    first = load(root, known=known)
    put(root, "b.yaml", PLAIN.replace("Cloud Shadow", "Cloud Edge"))
    second = load(root, known=known)
    assert second.book is first.book and second.patterns["a"] is first.patterns["a"]
    assert second.patterns["b"].title != first.patterns["b"].title and second.findings == first.findings
    put(root, "book.yaml", "title: Another")
    third = load(root, known=known)
    assert third.book.title == "Another" and third.patterns["a"] is not first.patterns["a"]
    assert said(root, known=known) == said(root)


def test_a_workspace_lets_go_of_single_beads_and_of_nothing_else(root):
    put(root, "a.yaml", PLAIN)
    put(root, "b.yaml", PLAIN)
    workspace = load(root)
    bare = without_charts(workspace)
    for slug, pattern in workspace.patterns.items():
        fields = {name for name in pattern.__struct_fields__ if getattr(bare.patterns[slug], name) is not getattr(pattern, name)}
        assert fields == {"chart", "written_strands"} and bare.patterns[slug].chart.rows == () != pattern.chart.rows
    assert bare.book is workspace.book and bare.findings is workspace.findings


def test_equal_stitches_of_all_patterns_are_one(root):
    put(root, "a.yaml", PLAIN)
    put(root, "b.yaml", PLAIN)
    one, other = (pattern.piece for pattern in load(root).patterns.values())
    assert one is not other
    assert all(ours is theirs for row, same in zip(one.rows, other.rows) for ours, theirs in zip(row.stitches, same.stitches))


def test_the_book_orders_its_patterns(root):
    for name in "abcd":
        put(root, f"{name}.yaml", PLAIN)
    put(root, "book.yaml", BOOK + "order: [d, b]\n")
    put(root, "releases.yaml", "# no pattern")
    put(root, ".draft.yaml", "not read")
    put(root, "readme.md", "not read")
    assert list(load(root).patterns) == ["d", "b", "a", "c"] and said(root) == []


def test_some_patterns_only(root):
    put(root, "a.yaml", "broken: [")
    put(root, "b.yaml", PLAIN)
    workspace = load(root, only=[root / "patterns" / "b.yaml"])
    assert list(workspace.patterns) == ["b"] and workspace.slugs == ("a", "b") and workspace.findings == ()
    assert [path.name for path in pattern_files(root)] == ["a.yaml", "b.yaml"]


def test_photos_and_links_inside(root):
    put(root, "real.jpg", b"x")
    (root / "patterns" / "photos").mkdir()
    (root / "patterns" / "photos" / "cloud-shadow.jpg").symlink_to("../real.jpg")
    put(root, "a.yaml", SMALL)
    (root / "patterns" / "b.yaml").symlink_to("a.yaml")
    assert said(root) == [] and list(load(root).patterns) == ["a", "b"]


def test_error_no_folder(tmp_path):
    workspace = load(tmp_path)
    assert [f.one_line() for f in workspace.findings] == [
        "patterns:1:1: error: the folder patterns/ cannot be read: no such file or directory (work in the folder that holds it) [unreadable-folder]"]
    assert (workspace.patterns, workspace.slugs, workspace.book.file) == ({}, (), "")


def test_error_names_of_files(root):
    put(root, "Cloud Shadow.yaml", PLAIN)
    put(root, "old.yml", PLAIN)
    put(root, "LOUD.YAML", PLAIN)
    put(root, "new\nline.yaml", PLAIN)
    assert sorted(said(root)) == [
        "patterns/Cloud Shadow.yaml:1:1: error: the name of a pattern file must have small letters, digits and single hyphens, such as cloud-shadow "
        "(rename it) [bad-file-name]",
        "patterns/LOUD.YAML:1:1: error: this file is not read, because its name ends in .YAML (let it end in .yaml) [bad-file-name]",
        "patterns/new\\nline.yaml:1:1: error: the name of a pattern file must have small letters, digits and single hyphens, such as cloud-shadow "
        "(rename it) [bad-file-name]",
        "patterns/old.yml:1:1: error: this file is not read, because its name ends in .yml (let it end in .yaml) [bad-file-name]"]


def test_error_a_name_that_is_not_text(root):
    (Path(os.fsdecode(os.fsencode(root) + b"/patterns/caf\xe9.yaml"))).write_text(PLAIN)
    (line,) = said(root)
    assert line.startswith("patterns/caf\\udce9.yaml:1:1: error: the name of a pattern file") and line.encode()


def test_error_links_that_lead_outside(root):
    outside = root.parent / "outside.yaml"
    outside.write_text(PLAIN)
    (root.parent / "pages").mkdir()
    (root / "patterns" / "a.yaml").symlink_to(outside)
    (root / "patterns" / "book.yaml").symlink_to("/etc/passwd")
    (root / "patterns" / "c.yaml").symlink_to("c.yaml")
    (root / "patterns" / "d.yaml").symlink_to("nowhere.yaml")
    assert said(root) == [
        "patterns/book.yaml:1:1: error: patterns/book.yaml leads outside the workspace (put the file itself here, not a link to it) [outside-workspace]",
        "patterns/a.yaml:1:1: error: patterns/a.yaml leads outside the workspace (put the file itself here, not a link to it) [outside-workspace]",
        "patterns/c.yaml:1:1: error: patterns/c.yaml cannot be read: too many levels of symbolic links [unreadable-file]",
        "patterns/d.yaml:1:1: error: patterns/d.yaml cannot be read: no such file or directory [unreadable-file]"]
    assert load(root).patterns == {}


def test_error_a_photo_outside(root):
    (root.parent / "secret").mkdir()
    (root.parent / "secret" / "cloud-shadow.jpg").write_bytes(b"x")
    (root / "patterns" / "photos").symlink_to(root.parent / "secret")
    put(root, "a.yaml", SMALL)
    assert said(root) == [
        "patterns/a.yaml:43:15: error: photo.file leads outside the workspace; found 'photos/cloud-shadow.jpg' [outside-workspace]"]


def test_error_things_that_are_no_files(root):
    (root / "patterns" / "a.yaml").mkdir()
    os.mkfifo(root / "patterns" / "b.yaml")
    put(root, "c.yaml", b"a: " + b"x" * 1024 * 1024)
    put(root, "d.yaml", PLAIN)
    assert said(root) == [
        "patterns/a.yaml:1:1: error: patterns/a.yaml is not a file [unreadable-file]",
        "patterns/b.yaml:1:1: error: patterns/b.yaml is not a file [unreadable-file]",
        "patterns/c.yaml:1:1: error: the file is larger than 1 MiB, the most that is read [too-large]"]
    assert list(load(root).patterns) == ["d"] and load(root).slugs == ("a", "b", "c", "d")


def test_error_a_file_that_may_not_be_read(root, monkeypatch):
    def refuse(self, mode):
        raise PermissionError(13, "Permission denied")

    path = put(root, "a.yaml", PLAIN)
    book = load(root).book
    monkeypatch.setattr(Path, "open", refuse)
    assert [f.one_line() for f in read_one(path, root, book)[1]] == [
        "patterns/a.yaml:1:1: error: patterns/a.yaml cannot be read: permission denied [unreadable-file]"]


def test_error_a_book_that_cannot_be_read_does_not_hide_the_patterns(root):
    put(root, "book.yaml", "title: [")
    put(root, "a.yaml", PLAIN.replace("level: beginner\n", ""))
    assert [line.split(":")[0] for line in said(root)] == ["patterns/book.yaml"]
    assert load(root).patterns["a"].piece is not None


def test_a_link_to_the_workspace_is_the_workspace(root):
    put(root, "a.yaml", PLAIN)
    (root.parent / "link").symlink_to(root)
    assert said(root.parent / "link") == [] and load(root.parent / "link").patterns["a"].file == "patterns/a.yaml"


def test_the_place_of_the_workspace_does_not_matter(root, monkeypatch):
    put(root, "a.yaml", PLAIN + "typo: 1\n")
    elsewhere = root.parent / "elsewhere"
    shutil.copytree(root, elsewhere)
    monkeypatch.chdir(root)
    assert said(Path(".")) == said(elsewhere) == said(root) == [
        "patterns/a.yaml:51:1: error: the field 'typo' is not known [unknown-field]"]
