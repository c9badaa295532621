"""Hangers: which stitches carry them, and the path of the needle through guard, ring and loop."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace
from tests.craft.pieces import hangers, piece, stepped, triangle, workable

from booklet.craft.events import Guard, Pass, PickUp, Place, Ring, Section
from booklet.craft.hanger import carriers, top_row, top_width
from booklet.craft.hanger_steps import hanger_step
from booklet.craft.needle import path
from booklet.craft.piece import Hanger
from booklet.craft.size import mass
from booklet.craft.tally import tally


def top(count):
    """A piece whose top row has this many stitches of 1.6 mm."""
    return triangle(count + 1, last=count)


@pytest.mark.parametrize(("count", "span", "at", "carried"), [
    (6, 3.0, "middle", (2, 3)), (6, 5.0, "middle", (1, 4)), (6, 30.0, "middle", (0, 5)), (5, 3.0, "middle", (1, 3)), (5, 6.0, "middle", (0, 4)),
    (2, 3.0, "middle", (0, 1)), (1, 3.0, "middle", (0, 0)), (6, 3.0, "left", (0, 2)), (6, 3.0, "right", (3, 5)), (6, 1.0, "left", (0, 1))])
def test_a_guard_sits_on_the_stitches_that_its_span_asks_for(count, span, at, carried):
    assert carriers(top(count), Hanger("guard", at=at, span=span)) == carried


@pytest.mark.parametrize(("count", "at", "carried"), [(6, "middle", (2, 3)), (5, "middle", (1, 3)), (6, "left", (0, 1)), (6, "right", (4, 5)), (1, "left", (0, 0))])
def test_a_ring_and_a_loop_sit_on_the_nearest_two(count, at, carried):
    assert carriers(top(count), Hanger("ring", at=at)) == carriers(top(count), Hanger("loop", ("W",), at=at)) == carried


def test_the_width_of_the_top_row():
    assert top_width(top(3)) == pytest.approx(4.8)


@st.composite
def hung(draw):
    """A workable piece with up to three hangers of any kind."""
    made = draw(workable(fringe=False) | stepped())
    return replace(made, hangers=draw(hangers()))


@settings(deadline=None)
@given(hung())
def test_every_hanger_is_gone_through_as_often_as_it_says(made):
    events = path(made).body
    passes = path(made).passes()
    for number, hanger in enumerate(made.hangers, 1):
        through = [event for event in events if isinstance(event, (Guard, Ring)) and event.section == Section("hanger", number)]
        assert len(through) == (hanger.passes if hanger.kind != "loop" else 0)
        assert [passes[Place("hanger", number, index)] for index in range(len(hanger.beads))] == [hanger.passes] * len(hanger.beads)
        left, right = carriers(made, hanger)
        row = top_row(made, hanger.at)
        assert 0 <= left <= right < len(row.stitches)
        if hanger.at == "middle":
            assert left + right == len(row.stitches) - 1


@settings(deadline=None)
@given(hung())
def test_the_needle_never_jumps_over_the_row_that_carries_a_hanger(made):
    """A hanger is entered from the top of its row, and a stitch is passed from the side on which the thread is."""
    for number, hanger in enumerate(made.hangers, 1):
        row, above = top_row(made, hanger.at), None
        for event in (event for event in path(made).body if event.section == Section("hanger", number)):
            if isinstance(event, (Guard, Ring)) or getattr(event, "places", ((),))[0][:1] == ("hanger",):
                assert above is not False
            elif isinstance(event, Pass) and event.places[0].line == row.number:
                assert above is None or event.up is not above
                above = event.up
        assert above is False


@pytest.mark.parametrize("hand", ["right", "left"])
def test_hangers_at_the_sides_of_a_top_in_two_parts_sit_on_the_part_at_that_side(hand):
    ears = piece([(0, ["W"] * 12), (1, ["B"] * 4 + ["", "", ""] + ["B"] * 4), (2, ["R"] * 3 + [""] * 4 + ["R"] * 3)], hand=hand)
    made = replace(ears, hangers=(Hanger("ring", at="left"), Hanger("ring", at="middle"), Hanger("ring", at="right")))
    tops = [top_row(made, at) for at in ("left", "middle", "right")]
    assert (tops[0].first, tops[1].name, tops[2].last) == (2, "1", 20)
    assert {tops[0].name, tops[2].name} == {"3a", "3b"}
    order = [event.section.number for event in path(made).body if isinstance(event, Ring)]
    assert order == ([1, 1, 1, 2, 2, 2, 3, 3, 3] if made.rows[-1].first == 2 else [3, 3, 3, 2, 2, 2, 1, 1, 1])
    text = hanger_step(made).text
    assert f"Hanger 1, at its left edge, sits on stitches 1 and 2 of row {tops[0].name}, counted from the left" in text
    assert "Weave through the stitches to row 1, until the thread exits the top of the nearer one" in text
    assert text.endswith(f"The thread exits below row {tops[2 if order[0] == 1 else 0].name}.")


def test_a_ring_at_each_end_is_worked_from_the_side_where_the_thread_is():
    made = triangle(7, last=6, hanger=None)
    made = replace(made, hangers=(Hanger("ring", at="left"), Hanger("ring", at="right", size=5)))
    order = [event.section.number for event in path(made).body if isinstance(event, Ring)]
    assert made.rows[-1].direction == "left" and order == [1, 1, 1, 2, 2, 2]
    text = hanger_step(made).text
    assert "Hanger 1, at its left edge, sits on stitches 1 and 2 of row 2" in text
    assert "Hanger 2, at its right edge, sits on stitches 5 and 6 of row 2" in text and "a closed ring of 5 mm" in text


def test_the_steps_name_passes_and_beads():
    assert hanger_step(top(4)) is None
    once = hanger_step(triangle(4, last=3, hanger=Hanger("loop", tuple("WBW"), passes=1))).text
    assert "Pick up the 3 beads of the loop: 1W, 1B, 1W" in once and "in all" not in once
    assert "4 times in all" in hanger_step(triangle(4, last=3, hanger=Hanger("guard", passes=4))).text


def test_the_beads_of_all_loops_are_counted():
    made = replace(top(6), hangers=(Hanger("loop", tuple("WWW"), at="left"), Hanger("loop", tuple("BB"), at="right")))
    assert tally(made).hanger == 5 and tally(made).beads == 13 + 5
    assert mass(made) == pytest.approx(mass(top(6)) * 18 / 13)
    picked = [event for event in path(made).body if isinstance(event, PickUp) and event.section.kind == "hanger"]
    assert sorted(len(event.places) for event in picked) == [2, 3]
