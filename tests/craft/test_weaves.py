"""Peyote, square stitch and loom work: the path of the needle, words that rebuild their charts, counts, and faults."""

from collections import Counter

import networkx
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.craft.weaves import any_weave, loom, peyote, square, woven

from booklet.craft.events import Anchor, Guard, Pass, PickUp, Place, Ring, Through, Under
from booklet.craft.layout import layout
from booklet.craft.needle import path
from booklet.craft.piece import RIGHT, Hanger
from booklet.craft.plan import TAIL, WARP_END, WEAVE_IN
from booklet.craft.replay import CannotRead, differences, replay
from booklet.craft.scenes import Scenes
from booklet.craft.size import size
from booklet.craft.steps import STEP_IDS, steps
from booklet.craft.stitches import faults, stitch_of
from booklet.craft.stitches.loom import warps
from booklet.craft.summary import summary
from booklet.craft.tally import tally
from booklet.craft.thread import ThreadPlan, thread_use
from booklet.craft.words import row_words, strand_words

EVEN = woven("peyote", [(1, ["W", "B"]), (0, ["R", "7"]), (1, ["B", "W"]), (0, ["W", "W"])])
ODD = woven("peyote", [(0, ["W", "B", "R"]), (1, ["7", "W"]), (0, ["B", "B", "R"]), (1, ["W", "R"]), (0, ["7", "7", "B"])])


def lines(made):
    return [w.line for w in row_words(made)], [w.line for w in strand_words(made)]


@settings(max_examples=400, deadline=None)
@given(any_weave())
def test_words_rebuild_every_legal_chart(made):
    assert faults(made) == ()
    assert differences(made, *lines(made)) == ()


@settings(deadline=None)
@given(any_weave(fringe=False), st.data())
def test_a_changed_bead_is_noticed(made, data):
    row = data.draw(st.sampled_from(made.rows))
    index = data.draw(st.integers(0, len(row.stitches) - 1))
    beads = row.stitches[index].beads
    other = woven(made.stitch, [(r.first, ["".join(s.beads) if (r, i) != (row, index) else ("B" if beads[0] == "W" else "W") + "".join(beads[1:])
                                           for i, s in enumerate(r.stitches)]) for r in made.rows], made.hand)
    assert differences(other, *lines(made)) != ()


@settings(max_examples=300, deadline=None)
@given(any_weave())
def test_the_path_is_one_walk_that_reaches_every_bead(made):
    needle = path(made)
    for thread, parts in ((needle.body, ("row", "hanger")), (needle.fringe, ("strand",))):
        visited = [place for event in thread for place in getattr(event, "places", ())]
        walk = networkx.Graph(zip(visited, visited[1:]))
        walk.add_nodes_from(visited)
        assert not visited or networkx.is_connected(walk)
        taken = [place for event in thread if isinstance(event, PickUp) for place in event.places]
        assert len(taken) == len(set(taken))
        seen = set()
        for event in thread:   # nothing is passed through before it has been picked up
            if isinstance(event, PickUp):
                seen |= set(event.places)
            else:
                assert {p for p in getattr(event, "places", ()) if p.part in parts} <= seen
    beads = sum(len(s.beads) for r in made.rows for s in r.stitches) + sum(len(s.all) for s in made.strands) + sum(len(h.beads) for h in made.hangers)
    assert len(needle.passes()) == beads


@settings(max_examples=300, deadline=None)
@given(any_weave())
def test_the_needle_comes_out_of_each_bead_beside_the_next(made):
    """A lying bead is entered at one end of its hole and left at the other; from there the next one begins near by.

    Further than one bead up or down or a column to the side the thread would show. Where a loom row starts further in or out
    the thread runs under the warps, and a guard or loop is a way of its own.
    """
    places, needle = layout(made), path(made)
    here = None
    for event in needle.events:
        if isinstance(event, (Anchor, Guard, Ring, Through)) or event.section.kind == "hanger" and isinstance(event, PickUp):
            here = None
        for place in getattr(event, "places", ()):
            if place.part != "row":   # a strand hangs under the middle of a bead: the needle comes back to where it went in
                here = None
                continue
            spot = places.spots[place]
            right = event.up if isinstance(event, Pass) else made.rows[place.line - 1].direction == RIGHT
            half = made.legend[spot.key].kind.length / 2 * (1 if right else -1)
            if here is not None and not (made.stitch == "loom" and isinstance(event, PickUp)):
                assert abs(spot.x - half - here[0]) < 1e-9 and abs(spot.y - here[1]) < 1.5 * places.pitch + 1e-9
            here = spot.x + half, spot.y


@settings(deadline=None)
@given(any_weave())
def test_tally_is_a_plain_count_of_the_chart(made):
    plain = Counter("".join("".join(s.beads) for r in made.rows for s in r.stitches)
                    + "".join("".join(s.all) for s in made.strands) + "".join("".join(h.beads) for h in made.hangers))
    assert {line.key: line.piece for line in tally(made).lines} == {key: plain[key] for key in made.legend}


@settings(deadline=None)
@given(any_weave())
def test_every_step_is_known_and_says_where_the_thread_exits(made):
    told = steps(made, ThreadPlan(), thread_use(made, ThreadPlan()))
    assert [s.id for s in told] == [i for i in STEP_IDS if i in {s.id for s in told}]
    assert all("exits" in step.text for step in told)


@settings(deadline=None)
@given(square(fringe=False))
def test_every_bead_of_square_stitch_is_passed_twice_or_more(made):
    assert all(count >= 2 for place, count in path(made).passes().items() if place.part == "row")


@settings(deadline=None)
@given(loom(fringe=False))
def test_loom_beads_are_held_from_below_and_above_the_warps(made):
    bare = woven("loom", [(r.first, ["".join(s.beads) for s in r.stitches]) for r in made.rows], made.hand)
    assert all(count >= 2 for count in path(bare).passes().values())
    assert {row.direction for row in made.rows} == {made.hand}


@settings(deadline=None)
@given(loom())
def test_warps_are_one_more_than_the_beads_across(made):
    across = len({stitch.at for row in made.rows for stitch in row.stitches})
    assert warps(made) == across + 1
    use = {use.part: use for use in thread_use(made, ThreadPlan())}["warps"]
    assert use.lengths == warps(made) and use.length == pytest.approx(warps(made) * (size(made).body + 2 * WARP_END))


@settings(deadline=None)
@given(peyote(fringe=False))
def test_peyote_is_worked_from_row_to_row_without_a_jump(made):
    """Every stitch from row 3 on is picked up and then held by a stitch of the row before or, at an edge turn, by the one below it."""
    bare = woven("peyote", [(r.first, ["".join(s.beads) for s in r.stitches]) for r in made.rows], made.hand)
    events = path(bare).body
    held = list(zip(events, events[1:]))
    for taken, then in held:
        if isinstance(taken, PickUp) and taken.section.number > 2:
            assert isinstance(then, Pass) and then.places[0].line in (taken.section.number - 1, taken.section.number - 2)


def test_words_of_even_peyote():
    assert lines(EVEN)[0] == [
        "Rows 1 and 2 → 4 stitches: string 1R, 1W, 17, 1B",
        "Row 3 ← 2 stitches: 1W, 1B",
        "Row 4 → 2 stitches: 2W",
    ]


def test_words_of_odd_peyote_name_the_edge_turn():
    assert lines(ODD)[0] == [
        "Rows 1 and 2 → 5 stitches: string 1W, 17, 1B, 1W, 1R",
        "Row 3 ← 3 stitches: 1R, 2B; edge turn",
        "Row 4 → 2 stitches: 1W, 1R",
        "Row 5 ← 3 stitches: 1B, 27; edge turn",
    ]


def test_sets_of_two_lie_side_by_side_and_are_named_as_picked_up():
    made = woven("peyote", [(1, ["WB", "R7"]), (0, ["BB", "WW"]), (1, ["WB", "WR"]), (0, ["R7", "7R"])])
    assert lines(made)[0] == [
        "Rows 1 and 2 → 4 sets: string (B B), (W B), (W W), (R 7)",
        "Row 3 ← 2 sets: (R W), (B W)",
        "Row 4 → 2 sets: (R 7), (7 R)",
    ]
    assert size(made).width == pytest.approx(8 * 1.3) and size(made).body == pytest.approx(2.5 * 1.6)


def test_even_peyote_is_begun_where_row_2_stands_at_the_edge_whichever_hand_works_it():
    other = [(0, ["W", "B"]), (1, ["R", "7"]), (0, ["B", "W"]), (1, ["W", "W"])]
    assert [row.direction for row in EVEN.rows] == ["right", "right", "left", "right"]
    assert [row.direction for row in woven("peyote", other).rows] == ["left", "left", "right", "left"]
    assert [row.direction for row in woven("peyote", [(r.first, [s.beads for s in r.stitches]) for r in ODD.rows], "left").rows[:3]] == [
        "left", "left", "right"]


def test_an_edge_turn_goes_back_through_the_edge_stitch_below():
    events = [e for e in path(ODD).body if e.section.number == 3][-2:]
    assert events[0].places == (Place("row", 3, 0),)
    assert events[1].places == (Place("row", 1, 0),) and events[1].up   # towards the right, into the work
    assert path(ODD).passes()[Place("row", 1, 0)] == 2


def test_words_of_square_stitch_say_how_far_in_and_out():
    made = woven("square", [(0, list("WWBBW")), (0, list("BBBWW")), (2, list("WWW")), (2, list("BBB")), (2, list("WWWW")), (4, list("RRR"))])
    assert faults(made) == ()
    assert lines(made)[0] == [
        "Row 1 → 5 stitches: string 2W, 2B, 1W",
        "Row 2 ← 5 stitches: 2W, 3B",
        "Row 3 → 3 stitches: start 1 in; 3W; end 1 in",
        "Row 4 ← 3 stitches: 3B",
        "Row 5 → 4 stitches: 4W; end 1 out",
        "Row 6 ← 3 stitches: 3R; end 1 in",
    ]


def test_words_of_loom_work_all_run_one_way():
    made = woven("loom", [(2, list("WB")), (0, list("WWBB")), (2, list("RB"))])
    assert lines(made)[0] == [
        "Row 1 → 2 beads: 1W, 1B",
        "Row 2 → 4 beads: start 1 out; 2W, 2B; end 1 out",
        "Row 3 → 2 beads: start 1 in; 1R, 1B; end 1 in",
    ]


def test_lying_beads_count_their_length_across_and_their_diameter_upward():
    made = woven("square", [(0, ["W"] * 6), (0, ["W"] * 6)])
    assert (size(made).width, size(made).body) == (pytest.approx(6 * 1.3), pytest.approx(2 * 1.6))
    assert (size(EVEN).width, size(EVEN).body) == (pytest.approx(4 * 1.3), pytest.approx(2.5 * 1.6))


def test_thread_of_square_stitch_goes_three_times_a_bead_and_twice_up_and_down():
    """Arithmetic: a bead of row 2 is passed twice and the one below it once more, each as long as a bead, with the way down and up again."""
    made = woven("square", [(0, ["W"] * 6), (0, ["W"] * 6)])
    (use,) = thread_use(made, ThreadPlan())
    assert use.path == pytest.approx(6 * 1.3 + 6 * (3 * 1.3 + 2 * 1.6) + 1.6)
    assert use.length == pytest.approx(use.path + TAIL + WEAVE_IN)


def test_strands_hang_from_row_1_and_the_thread_goes_on_through_row_2():
    made = woven("peyote", [(r.first, [s.beads for s in r.stitches]) for r in EVEN.rows], strands=["WW", "BB"])
    fringe = [e for e in path(made).fringe if isinstance(e, Pass)]
    assert [e.places for e in fringe if e.places[0].part == "row"] == [
        (Place("row", 1, 0),), (Place("row", 1, 0),), (Place("row", 2, 1), Place("row", 1, 1)), (Place("row", 1, 1),)]


@pytest.mark.parametrize("stitch", ["peyote", "square", "loom"])
def test_a_hanger_goes_round_three_times(stitch):
    plain = {"peyote": [(1, ["W"] * 3), (0, ["W"] * 3)] * 2}.get(stitch, [(0, ["W"] * 5)] * 4)
    passes = path(woven(stitch, plain, hangers=[Hanger("loop", tuple("WWW"))])).passes()
    assert [passes[Place("hanger", 1, i)] for i in range(3)] == [3, 3, 3]


def test_the_summary_names_the_stitch_and_the_warps():
    made = woven("loom", [(0, ["W"] * 4)] * 3)
    found = summary("small", "1.0", "single", made, tally(made), thread_use(made, ThreadPlan()))
    assert found["body"]["stitch"] == "loom" and found["thread_mm"]["warps"] == round(5 * (3 * 1.6 + 2 * WARP_END))
    assert found["body"]["rows"][1] == {"row": 2, "direction": "right", "stitches": 4, "pickup": "WWWW"}
    assert summary("s", "1", "single", ODD, tally(ODD), ())["body"]["rows"][0]["pickup"] == "WBR"


@pytest.mark.parametrize(("stitch", "rows", "what"), [
    ("peyote", [(0, "WW"), (1, "WW"), (0, "WW")], "peyote has only 3 of the 4 rows that it takes"),
    ("peyote", [(0, "WW"), (0, "WW")] * 2, "row 2 stands straight above row 1"),
    ("peyote", [(0, "WWW"), (1, "W")] * 2, "row 2 does not fill the gaps of row 1"),
    ("peyote", [(1, "WW"), (0, "WWW")] * 2, "row 2 is longer than row 1, so the work could not be turned after the first line"),
    ("peyote", [(0, "WWW"), (1, "WW"), (2, "WW"), (1, "WW")], "row 3 does not stand on the columns of row 1"),
    ("square", [(0, "WW")], "row 1 is only strung, and there is no row that holds it"),
    ("square", [(0, "WW"), (1, "WW")], "row 2 stands between the stitches of row 1"),
    ("square", [(0, "WW"), (0, "WWW")], "row 2 starts 1 stitch further out than row 1 ends"),
    ("square", [(0, "WWW"), (0, "WW")], "row 2 does not cover row 1, which is only strung"),
    ("square", [(0, "WW"), (0, "WW"), (0, "WWWW")], "no row holds the 2 stitches that row 3 adds at its end"),
    ("square", [(0, "WW"), (4, "WW")], "row 2 stands beside row 1 and not on it"),
    ("loom", [(0, "WW"), (1, "WW")], "row 2 stands between the beads of row 1"),
    ("loom", [(0, "WW"), (4, "WW")], "row 2 stands beside row 1 and not on it"),
])
def test_error_faults_say_why(stitch, rows, what):
    made = woven(stitch, rows)
    assert [fault.what for fault in faults(made)][0] == what and all(fault.cure for fault in faults(made))
    with pytest.raises(ValueError, match="cannot be worked"):
        path(made)


@pytest.mark.parametrize(("stitch", "rows"), [
    ("peyote", []),
    ("peyote", ["Row 1 → 4 stitches: 4W"]),
    ("peyote", ["Rows 1 and 2 → 5 stitches: string 5W", "Row 3 ← 3 stitches: 3W"]),
    ("peyote", ["Rows 1 and 2 → 4 stitches: string 4W", "Row 3 ← 2 stitches: 2W; edge turn"]),
    ("peyote", ["Rows 1 and 2 → 4 stitches: string 4W", "Row 3 → 2 stitches: 2W"]),
    ("peyote", ["Rows 1 and 2 → 4 stitches: string 4W", "Row 3 ← 3 stitches: 3W"]),
    ("square", ["Row 1 → 4 stitches: string 4W", "Row 2 → 4 stitches: 4W"]),
    ("square", ["Row 1 → 4 stitches: string 4W", "Row 2 ← 3 stitches: 3W"]),
    ("loom", ["Row 1 → 4 beads: 4W", "Row 2 ← 4 beads: 4W"]),
    ("loom", ["Row 1 → 4 beads: 3W"]),
])
def test_error_a_line_that_makes_no_sense(stitch, rows):
    with pytest.raises(CannotRead):
        replay(rows, [], stitch)


def test_no_thread_bridge_is_needed():
    assert not [e for made in (EVEN, ODD) for e in path(made).events if isinstance(e, Under)] and stitch_of(ODD).INTERLOCKED


@settings(max_examples=100, deadline=None)
@given(any_weave(), st.floats(320, 800))
def test_no_thread_ends_where_beads_are_only_strung(made, length):
    plan = ThreadPlan(length=length)
    sewn = {event.section for event in path(made).body if isinstance(event, Pass)}
    uses = thread_use(made, plan)
    assert set(uses[0].after) <= sewn
    assert (Scenes(made).of("thread-change", uses) is None) == (not uses[0].after)
