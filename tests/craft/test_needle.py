"""The needle's path: order, directions and passes."""

import networkx
import pytest
from hypothesis import given
from tests.craft.pieces import piece, triangle, workable

from booklet.craft.events import PickUp, Place, Section
from booklet.craft.needle import path
from booklet.craft.piece import Hanger
from booklet.craft.stitches import faults
from booklet.craft.stitches.brick_path import ladder_ups


def picked(made, row):
    by_place = {Place("row", r.number, i, level): key for r in made.rows
                for i, s in enumerate(r.stitches) for level, key in enumerate(s.beads)}
    return "".join(by_place[place] for place in path(made).picked_up(Section("row", row)))


def test_an_odd_ladder_starts_upward_and_an_even_one_downward():
    assert ladder_ups(5) == [True, False, True, False, True]
    assert ladder_ups(4) == [False, True, False, True]


def test_pick_up_order_of_two_drop():
    made = piece([(2, ["WB", "WB", "WB", "WB"]), (3, ["WB", "RB", "R7"]), (4, ["WB", "RB"])])
    assert picked(made, 1) == "BW" + "WB" + "BW" + "WB"       # even: first downward, high bead first
    assert picked(made, 2) == "R7" + "BR" + "BW"              # right to left: first low first, then high first
    assert picked(made, 3) == "WB" + "BR"


def test_left_hand_runs_the_other_way():
    made = piece([(2, ["W", "B", "R"]), (3, ["W", "B"])], hand="left")
    assert [row.direction for row in made.rows] == ["left", "right"]
    assert (picked(made, 1), picked(made, 2)) == ("RBW", "WB")


def test_rows_below_the_base_start_where_the_last_upper_row_ended():
    made = piece([(3, ["WB", "RB"]), (2, ["WW", "WW", "WW"]), (3, ["BB", "BB"])], base=1)
    assert [(row.number, row.level, row.direction) for row in made.rows] == [(1, 0, "right"), (2, 1, "left"), (3, -1, "right")]
    assert picked(made, 3) == "BW" + "RB"   # turned top to bottom: the upper bead is the low one


def test_passes_of_a_ladder_and_a_strand():
    passes = path(triangle(4, last=4, strands=["WWW"] * 4, end="BBB")).passes()
    ladder = path(triangle(4, last=4)).passes()
    assert [ladder[Place("row", 1, i)] for i in range(4)] == [2, 3, 3, 2]
    assert [passes[Place("strand", 1, i)] for i in range(6)] == [2, 2, 2, 1, 1, 1]


def test_a_row_of_one_hangs_on_the_single_bridge():
    assert path(triangle(3)).passes()[Place("row", 3, 0)] == 2


def test_error_a_piece_with_faults_has_no_path():
    with pytest.raises(ValueError, match="cannot be worked"):
        path(piece([(0, ["W"] * 3), (0, ["W"] * 3)]))


@pytest.mark.parametrize(("rows", "what"), [
    ([(0, ["W"] * 3), (0, ["W"] * 3)], "row 2 sits straight on the stitches of row 1"),
    ([(0, ["W"] * 3), (5, ["W"] * 3)], "row 2 has nothing to hang on: no stitch of it stands over a thread bridge of row 1"),
    ([(0, ["W", "W", "", "W", "W"])], "row 1, the base row, has a gap after its stitch 2"),
    ([(0, ["W"] * 6), (1, ["W", "W", "", "W", "W"]), (2, ["W"] * 4)],
     "row 3 joins 2b and 2a, and nothing carries it over the gap between them"),
    ([(0, ["W"]), (-1, ["W"] * 2)], "row 2 has nothing to hang on: row 1 has one stitch and no thread bridge"),
])
def test_error_faults_say_why(rows, what):
    assert faults(piece(rows))[0].what == what


@given(workable())
def test_the_path_is_one_walk_that_reaches_every_bead(made):
    needle = path(made)
    for thread, parts in ((needle.body, ("row", "hanger")), (needle.fringe, ("strand",))):
        visited = [place for event in thread for place in getattr(event, "places", ())]
        walk = networkx.Graph()
        walk.add_nodes_from(visited)
        walk.add_edges_from(zip(visited, visited[1:]))
        assert not visited or networkx.is_connected(walk)
        taken = [place for event in thread if isinstance(event, PickUp) for place in event.places]
        assert len(taken) == len(set(taken))
        seen = set()
        for event in thread:   # nothing is passed through before it has been picked up
            if isinstance(event, PickUp):
                seen |= set(event.places)
            else:
                assert {p for p in getattr(event, "places", ()) if p.part in parts} <= seen
    reached = set(needle.passes())
    assert len(reached) == sum(len(s.beads) for r in made.rows for s in r.stitches) + sum(
        len(s.all) for s in made.strands) + sum(len(h.beads) for h in made.hangers)


@given(workable(fringe=False))
def test_every_stitch_of_a_brick_row_is_passed_twice_or_more(made):
    passes = path(made).passes()
    assert all(count >= 2 for place, count in passes.items() if place.part == "row" and place.line > 1)


def test_hanger_goes_round_three_times():
    passes = path(triangle(5, last=3, hanger=Hanger("loop", tuple("WWW")))).passes()
    assert [passes[Place("hanger", 1, i)] for i in range(3)] == [3, 3, 3]
