"""Faults that only set pages show: real PDFs of small books with one fault each."""

from contextlib import nullcontext
from pathlib import Path

import pytest
from PIL import Image

from booklet.bind import book, single
from booklet.bind.edition import edition
from booklet.bind.geometry import print_room
from booklet.bind.page_fit import page_findings, without_errors
from booklet.bind.pdf import working_in
from booklet.bind.press.cache import KEPT
from booklet.bind.press.workshop import HereAndNow, Workshop
from booklet.commands.asked import check_files
from booklet.errors import FindingsError
from booklet.findings import Finding, Mark, Severity
from booklet.lint.page_rules import PAGE_RULES
from booklet.source.workspace import load
from tests.bind.copies import TINY
from tests.lint.books import PATTERN, write_book

FILE = "patterns/morning-cloud.yaml"
LONG = PATTERN.replace("title: Morning Cloud", f"title: {'Cloud' * 20}")
NO_BREAKS = "h1, h2 { white-space: nowrap !important; overflow-wrap: normal !important }"


def fitted(root, pattern=PATTERN, book="title: B\nauthor: Isobar Bead Studio\n", **others):
    """What lint says of a book and its pages, one line a finding."""
    write_book(root, {"morning-cloud.yaml": pattern, "book.yaml": book + "order: [morning-cloud]\n"})
    return [finding.one_line() for finding in check_files(root, {root: None}, nullcontext).findings]


def with_style(root, rule):
    """Let the workspace have a style sheet of its own: ours, and one more rule."""
    (root / "templates").mkdir()
    ours = (Path(__file__).parents[2] / "templates" / "print.css").read_text("utf-8")
    (root / "templates" / "print.css").write_text(f"{ours}\n{rule}\n", "utf-8")


def test_nothing_is_found_on_sound_pages(tmp_path):
    assert fitted(tmp_path) == []


def test_pages_that_were_set_once_are_not_set_again(tmp_path):
    def lines(start):
        return [finding.one_line() for finding in check_files(tmp_path, {tmp_path: None}, lambda root: working_in(Workshop(root / KEPT, start))).findings]

    wanted = fitted(tmp_path, PATTERN + "notes: It floats \N{SNOWMAN} by.\n")
    assert any("is in none of the fonts" in line for line in wanted)
    assert lines(HereAndNow) == wanted and lines(lambda: pytest.fail("a page was set again")) == wanted


def test_nothing_is_found_in_the_tiny_book():
    workspace = load(TINY)
    assert single.fit_findings(workspace, workspace.patterns.values()) == []


def test_error_character_not_in_fonts(tmp_path):
    signs = "\N{SNOWMAN}\N{BLUE HEART}\N{RUNIC LETTER FEHU FEOH FE F}"   # fonts of this computer may have some of them
    lines = fitted(tmp_path, PATTERN + f"notes: |\n  It floats {signs} by.\n")
    number = int(lines[0].partition("on page ")[2].partition(" ")[0])
    assert [line for line in lines if "character-not-in-fonts" in line] == [
        f"{FILE}:14:{column}: warning: {sign} (U+{ord(sign):04X}) on page {number} of the single is in none of the fonts of the page (write it otherwise) [character-not-in-fonts]"
        for column, sign in enumerate(signs, 13)]


def test_error_text_past_margin(tmp_path):
    with_style(tmp_path, NO_BREAKS)
    lines = fitted(tmp_path, LONG)
    assert any("runs off the page" in line and "[text-past-margin]" in line for line in lines)


def test_error_picture_too_coarse(tmp_path):
    photo = tmp_path / "patterns" / "photos" / "cloud.png"
    photo.parent.mkdir(parents=True)
    Image.new("RGB", (400, 300), "#3d5a80").save(photo)
    lines = fitted(tmp_path, PATTERN + "photo: {file: photos/cloud.png, alt: a small cloud on a blue ground}\n")
    assert sum("[picture-too-coarse]" in line for line in lines) == 1
    assert all("400 x 300 pixels" in line for line in lines)


def test_error_type_too_small(tmp_path):
    with_style(tmp_path, "p { font-size: 4pt !important }")
    assert f"{FILE}:1:8: warning: page 1 of the single has type of 4 points; 7.2 is the least of this edition [type-too-small]" in fitted(tmp_path)


def test_error_nearly_empty_page(tmp_path):
    with_style(tmp_path, ".closing { break-before: page }")
    assert fitted(tmp_path, PATTERN + "notes: |\n  It floats by.\n") == [
        f"{FILE}:1:8: note: page 6 of the single is nearly empty [nearly-empty-page]"]


def test_error_a_chart_with_beads_too_small(tmp_path):
    rows = "\n".join("    | " + (" " if row % 2 else "") + " ".join("W" * (59 - row % 2)) for row in range(2))
    workspace = load(write_book(tmp_path, {"morning-cloud.yaml": PATTERN.partition("  chart")[0] + f"  chart: |\n{rows}\n"}))
    pattern = workspace.patterns["morning-cloud"]
    assert [finding.one_line() for finding in page_findings(pattern, print_room(edition(workspace.book)))] == [
        f"{FILE}:10:10: note: the body chart goes on over several pages: one page holds it with beads 1.7 mm wide, and letters need 2.4 mm "
        "(choose a larger page in book.yaml, or make the piece smaller, if it is to stay in one piece) [chart-too-large-for-page]"]


def test_a_book_weighs_and_a_pattern_allows_what_pages_show(tmp_path):
    snow = PATTERN + "notes: |\n  It floats \N{SNOWMAN} by.\n"
    assert fitted(tmp_path, snow + "lint: {allow: {character-not-in-fonts: The printer has the sign.}}\n") == []
    assert fitted(tmp_path, snow, "title: B\nauthor: Isobar Bead Studio\nlint: {severity: {character-not-in-fonts: off}}\n") == []


def test_every_fault_of_pages_has_its_explanation():
    said = "".join((Path(__file__).parents[2] / "booklet" / "bind" / name).read_text("utf-8") for name in ("page_fit.py", "set_pages.py"))
    assert all(f'"{name}"' in said and text.endswith(".") for name, text in PAGE_RULES.items())



def test_error_a_single_whose_text_runs_off_its_page_is_not_written(tmp_path):
    with_style(tmp_path, NO_BREAKS)
    fitted(tmp_path, LONG)
    with pytest.raises(FindingsError) as caught:
        single.build(load(tmp_path), "morning-cloud")
    assert {finding.rule for finding in caught.value.findings if finding.is_error} == {"text-past-margin"}
    assert not (tmp_path / "build").exists()


def test_a_book_is_looked_at_and_what_its_pages_show_is_told(tmp_path):
    fitted(tmp_path, PATTERN + "notes: |\n  It floats \N{SNOWMAN} by.\n")
    told = []
    book.build(load(tmp_path), ("pdf",), report=told.extend)
    assert {(finding.rule, finding.mark.file) for finding in told if finding.severity < 2} == {("character-not-in-fonts", "patterns/book.yaml")}
    with_style(tmp_path, NO_BREAKS)
    fitted(tmp_path, LONG)
    (pdf,) = (tmp_path / "build").glob("*.pdf")
    before = pdf.read_bytes()
    with pytest.raises(FindingsError):
        book.build(load(tmp_path), ("pdf",))
    assert pdf.read_bytes() == before


def test_what_is_told_of_pages_is_weighed_and_notes_are_left_out(tmp_path):
    heart = Finding(Mark("patterns/book.yaml"), Severity.WARNING, "character-not-in-fonts", "a heart is in none of the fonts of the page")
    parted = Finding(Mark("patterns/book.yaml"), Severity.NOTE, "chart-too-large-for-page", "the body chart goes on over several pages")
    workspace = load(write_book(tmp_path, {"morning-cloud.yaml": PATTERN}))
    assert without_errors(workspace, [parted, heart, heart]) == [heart]
    write_book(tmp_path, {"book.yaml": "title: B\nlint: {severity: {character-not-in-fonts: off, chart-too-large-for-page: error}}\n"})
    with pytest.raises(FindingsError) as caught:
        without_errors(load(tmp_path), [parted, heart])
    assert caught.value.findings == (parted._replace(severity=Severity.ERROR),)
