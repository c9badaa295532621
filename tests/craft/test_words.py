"""Words of rows and strands, and reading them back."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.craft.pieces import KEYS, piece, triangle, workable

from booklet.craft.reading.strands import ReadLine, ReadStrand
from booklet.craft.replay import CannotRead, differences, replay
from booklet.craft.runs import said
from booklet.craft.words import row_words, strand_words


def lines(made):
    return [w.line for w in row_words(made)], [w.line for w in strand_words(made)]


def test_words_of_a_small_piece():
    made = piece([(2, ["W", "W", "B", "W"]), (3, ["W", "B", "W"]), (2, ["B", "B", "R", "7"])],
                 strands=["WWWB", "WBWBWB", "W", ""], end="BBB")
    assert lines(made) == ([
        "Row 1 → 4 stitches: ladder 2W; then 1B, 1W",
        "Row 2 ← 3 stitches: start in 1W, 1B; then 1W; end in",
        "Row 3 → 4 stitches: start out 2B; then 1R, 17; end out",
    ], [
        "Strand 1, 7 beads: 3W, 1B; end 3B",
        "Strand 2, 9 beads: 3 × [1W, 1B]; end 3B",
        "Strand 3, 4 beads: 1W; end 3B",
        "Strand 4, 3 beads: end 3B",
    ])


def test_sets_are_named_in_pick_up_order():
    made = piece([(2, ["WB", "WB", "WB"]), (3, ["WB", "RR"]), (4, ["WB"])])
    assert lines(made)[0] == [
        "Row 1 → 3 sets: ladder (W B), (B W); then (W B)",
        "Row 2 ← 2 sets: start in (R R), (B W); end in",
        "Row 3 → 1 set: one set (B W)",
    ]


@settings(max_examples=400, deadline=None)
@given(workable())
def test_words_rebuild_every_legal_chart(made):
    assert differences(made, *lines(made)) == ()


@settings(deadline=None)
@given(workable(fringe=False), st.data())
def test_a_changed_bead_is_noticed(made, data):
    rows, _ = lines(made)
    other = data.draw(workable(fringe=False).filter(lambda p: p.rows != made.rows))
    assert differences(other, rows, []) != ()


@given(st.lists(KEYS, min_size=1, max_size=60))
def test_run_notation_keeps_every_bead(keys):
    read = replay([], [f"Strand 1, {len(keys)} beads: {said([(key,) for key in keys])}"])
    assert read.strands == (ReadStrand(1, 1, 1, ReadLine(tuple(keys))),)


@pytest.mark.parametrize("row", [
    "Row 1 → 4 stitches: ladder 2W; then 1B",
    "Row 1 → 3 stitches: start in 2W; then 1B; end in",
    "Row 1 to 3 stitches",
    "Row 1 → 2 sets: ladder (W B), (B)",
])
def test_error_a_line_that_makes_no_sense(row):
    with pytest.raises(CannotRead):
        replay([row], [])


def test_error_differences_name_the_row_and_the_strand():
    made = triangle(3, last=2, strands=["W", "W", "W"], end="B")
    rows, strands = lines(made)
    rows[1], strands[2] = rows[1].replace("2W", "1W, 1B"), strands[2].replace("1W", "1R")
    assert [text.split(":")[0] for text in differences(made, rows, strands)] == ["row 2", "strand 3"]
