"""Pattern files to start from: whatever is asked for, the file is right, and what is impossible says what would do."""

import re
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from booklet.craft.replay import differences
from booklet.craft.shapes import FRINGES, SHAPES, ImpossibleShape
from booklet.craft.size import mass
from booklet.craft.tally import tally
from booklet.craft.techniques import LEVELS, needed_level
from booklet.craft.words import row_words, strand_words
from booklet.lint.run import lint
from booklet.source.book import Book
from booklet.source.starter import KEYS, start
from booklet.source.starter_text import pattern_text
from booklet.source.workspace import Workspace, read_text

NOTED = 5.0   # grams at which lint begins to speak of weight
ASKED = st.fixed_dictionaries({
    "shape": st.sampled_from(list(SHAPES)), "base": st.integers(1, 15), "rows": st.none() | st.integers(0, 28), "drop": st.integers(1, 4),
    "fringe": st.sampled_from(list(FRINGES)), "longest": st.none() | st.integers(0, 60)})


def clean(text, book=None):
    """The pattern of a text in which neither reading nor lint finds anything but its weight, where somebody asked for that much."""
    book = book or Book()
    pattern, found = read_text(text, "patterns/breeze.yaml", "breeze", book)
    workspace = Workspace(Path("."), book, {"breeze": pattern}, ("breeze",), tuple(found))
    light = mass(pattern.piece) < NOTED
    assert [finding.one_line() for finding in lint(workspace, with_book=False) if light or finding.rule != "heavy-piece"] == []
    return pattern


def cured(asked, cure):
    """What is asked for, with the first of the options that a message offers, or without the one it says to leave out."""
    name, value = re.search(r"--(\w+) ?(\w+)?", cure).groups()
    if cure.startswith("leave out"):
        return {**asked, name: None}
    return {**asked, name: int(value) if value.isdigit() else value}


@settings(max_examples=60)
@given(ASKED)
def test_whatever_is_asked_for_gives_a_file_that_is_right(asked):
    for _ in range(5):
        try:
            planned = start("breeze", **asked)
            break
        except ImpossibleShape as error:
            asked = cured(asked, error.cure)
    text = pattern_text(planned, Book())
    pattern = clean(text)
    piece, counted = pattern.piece, pattern.counted
    assert differences(piece, [words.line for words in row_words(piece)], [words.line for words in strand_words(piece)]) == ()
    assert counted["beads"] == tally(piece).beads and counted["rows"] == len(piece.rows) and counted["base"] == len(piece.base.stitches)
    assert counted.get("strands", 0) == len(piece.strands) and piece.drop == asked["drop"]
    assert pattern.level == needed_level(piece) and len(pattern.legend) >= 2
    assert max(map(len, text.splitlines())) <= 400 and max(len(line) for line in text.splitlines() if line.startswith("#")) <= 120


@pytest.mark.parametrize("shape", SHAPES)
def test_a_start_has_all_three_colours_and_what_was_asked_for(shape):
    base = SHAPES[shape].base
    pattern = clean(pattern_text(start("breeze", shape, base, None, 1, "none", None), Book()))
    assert tuple(pattern.legend) == tuple(KEYS) and pattern.title == "Breeze" and pattern.counted["base"] == base
    used = {key for row in pattern.piece.rows for stitch in row.stitches for key in stitch.beads}
    assert used == set(KEYS)


def test_the_remark_about_other_colours_can_be_taken_at_its_word():
    text = pattern_text(start("breeze", "triangle", 7, None, 1, "v", None), Book())
    head, rest = text.split("# colourways:\n")
    colourway, counted = rest.split("\n\n", 1)
    pattern = clean(head + "colourways:\n" + re.sub("^# ", "", colourway, flags=re.MULTILINE) + "\n\n" + counted)
    assert list(pattern.colourways) == ["dusk"] and set(pattern.colourways["dusk"]) == set(KEYS)


def test_a_slanted_pair_leans_both_ways():
    pattern = clean(pattern_text(start("breeze", "trapezoid", 9, None, 1, "slant", 20), Book()))
    lengths = [len(strand.all) for strand in pattern.piece.strands]
    assert pattern.mirror and lengths[0] == 20 and lengths == sorted(lengths, reverse=True) and len(set(lengths)) == 9


def test_the_level_is_what_the_book_asks_for():
    book = Book(levels={LEVELS[2]: ("fringe",)})
    assert clean(pattern_text(start("breeze", "triangle", 7, None, 1, "v", None), book), book).level == LEVELS[2]


@pytest.mark.parametrize(("slug", "title"), [("cloud-shadow", "Cloud Shadow"), ("no", "No"), ("null", "Null"), ("2026", "2026"), ("1e3", "1e3")])
def test_the_title_comes_from_the_name(slug, title):
    assert clean(pattern_text(start(slug, "triangle", 7, None, 1, "v", None), Book())).title == title


@pytest.mark.parametrize(("asked", "what", "cure"), [
    (("diamond", 7, None, 1, "v", None), "the strands would hang from the widest row of the diamond and hide the rows below it",
     "take --fringe none, or --shape hexagon"),
    (("triangle", 7, None, 1, "none", 20), "there is no fringe, so it has no longest strand", "leave out --longest, or take --fringe straight"),
])
def test_error_no_such_fringe(asked, what, cure):
    with pytest.raises(ImpossibleShape) as error:
        start("breeze", *asked)
    assert (error.value.what, error.value.cure) == (what, cure)
