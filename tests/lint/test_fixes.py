"""Mending: what has one right answer is put right, and nothing else in the file moves by a byte."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from booklet.lint.fixes.fringe import run_text
from booklet.lint.fixes.mend import mended
from booklet.source.book import Book
from booklet.source.chart import DrawnBead
from booklet.source.nodes import compose
from booklet.source.resolve import read_pattern
from booklet.source.runs import WrittenStrand, read_beads
from booklet.source.written import Written
from booklet.findings import Mark
from tests.lint.books import PATTERN, completed

TALL = "body:\n  chart: |\n" + "".join(f"    {number:>2} | {' ' * (number % 2)}{'W W' if number % 2 == 0 else 'W B W'}\n".replace("| ", "|  " if number % 2 == 0 else "| ")
                                       for number in range(11, 0, -1))


def mend(text, runs=False):
    return mended(text, "morning-cloud", Book(), runs)


def read(text):
    return read_pattern(text, "a.yaml", "a", Book())


def test_a_pattern_without_a_fault_stays_as_it_is():
    assert mend(PATTERN) == PATTERN and mend(completed(TALL)) == completed(TALL)


@pytest.mark.parametrize("ends", ["\n", "\r\n"])
def test_row_numbers_and_the_bars_stay_in_their_columns(ends):
    right = completed(TALL).replace("\n", ends)
    wrong = right.replace("10 |", " 9 |").replace("11 |", "12 |").replace(" 3 |", "13 |")
    assert mend(wrong) == right != wrong


def test_a_longer_number_takes_the_space_after_it_where_none_is_before():
    lines = [line.replace("     ", "    ").replace(" |", "  |") if line.startswith("     ") else line for line in TALL.splitlines(keepends=True)]
    right = completed("".join(lines))
    wrong = right.replace("    10 |", "    9  |")
    assert read(wrong)[0].piece == read(right)[0].piece != None and mend(wrong) == right


def test_counts_are_put_right_and_the_comment_beside_them_stays():
    text = completed("counted: { base: 4,  rows: '3', beads: 500 }   # by hand\n")
    assert mend(text) == text.replace("base: 4", "base: 3").replace("'3'", "2").replace("500", "5")


def test_fields_move_with_their_comments_and_the_head_of_the_file_stays():
    text = completed("").replace("title: Morning Cloud\n", "").replace("body:\n", "# what it is called\ntitle: Morning Cloud   # short\nbody:\n")
    text = "# my first pattern\n\n" + text.replace("level: beginner\nmakes: single\n", "makes: single\n\nlevel: beginner\n")
    want = "# my first pattern\n\n# what it is called\ntitle: Morning Cloud   # short\n" + completed("").partition("\n")[2].replace(
        "level: beginner\nmakes: single\n", "\nlevel: beginner\nmakes: single\n")
    assert mend(text) == want


def test_fields_move_where_the_last_line_has_no_end():
    text = completed("").replace("title: Morning Cloud\n", "") + "title: Morning Cloud"
    assert mend(text) == completed("").removesuffix("\n")


@pytest.mark.parametrize("text", [
    "{version: '1.0', title: A}\n", "title: A\n", "", "[", "a: *b\n", PATTERN.replace("W B W", "W Q W").replace('version: "1.0"\n', "") + 'version: "1.0"\n',
    re.sub("title: .*\nsummary: .*\n", "summary: *name\n", PATTERN).replace("level", "title: &name Morning Cloud\nlevel"),
])
def test_a_file_that_cannot_be_mended_safely_stays_as_it_is(text):
    assert mend(text) == text


DRAWN = """\
fringe:
  end: 3B
  # drawn
  chart: |   # top down
    | W W W
    | B W B
    | W   B

hanger: {kind: guard}
"""


def test_a_drawn_fringe_becomes_run_text_only_where_that_is_asked_for():
    text = completed(DRAWN)
    assert mend(text) == text
    made = mend(text, runs=True)
    assert made == completed("fringe:\n  end: 3B\n  # drawn\n  strands:   # top down\n    - 1W 1B 1W\n    - 2W\n    - 1W 2B\n\nhanger: {kind: guard}\n")
    assert read(made)[0].piece == read(text)[0].piece


def test_a_mirrored_drawn_fringe_stays_mirrored():
    text = completed("fringe:\n  end: 3B\n  mirror: true\n  chart: |\n    | W B\n    |   B\n")
    assert mend(text, runs=True) == completed("fringe:\n  end: 3B\n  mirror: true\n  strands:\n    - 1W\n    - 2B\n")


@given(st.lists(st.sampled_from("WB7"), min_size=1, max_size=60))
def test_run_text_is_read_back_bead_by_bead(keys):
    text = run_text(WrittenStrand(tuple(DrawnBead(key, Mark("a"), 0) for key in keys), (), Mark("a")))
    document = compose(text, "a")
    beads, found = read_beads(Written(document.root.text, document.root, document), "WB7")
    assert found == [] and [bead.key for bead in beads] == keys


@given(st.permutations(list(range(8))), st.booleans(), st.booleans())
def test_fields_in_any_order_come_back_in_order_with_every_line(order, blank, ended):
    parts = [part + ("# after\n\n" if blank else "") for part in PATTERN.replace("\nbody", "\n\0body").replace("\nbeads", "\n\0beads").replace("\nmakes", "\n\0makes").replace(
        "\nlevel", "\n\0level").replace("\nversion", "\n\0version").replace("\nsummary", "\n\0summary").split("\0")]
    assert len(parts) == 7
    text = "".join(parts[index] for index in order if index < 7)
    text = text if ended else text.rstrip("\n")
    made = mend(text)
    assert sorted(made.splitlines()) == sorted(text.splitlines())
    assert [line.partition(":")[0] for line in made.splitlines() if line[:1].isalpha()] == ["title", "summary", "version", "level", "makes", "beads", "body"]
    assert read(made)[0].piece == read(text)[0].piece
