"""Threads and needle in the hole of a bead."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace
from tests.craft.pieces import LEGEND, triangle

from booklet.craft.beads import BeadKind
from booklet.craft.events import Place
from booklet.craft.hole import can_hold, comfortable, filled, most_passes
from booklet.craft.needle import path
from booklet.craft.passes import impossible, needle_for, threaded, tight
from booklet.craft.piece import Hanger
from booklet.craft.plan import Needle, ThreadKind, ThreadPlan

KINDS = {name: ThreadKind(name, diameter) for name, diameter in (("thin", 0.12), ("middling", 0.2), ("thick", 0.35), ("rope", 0.55))}
NEEDLES = (Needle("10", 0.46, 0.36, 0.36), Needle("12", 0.38, 0.21, 0.3), Needle("13", 0.33, 0.16, 0.21), Needle("15", 0.28, 0.13, 0.16))


def plan(body, fringe="middling"):
    return ThreadPlan(body, fringe, 1400.0, KINDS, NEEDLES)


def small(made, hole):
    """The piece with another hole in its beads W."""
    kind = BeadKind("small", "cylinder", 1.3, 1.1, hole)
    return replace(made, legend={**LEGEND, "W": replace(LEGEND["W"], kind=kind)})


FRINGED = triangle(5, last=3, strands=["WWW"] * 5, end="W")


@given(st.floats(0.3, 2), st.floats(0.05, 0.6), st.integers(1, 13))
def test_equal_threads_are_held_up_to_the_bound_and_no_further(hole, thread, count):
    assert can_hold(hole, [thread] * count) is (count <= most_passes(hole, thread) and count * thread**2 <= hole**2 + 1e-9)


@given(st.lists(st.floats(0.05, 0.4), min_size=1, max_size=20), st.floats(0.3, 2))
def test_fewer_or_thinner_threads_never_need_more_room(threads, hole):
    if can_hold(hole, threads):
        assert can_hold(hole, threads[1:]) and can_hold(hole, [min(threads)] * min(len(threads), 13))
    assert can_hold(hole, threads) is can_hold(hole, threads[::-1])


@given(st.floats(0.5, 1.5), st.floats(0.25, 0.5), st.lists(st.floats(0.1, 0.35), max_size=8))
def test_a_needle_with_room_never_meets_threads_that_have_none(hole, needle, threads):
    if comfortable(hole, needle, threads):
        assert filled(hole, needle, threads) <= 0.58 and needle <= hole and can_hold(hole, threads)


def test_every_bead_is_threaded_as_often_as_the_path_says():
    beads = {bead.place: bead for bead in threaded(FRINGED, plan("thin"))}
    assert {place: bead.passes for place, bead in beads.items()} == path(FRINGED).passes()
    assert beads[Place("row", 1, 2)].threads == (0.12, 0.12, 0.12, 0.2, 0.2)   # body first, then fringe
    assert beads[Place("strand", 3, 3)].threads == (0.2,)


def test_a_thread_of_unknown_diameter_says_nothing():
    assert threaded(FRINGED, plan("unheard of")) == () and needle_for(FRINGED, plan("unheard of")) is None
    assert threaded(triangle(4, last=3), plan("thin", "unheard of")) != ()   # there is no fringe


def test_a_rope_is_impossible_and_the_beads_are_named():
    (*rows, fringe) = impossible(threaded(FRINGED, plan("rope", "rope")))
    assert {bead.place.line for crowded in rows for bead in crowded.beads} == {1, 2, 3}
    assert {bead.place.part for bead in fringe.beads} == {"strand"} and (fringe.passes, fringe.fit) == (2, 1)


def test_the_needle_is_the_limit_before_the_thread_is():
    made = small(FRINGED, 0.6)
    assert list(impossible(threaded(made, plan("middling")))) == []
    ends, middle = tight(threaded(made, plan("middling")), plan("middling"))   # the ladder: 2 or 3 passes, and 2 of the fringe
    assert ([bead.place.index for bead in ends.beads], [bead.place.index for bead in middle.beads]) == ([0, 4], [1, 2, 3])
    assert (ends.passes, ends.fit, ends.needle.size, middle.passes, middle.fit) == (4, 3, "13", 5, 3)
    assert list(tight(threaded(made, plan("thin", "thin")), plan("thin", "thin"))) == []


def test_the_needle_goes_with_the_thread_and_is_thinner_where_a_hole_asks_for_it():
    assert needle_for(FRINGED, plan("middling")).size == needle_for(small(FRINGED, 1.0), plan("middling")).size == "12"
    assert needle_for(small(FRINGED, 0.65), plan("middling")).size == "13"
    assert needle_for(small(FRINGED, 0.7), plan("thin", "thin")).size == "15"
    assert needle_for(triangle(3, last=2, hanger=Hanger("loop", tuple("WWW"), passes=6)), plan("middling")).size == "13"


@pytest.mark.parametrize(("body", "size"), [("thick", "10"), ("middling", "13")])
def test_a_needle_takes_its_thread_even_where_none_goes_through(body, size):
    assert needle_for(small(FRINGED, 0.4), plan(body)).size == size
