"""Peyote, square stitch and loom work against what is published about them, and against each other.

A brick chart turned a quarter is a peyote chart: "Brick stitch" (encyclopedia copy). Rows 1 and 2 of peyote are strung together,
then every other bead a row: stored pages on reading even-count and odd-count peyote patterns. A loom has one warp more than the work has
beads across: stored page of a bead weaving book.
"""

from collections import Counter

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.craft.pieces import KEYS, piece
from tests.craft.weaves import woven
from tests.source.texts import good, with_chart

from booklet.craft.layout import layout
from booklet.craft.needle import path
from booklet.craft.size import size
from booklet.craft.stitches import faults
from booklet.craft.stitches.loom import warps
from booklet.craft.tally import tally
from booklet.craft.words import row_words


@st.composite
def strips(draw):
    """Columns of sets, every other one half a stitch higher: drop, and (offset, sets from the bottom) of each column."""
    drop, columns, high = draw(st.integers(1, 4)), draw(st.integers(2, 9)), draw(st.integers(2, 6))
    first = 0 if columns % 2 else draw(st.integers(0, 1))   # an odd number of columns begins and ends low
    beads = st.lists(KEYS, min_size=drop, max_size=drop).map("".join)
    return drop, [((first + column) % 2, [draw(beads) for _ in range(high)]) for column in range(columns)]


def spots(made):
    return Counter((round(spot.x, 9), round(spot.y, 9), spot.key) for spot in layout(made).spots.values())


@settings(deadline=None)
@given(strips())
def test_a_brick_chart_turned_a_quarter_is_a_peyote_chart(strip):
    """The same picture: every bead of the one lies where it lies in the other, across and up exchanged."""
    drop, columns = strip
    brick = piece([(offset, sets) for offset, sets in columns])
    lines = [[(column, sets[level // 2]) for column, (offset, sets) in enumerate(columns) if offset == level % 2]
             for level in range(2 * len(columns[0][1]))]
    peyote = woven("peyote", [(line[0][0], [beads for _, beads in line]) for line in lines])
    assert faults(brick) == faults(peyote) == ()
    assert spots(peyote) == Counter((y, x, key) for x, y, key in spots(brick).elements())
    assert (size(peyote).width, size(peyote).body) == (pytest.approx(size(brick).body), pytest.approx(size(brick).width))
    assert [line.piece for line in tally(peyote).lines] == [line.piece for line in tally(brick).lines]


def test_the_text_of_a_brick_chart_turned_a_quarter_is_the_text_of_a_peyote_chart():
    drawing = ["W B W B",
               " B B W W",
               "B W B B"]
    turned = ["".join(line[at] if at < len(line) else " " for line in reversed(drawing)).rstrip() for at in range(8)]
    brick, peyote = (good(with_chart("\n".join(f"| {line}" for line in lines)).replace("stitch: brick", f"stitch: {stitch}")).piece
                     for stitch, lines in (("brick", drawing), ("peyote", turned[::-1])))
    assert turned[0] == "B W" and turned[1] == " B"
    assert spots(peyote) == Counter((y, x, key) for x, y, key in spots(brick).elements())


def test_even_peyote_of_twelve_columns():
    """12 beads are strung for rows 1 and 2, then every row adds 6: arithmetic."""
    made = woven("peyote", [(1, ["W"] * 6), (0, ["W"] * 6)] * 5)
    assert [words.stitches for words in row_words(made)] == [12] + [6] * 8 and len(path(made).passes()) == 60


def test_odd_peyote_turns_specially_at_one_edge_every_other_row():
    made = woven("peyote", [(0, ["W"] * 5), (1, ["W"] * 4)] * 4)
    turns = [words.number for words in row_words(made) if words.text.endswith("edge turn")]
    assert turns == [3, 5, 7] and {made.rows[number - 1].direction for number in turns} == {"left"}


@pytest.mark.parametrize("across", [1, 7, 20])
def test_warps_are_beads_across_and_one(across):
    assert warps(woven("loom", [(0, ["W"] * across)] * 3)) == across + 1
    assert warps(woven("loom", [(2, ["W"] * across), (0, ["W"] * (across + 1))])) == across + 2


def test_a_square_of_peyote_and_of_loom_work_differ_by_the_half_bead_of_the_edge():
    """n rows of loom work are n diameters high; 2n rows of peyote stand half a bead into each other, so n and a half: arithmetic."""
    loom, peyote = woven("loom", [(0, ["W"] * 8)] * 5), woven("peyote", [(1, ["W"] * 4), (0, ["W"] * 4)] * 5)
    assert tally(loom).beads == tally(peyote).beads == 40
    assert size(loom).width == size(peyote).width == pytest.approx(8 * 1.3)
    assert size(peyote).body - size(loom).body == pytest.approx(1.6 / 2)
