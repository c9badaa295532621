"""The second piece of a pair."""

from collections import Counter
from dataclasses import replace

from hypothesis import given, settings
from tests.craft.pieces import piece, triangle, workable

from booklet.craft.pair import has_two_faces, is_symmetric, mirrored
from booklet.craft.piece import Hanger
from booklet.craft.replay import differences, replay
from booklet.craft.tally import tally
from booklet.craft.words import row_words, strand_words


def lines(made):
    return [w.line for w in row_words(made)], [w.line for w in strand_words(made)]


@settings(deadline=None)
@given(workable())
def test_the_words_of_the_mirror_image_rebuild_the_mirror_image(made):
    other = mirrored(made)
    assert differences(other, *lines(other)) == () and mirrored(other) == made
    assert [line.piece for line in tally(other).lines] == [line.piece for line in tally(made).lines]
    assert [row.direction for row in other.rows] == [row.direction for row in made.rows]   # the same hand works it


@settings(deadline=None)
@given(workable())
def test_what_is_read_back_is_the_chart_from_right_to_left(made):
    """Apart from the code that mirrors: every row read backwards, every strand counted from the other side."""
    first, second = replay(*lines(made)), replay(*lines(mirrored(made)))
    for one, other in zip(first.rows, second.rows):
        assert [beads for _, beads in one.stitches] == [beads for _, beads in other.stitches][::-1]
    assert [(strand.line, strand.second) for strand in first.strands] == [(strand.line, strand.second) for strand in second.strands][::-1]


@settings(deadline=None)
@given(workable())
def test_a_piece_is_symmetric_if_its_words_do_not_change(made):
    assert is_symmetric(made) is (lines(made) == lines(mirrored(made)) and all(h.beads == h.beads[::-1] for h in made.hangers))


def test_hangers_change_sides():
    made = replace(triangle(6, last=5), hangers=(Hanger("loop", ("W", "B"), at="left"), Hanger("ring", at="middle")))
    assert mirrored(made).hangers == (Hanger("ring", at="middle"), Hanger("loop", ("B", "W"), at="right"))


def test_a_slanted_fringe_makes_the_difference():
    assert is_symmetric(triangle(4, strands=["W", "WW", "WW", "W"])) and not is_symmetric(triangle(4, strands=["W", "WW", "WW", "WWW"]))
    assert has_two_faces(piece([(0, ["W", "B"])]))
    assert Counter(len(strand.beads) for strand in mirrored(triangle(3, strands=["W", "WW", "WWW"])).strands) == Counter([1, 2, 3])
