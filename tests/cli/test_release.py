"""booklet release: from a first release to the page of corrections."""

import asyncio
import re
import shutil
from pathlib import Path

import pypdf
import pytest
from click.testing import CliRunner

from booklet.bind.book import book_html, gathered
from booklet.bind.edition import edition
from booklet.bind.single import single_html
from booklet.cli import main
from booklet.source.workspace import load

TINY = Path(__file__).parents[1] / "books" / "tiny"


@pytest.fixture
def root(tmp_path):
    """The tiny book, in its first edition."""
    shutil.copytree(TINY, tmp_path / "tiny")
    change(tmp_path / "tiny", "morning-cloud.yaml", (" > 3B", ""))
    return tmp_path / "tiny"


def run(root, *words):
    return CliRunner().invoke(main, ["-C", str(root), *words])


def change(root, name, *pairs):
    file = root / "patterns" / name
    text = file.read_text("utf-8")
    for old, new in pairs:
        assert old in text
        text = text.replace(old, new)
    file.write_text(text, "utf-8")


def rules(root):
    return re.findall(r"\[([a-z-]+)\]$", run(root, "lint").output, re.MULTILINE)


def test_a_first_release_is_recorded_with_a_copy_and_lint_stays_clean(root):
    result = run(root, "release", "--book")
    assert result.exit_code == 0 and result.output.splitlines() == [
        "patterns/releases/morning-cloud-1.2.yaml", "patterns/releases/evening-star-0.9.yaml", "patterns/releases.yaml",
        "build/releases/morning-cloud-1.2.txt", "build/releases/evening-star-0.9.txt", "build/releases/a-small-sky-first-edition.txt"]
    assert (root / "patterns/releases/morning-cloud-1.2.yaml").read_bytes() == (root / "patterns/morning-cloud.yaml").read_bytes()
    assert (root / "build/releases/morning-cloud-1.2.txt").read_text("utf-8") == "Morning Cloud, version 1.2\n\nThe first release.\n"
    assert rules(root) == []


def test_nothing_new_is_recorded_twice(root):
    run(root, "release", "--book")
    before = (root / "patterns/releases.yaml").read_bytes()
    for words in (["--book"], ["morning-cloud"]):
        result = run(root, "release", *words)
        assert (result.exit_code, result.output) == (0, "") and (root / "patterns/releases.yaml").read_bytes() == before


def test_a_change_under_the_same_version_is_found_and_not_released(root):
    run(root, "release", "--book")
    change(root, "morning-cloud.yaml", ("10W 2B", "9W 3B"))
    assert run(root, "lint").output == (
        "patterns/morning-cloud.yaml:3:10: error: chart, fringe or beads have changed since version 1.2 was released, but the version has not: "
        "W 60, now 58, B 28, now 30 (raise the version) [chart-changed-version-not]\n")
    result = run(root, "release", "morning-cloud")
    assert result.exit_code == 1 and "nothing was released, because lint is not clean" in result.output
    assert not (root / "build/releases/morning-cloud-1.2.txt").read_text("utf-8").count("was")


def test_changed_words_under_the_same_version_are_a_warning_and_not_released(root):
    run(root, "release", "--book")
    change(root, "morning-cloud.yaml", ("{item: ear wire, each: 1}", "{item: ear wire, each: 2}"))
    assert run(root, "lint").output == (
        "patterns/morning-cloud.yaml:3:10: warning: texts have changed since version 1.2 was released, but the version has not: findings "
        "(raise the version) [text-changed-version-not]\n")
    assert run(root, "release", "morning-cloud").exit_code == 1


def test_a_lower_version_is_found(root):
    run(root, "release", "--book")
    change(root, "morning-cloud.yaml", ('"1.2"', '"1.1"'))
    assert run(root, "lint").output == (
        "patterns/morning-cloud.yaml:3:10: error: the version is 1.1, but 1.2 was released already (raise the version above it) [version-lower-than-released]\n")


def corrected(root):
    """The book with a new version of one pattern, which is released."""
    run(root, "release", "--book")
    change(root, "morning-cloud.yaml", ('"1.2"', '"1.3"'), ("10W 2B", "9W 3B"), ("3 |   B B B B", "3 |   B W W B"), ("storm blue", "deep blue"),
           ("each: 1}\nlinks", "each: 2}\nlinks"), ("The base row", "This base row"))
    return run(root, "release", "morning-cloud")


LIST = """\
Morning Cloud, version 1.3
What has changed since version 1.2:

Rows
  Row 3
    was     → 4 sets: start in (W B), (B B); then (B B), (B W); end in
    is now  → 4 sets: start in 2(W B); then (W B), (B W); end in

Strands
  Strand 3
    was     13 beads: 10W, 2B; end 1D
    is now  13 beads: 9W, 3B; end 1D
  Strand 4
    was     13 beads: 10W, 2B; end 1D
    is now  13 beads: 9W, 3B; end 1D

Beads of the key
  B
    was     storm blue, lustre, cylinder 11/0
    is now  deep blue, lustre, cylinder 11/0

Also
  Findings
    was     1 thread guard, 4 mm; 1 ear wire
    is now  1 thread guard, 4 mm; 2 ear wire

Words
  Notes have changed: read them again
"""


def test_the_corrections_go_out_as_text(root):
    result = corrected(root)
    assert result.output.splitlines() == ["patterns/releases/morning-cloud-1.3.yaml", "patterns/releases.yaml", "build/releases/morning-cloud-1.3.txt"]
    assert (root / "build/releases/morning-cloud-1.3.txt").read_text("utf-8") == LIST


def test_counts_that_have_changed_are_told_old_to_new(root):
    run(root, "release", "--book")
    change(root, "morning-cloud.yaml", ('"1.2"', '"1.3"'), ("10W 2B", "11W 2B"))
    run(root, "release", "morning-cloud")
    assert "Bead counts, old → new\n  W 60 → 62 a piece, 120 → 124 in all, 132 → 137 to buy\n  All 94 → 96 a piece, 188 → 192 in all" in (root / "build/releases/morning-cloud-1.3.txt").read_text("utf-8")


def test_a_released_single_and_the_book_are_out_of_step_until_the_book_follows(root):
    corrected(root)
    assert run(root, "lint").output == (
        "patterns/morning-cloud.yaml:3:10: warning: version 1.3 was released as a single, but First edition of the book has 1.2 "
        "(booklet release --book publishes the book again) [single-and-book-out-of-step]\n")
    refused = run(root, "release", "--book")
    assert refused.exit_code == 2 and "First edition was released already, with other versions of its patterns" in refused.output
    change(root, "book.yaml", ("First edition", "Second edition"))
    assert run(root, "release", "--book").output.splitlines() == ["patterns/releases.yaml", "build/releases/a-small-sky-second-edition.txt"]
    assert (root / "build/releases/a-small-sky-second-edition.txt").read_text("utf-8") == "A Small Sky, Second edition\n\n" + LIST
    assert rules(root) == []


def words(html):
    """The text of a page of HTML."""
    return " ".join(re.sub("<[^>]+>", " ", html).split())


def test_the_corrections_print_in_the_single_and_in_the_book(root):
    corrected(root)
    workspace = load(root)
    on = edition(workspace.book)
    single = words(asyncio.run(single_html(workspace, "morning-cloud", on)))
    book = words(book_html(workspace, asyncio.run(gathered(workspace, on)), on))
    for text in (single, book):
        assert "What has changed" in text and "Changes since version 1.2." in text
        assert "Strand 3 was: 13 beads: 10W, 2B; end 1D is now: 13 beads: 9W, 3B; end 1D" in text
    assert "What has changed" not in words(asyncio.run(single_html(workspace, "evening-star", on)))


def test_the_page_of_corrections_is_in_the_pdf(root):
    corrected(root)
    assert run(root, "single", "morning-cloud").exit_code == 0
    pages = [page.extract_text() for page in pypdf.PdfReader(root / "build/single/morning-cloud.pdf").pages]
    (page,) = [page for page in pages if "What has changed" in page]
    assert "9W, 3B; end 1D" in page and "Morning Cloud · version 1.3" in page


def test_error_the_copy_of_an_earlier_release_is_gone_or_changed(root):
    run(root, "release", "--book")
    change(root, "morning-cloud.yaml", ('"1.2"', '"1.3"'))
    copy = root / "patterns/releases/morning-cloud-1.2.yaml"
    text = copy.read_text("utf-8")
    copy.unlink()
    assert rules(root) == ["released-copy-missing"] and run(root, "release", "morning-cloud").exit_code == 1
    copy.write_text(text.replace("10W 2B", "9W 3B"), "utf-8")
    result = run(root, "release", "morning-cloud")
    assert result.exit_code == 2 and "patterns/releases/morning-cloud-1.2.yaml is not what was released as version 1.2" in result.output
    assert not (root / "patterns/releases/morning-cloud-1.3.yaml").exists()


def test_what_stands_in_the_record_stays_as_it_is(root):
    run(root, "release", "evening-star")
    record = root / "patterns/releases.yaml"
    record.write_text(record.read_text("utf-8").rstrip("\n") + "   # sold at the fair", "utf-8")
    before = record.read_text("utf-8")
    run(root, "release", "morning-cloud")
    assert record.read_text("utf-8").startswith(before + "\n- pattern: morning-cloud\n") and rules(root) == []


@pytest.mark.parametrize(("words", "said"), [
    ([], "Name the patterns to release, or give --book."), (["morning-cloud", "--book"], "Give either patterns or --book, not both."),
    (["morning-clod"], "there is no pattern 'morning-clod' (did you mean morning-cloud?)")])
def test_error_wrong_use(root, words, said):
    result = run(root, "release", *words)
    assert result.exit_code == 2 and said in result.output


def test_error_a_book_without_an_edition(root):
    change(root, "book.yaml", ("edition: First edition\n", ""))
    result = run(root, "release", "--book")
    assert result.exit_code == 2 and "the book has no edition" in result.output and not (root / "patterns/releases.yaml").exists()


def test_error_a_pattern_with_a_fault_is_not_released(root):
    change(root, "morning-cloud.yaml", ("10W 2B", "10W 2Q"))
    result = run(root, "release", "morning-cloud")
    assert result.exit_code == 1 and "unknown-bead-key" in result.output and not (root / "patterns/releases.yaml").exists()
