"""The second piece of a pair."""

from collections import Counter

import pytest
from hypothesis import given, settings
from msgspec.structs import replace
from tests.craft.fringes import fringed
from tests.craft.pieces import piece, stepped, triangle, workable

from booklet.craft.pair import has_two_faces, is_symmetric, mirrored
from booklet.craft.piece import Hanger
from booklet.craft.replay import differences, replay
from booklet.craft.tally import tally
from booklet.craft.words import row_words, strand_words


def lines(made):
    return [w.line for w in row_words(made)], [w.line for w in strand_words(made)]


@settings(deadline=None)
@given(workable() | stepped() | fringed())
def test_the_words_of_the_mirror_image_rebuild_the_mirror_image(made):
    other = mirrored(made)
    assert differences(other, *lines(other)) == () and mirrored(other) == made
    assert [line.piece for line in tally(other).lines] == [line.piece for line in tally(made).lines]
    directions = [{row.number: row.direction for row in each.rows} for each in (made, other)]
    assert directions[0] == directions[1]   # the same hand works it


@settings(deadline=None)
@given(workable() | stepped())
def test_what_is_read_back_is_the_chart_from_right_to_left(made):
    """Apart from the code that mirrors: every row read backwards, every strand counted from the other side."""
    first, second = replay(*lines(made)), replay(*lines(mirrored(made)))
    one, other = (sorted((row.number, at * side, beads) for row in read.rows for at, beads in row.stitches) for read, side in ((first, 1), (second, -1)))
    shift = one[0][1] - other[0][1]
    assert one == [(number, at + shift, beads) for number, at, beads in other]
    assert [(strand.line, strand.second) for strand in first.strands] == [(strand.line, strand.second) for strand in second.strands][::-1]


@settings(deadline=None)
@given(workable() | stepped())
def test_a_piece_is_symmetric_if_its_words_do_not_change(made):
    assert is_symmetric(made) is (lines(made) == lines(mirrored(made)) and mirrored(made).hangers == made.hangers)


@pytest.mark.parametrize("hand", ["right", "left"])
def test_parts_of_the_mirror_image_are_worked_in_the_order_of_the_hand(hand):
    made = piece([(0, list("WWWWWWWW")), (1, ["B", "R", "", "", "", "R", "7"]), (2, ["7", "", "", "", "", "B"])], hand=hand)
    other = mirrored(made)
    assert [row.name for row in other.rows] == [row.name for row in made.rows] == ["1", "2a", "3a", "2b", "3b"]
    assert [row.direction for row in other.rows] == [row.direction for row in made.rows]
    ears = ["".join(stitch.beads[0] for stitch in row.stitches) for each in (made, other) for row in each.rows[1:4:2]]
    assert ears == (["R7", "BR", "RB", "7R"] if hand == "right" else ["BR", "R7", "7R", "RB"])


def test_hangers_change_sides():
    made = replace(triangle(6, last=5), hangers=(Hanger("loop", ("W", "B"), at="left"), Hanger("ring", at="middle")))
    assert mirrored(made).hangers == (Hanger("ring", at="middle"), Hanger("loop", ("B", "W"), at="right"))


def test_a_slanted_fringe_makes_the_difference():
    assert is_symmetric(triangle(4, strands=["W", "WW", "WW", "W"])) and not is_symmetric(triangle(4, strands=["W", "WW", "WW", "WWW"]))
    assert has_two_faces(piece([(0, ["W", "B"])]))
    assert Counter(len(strand.beads) for strand in mirrored(triangle(3, strands=["W", "WW", "WWW"])).strands) == Counter([1, 2, 3])
