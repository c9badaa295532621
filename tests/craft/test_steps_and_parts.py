"""Rows that start and end far in or out, and rows in parts: numbers, path, words, steps."""

from math import dist

import networkx
import pytest
from hypothesis import given, settings
from tests.craft.pieces import piece, stepped, workable

from booklet.craft.events import Anchor, Pass, PickUp, Section, Under, WeaveIn
from booklet.craft.hanger import top_row
from booklet.craft.layout import layout
from booklet.craft.needle import path
from booklet.craft.piece import Hanger
from booklet.craft.replay import CannotRead, differences, replay
from booklet.craft.steps import STEP_IDS, steps
from booklet.craft.stitches import faults
from booklet.craft.summary import summary
from booklet.craft.tally import tally
from booklet.craft.thread import ThreadPlan, thread_use
from booklet.craft.words import row_words

LENGTH = 1.3   # mm, of the one kind of bead in these pieces
EARS = [(0, list("WWWWWWWW")), (1, ["B", "R", "", "", "", "R", "B"]), (2, ["7", "", "", "", "", "7"])]


def lines(made):
    return [w.line for w in row_words(made)]


def told(made):
    return {step.id: step.text for step in steps(made, ThreadPlan(), thread_use(made, ThreadPlan()))}


def events_of(made, number, part=""):
    """What the needle does in a row, shortly: pick up, through a stitch (counted from the left of its chart row), under a bridge."""
    said = []
    for event in path(made).body:
        if event.section == Section("row", number, part):
            if isinstance(event, Under):
                said.append(f"under {event.row}:{event.left}{' foot' if event.foot else ''}")
            elif isinstance(event, PickUp):
                said.append("take " + " ".join(f"{place.index}.{place.level}" for place in event.places))
            elif isinstance(event, Pass):
                said.append(f"{'up' if event.up else 'down'} {event.places[0].line}:{event.places[0].index}")
    return said


def test_a_row_that_starts_an_even_way_in():
    made = piece([(0, list("WWWWWWW")), (1, list("BRR7"))])
    assert lines(made)[1] == "Row 2 ← 4 stitches: travel 2 stitches in; start in 17, 1R; then 1R, 1B; end in"
    assert events_of(made, 2) == ["down 1:5", "up 1:4", "take 3.0 2.0", "under 1:2", "up 2:2", "down 2:3", "up 2:2",
                                  "take 1.0", "under 1:1", "up 2:1", "take 0.0", "under 1:0", "up 2:0"]


def test_a_row_that_starts_an_odd_way_in_starts_outward_from_the_next_stitch():
    made = piece([(0, list("WWWWWW")), (1, list("BRR7"))])
    assert lines(made)[1] == "Row 2 ← 4 stitches: travel 2 stitches in; start out 17, 1R; then 1R, 1B; end in"
    assert events_of(made, 2)[:4] == ["down 1:4", "up 1:3", "take 3.0 2.0", "under 1:2"]
    assert "row 2: 2 stitches" in told(made)["row-travel"]


def test_a_row_that_ends_early_leaves_bridges_free_and_the_next_row_starts_from_there():
    made = piece([(0, list("WWWWWWW")), (3, list("BR7")), (6, list("B"))])
    assert lines(made)[1:] == ["Row 2 ← 3 stitches: travel 2 stitches in; start in 17, 1R; then 1B; end 1 bridge short",
                               "Row 3 → 1 stitch: travel 2 stitches in; one stitch out 1B"]
    assert events_of(made, 3) == ["down 2:1", "up 2:2", "take 0.0", "under 2:1", "up 3:0"]
    assert "(row 2: 1 bridge). What follows starts from there" in told(made)["row-end-short"]


def test_ladder_stitches_at_both_ends_are_named_in_the_order_of_picking_up():
    made = piece([(4, ["WB", "WB", "WB"]), (-1, ["7W", "WB", "7R", "BR", "WR", "BB", "WR", "7B"])])
    assert lines(made)[1] == ("Row 2 ← 8 sets: start out (B B), (R W); ladder out (W R), (B 7); then (R B), (R 7); end out; "
                              "ladder out (B W), (7 W)")


def test_a_ladder_at_the_start_goes_out_and_back_and_every_stitch_is_passed_twice():
    made = piece([(0, list("WWW")), (1, list("BRR7"))])
    assert lines(made)[1] == "Row 2 ← 4 stitches: start out 2R; ladder out 17; then 1B; end in"
    assert events_of(made, 2) == ["take 2.0 1.0", "under 1:1", "up 2:1", "down 2:2", "take 3.0", "down 2:2", "up 2:3", "down 2:2", "up 2:1",
                                  "take 0.0", "under 1:0", "up 2:0"]


@pytest.mark.parametrize(("at", "row", "end"), [
    (-3, "BR7R", ["take 0.0", "up 2:1", "down 2:0", "under 2:0 foot", "up 2:0"]),   # one: it would end at the foot
    (-5, "BR7RB", ["take 1.0", "up 2:2", "down 2:1", "take 0.0", "down 2:1", "up 2:0"])])
def test_a_ladder_at_the_end_leaves_the_thread_at_the_top(at, row, end):
    made = piece([(0, list("WWW")), (at, list(row))])
    assert events_of(made, 2)[-len(end):] == end
    assert ("comes out at the foot" in told(made)["row-end-ladder"]) == (len(row) == 4)


@pytest.mark.parametrize(("hand", "arrows", "stitch"), [("right", "←→", 3), ("left", "→←", 6)])
def test_two_ears_are_worked_one_after_the_other(hand, arrows, stitch):
    made, (there, back) = piece(EARS, hand=hand), arrows
    assert not faults(made)
    assert lines(made)[1:] == [
        f"Row 2a {there} 2 stitches: start in 1B, 1R; end 5 bridges short", f"Row 3a {back} 1 stitch: one stitch 17",
        f"Row 2b {there} 2 stitches: travel to row 1, stitch {stitch} from the left; start in 1R, 1B; end in",
        f"Row 3b {back} 1 stitch: one stitch 17"]


def test_the_way_to_the_second_ear_leads_through_stitches():
    # From the tip down the outer side of the first ear, then along row 1, down one stitch and up the next.
    assert events_of(piece(EARS), 2, "b")[:5] == ["down 2:2", "down 1:5", "up 1:4", "down 1:3", "up 1:2"]


def test_a_part_that_splits_again():
    made = piece([(0, ["W"] * 11), (1, ["B"] * 6 + ["", "B", "B", "B"]), (2, ["R", "R", "", "R", "R", "", "", "R", "R"]),
                  (3, ["7", "", "", "", "", "", "", "7"])])
    assert [row.name for row in made.rows] == ["1", "2a", "3a", "4a", "2b", "3b", "4b", "3c"]
    assert lines(made)[-1] == "Row 3c → 2 stitches: travel to row 2b, stitch 4 from the left; start in 2R; end in"
    assert events_of(made, 3, "c")[:3] == ["down 3:1", "down 2:2", "up 2:3"]


def test_a_row_of_one_part_has_no_letter():
    made = piece([*EARS, (3, ["", "", "", "", "", "", "W"])][:2] + [(2, ["7"])])
    assert [row.name for row in made.rows] == ["1", "2a", "2b", "3"]


def test_a_far_part_begins_with_a_new_thread():
    far = [(0, list("WWWWWWWWWW")), *[(1 + k % 2, ["B", "R", "", "", "", "", "", "R", "B"]) for k in range(8)]]
    made = piece(far)
    line = next(line for line in lines(made) if line.startswith("Row 2b"))
    assert line == "Row 2b ← 2 stitches: new thread in row 1, stitch 3 from the left; start in 1R, 1B; end in"
    thread = [event for event in path(made).body if isinstance(event, (Anchor, WeaveIn))]
    assert thread == [Anchor(Section("row", 1)), WeaveIn(Section("row", 9, "a")), Anchor(Section("row", 2, "b")), WeaveIn(Section("row", 9, "b"))]
    (use,) = thread_use(made, ThreadPlan())
    begun = Section("row", 2, "b")
    assert (use.lengths, use.changes, use.after, use.begun) == (2, (begun,), (Section("row", 9, "a"),), (begun,))
    assert "thread-change" not in told(made)   # the part says it
    assert "weave in the thread. Anchor a new one in row 1 beside stitch 3" in told(made)["part-start"]


def test_parts_below_the_base_row():
    made = piece([(1, ["B", "B", "", "B", "B"]), (0, list("WWWWWW")), (1, list("RRRRR")), (2, list("RRRR"))], 1)
    assert lines(made)[3:] == ["Row 4a ← 2 stitches below: start in 2B; end 3 bridges short",
                               "Row 4b ← 2 stitches below: travel to row 1, stitch 3 from the left; start in 2B; end in"]
    assert events_of(made, 4, "b")[:4] == ["under 4:2", "down 4:2", "up 1:3", "down 1:2"]
    assert "from stitch to touching stitch" in told(made)["lower-rows"]


def test_the_first_row_below_the_base_may_start_further_in():
    made = piece([(3, list("B7")), (0, list("WWWWWWW")), (1, list("RRRRRR")), (2, list("RRRRR"))], 1)
    assert lines(made)[3] == "Row 4 ← 2 stitches below: travel 4 stitches in; start out 17, 1B; end 1 bridge short"
    # Row 1 is turned over: its stitches are passed upward where those of another row would be passed downward.
    assert events_of(made, 4)[:6] == ["up 1:5", "down 1:4", "up 1:3", "down 1:2", "take 1.0 0.0", "under 1:1 foot"]


def test_rows_of_parts_in_the_object_for_scripts():
    made = piece(EARS)
    rows = summary("ears", "1.0", "pair", made, tally(made, 2), thread_use(made, ThreadPlan()))["body"]["rows"]
    assert [(row["row"], row.get("part")) for row in rows] == [(1, None), (2, "a"), (3, "a"), (2, "b"), (3, "b")]
    assert list(rows[1]) == ["row", "part", "direction", "stitches", "pickup"] and "part" not in rows[0]
    assert rows[3] == {"row": 2, "part": "b", "direction": "left", "stitches": 2, "pickup": "RB"}


def test_the_hanger_sits_between_the_ears_or_on_a_part_in_the_middle():
    assert top_row(piece(EARS, hanger=Hanger("guard"))).name == "1"
    crown = [(0, list("WWWWWWWW")), (1, ["B", "", "", "B", "", "", "B"])]
    assert top_row(piece(crown)).name == "2b"


@pytest.mark.parametrize(("row", "wrong"), [
    ("Row 2 ← 4 stitches: travel 1 stitches in; start in 2W; then 2W; end 1 bridge short", "leaves the needle at the wrong end"),
    ("Row 2 ← 2 stitches: travel 8 stitches in; start in 2W; end in", "has no such stitch"),
    ("Row 2 ← 2 stitches: start in 2W; end 2 bridges short", "does not end where it should"),
    ("Row 2 ← 4 stitches: start in 2W; ladder out 1W; then 1W; end 2 bridges short", "stand where there are thread bridges"),
    ("Row 2 ← 3 stitches: start in 2W; end 3 bridges short; ladder out 1W", "stand where there are thread bridges"),
    ("Row 2b ← 2 stitches: travel to row 4, stitch 1 from the left; start in 2W; end in", "begins on a row that is not there"),
    ("Row 2b ← 2 stitches: new thread in row 1, stitch 9 from the left; start in 2W; end in", "has no such stitch"),
    ("Row 2 → 2 stitches: start in 2W; end 3 bridges short", "runs the same way as the row under it"),
    ("Row 2 ← 1 stitch: one stitch 1W", "does not end where it should"),
    ("Row 2 ← 2 stitches: start in 2W", "cannot hang this row"),
])
def test_error_words_of_steps_and_parts_that_make_no_sense(row, wrong):
    with pytest.raises(CannotRead, match=wrong):
        replay(["Row 1 → 6 stitches: ladder 2W; then 4W", row], [])


@settings(max_examples=200, deadline=None)
@given(stepped())
def test_words_rebuild_every_legal_chart_with_steps_and_parts(made):
    assert faults(made) == ()
    assert differences(made, lines(made), []) == ()


@settings(deadline=None)
@given(stepped(), stepped())
def test_a_changed_chart_is_noticed(made, other):
    if made.rows != other.rows:
        assert differences(other, lines(made), []) != ()


@settings(deadline=None)
@given(stepped())
def test_every_thread_is_one_walk_and_together_they_reach_every_bead(made):
    reached = set()
    for thread in threads(made):
        visited = [place for event in thread for place in getattr(event, "places", ())]
        walk = networkx.Graph(zip(visited, visited[1:]))
        assert len(visited) == 1 or networkx.is_connected(walk)
        for event in thread:   # nothing is passed through before it has been picked up
            if isinstance(event, PickUp):
                assert not reached & set(event.places)
                reached |= set(event.places)
            assert set(getattr(event, "places", ())) <= reached
    assert len(reached) == sum(len(s.beads) for r in made.rows for s in r.stitches) + sum(len(hanger.beads) for hanger in made.hangers)


@settings(deadline=None)
@given(stepped())
def test_every_step_is_known_and_says_where_the_thread_exits(made):
    said = told(made)
    assert list(said) == [name for name in STEP_IDS if name in said]
    assert all("exits" in text for text in said.values())


@settings(deadline=None)
@given(stepped())
def test_every_bead_of_a_row_is_passed_twice_or_more(made):
    assert all(count >= 2 for place, count in path(made).passes().items() if place.part == "row" and place.line > 1)


@settings(deadline=None)
@given(stepped() | workable(fringe=False))
def test_thread_between_two_passes_runs_only_between_ends_of_stitches_that_touch(made):
    """So none shows on the face. Only from a row of one stitch may it run down the outside of that stitch."""
    places = layout(made)
    lone = {row.number for row in made.rows if len(row.stitches) == 1}
    for thread in threads(made):
        for one, two in zip(thread, thread[1:]):
            # Of a pick-up of single beads the direction cannot be seen.
            told = isinstance(one, Pass) or isinstance(one, PickUp) and made.drop > 1
            if told and isinstance(two, Pass) and two.section.kind != "hanger":
                around = LENGTH * made.drop if one.places[-1].line in lone else 0.0
                assert dist(end(made, places, one), end(made, places, two, first=True)) <= places.pitch + around + 1e-6


def threads(made):
    """The body thread by thread: a new one begins at each anchor."""
    found = []
    for event in path(made).body:
        if isinstance(event, Anchor):
            found.append([])
        found[-1].append(event)
    return found


def end(made, places, event, first=False):
    """Where the needle comes out of the last bead of an event, or goes into its first, mm."""
    place = event.places[0 if first else -1]
    if isinstance(event, Pass):
        below = bool(made.lower) and place.line >= made.lower[0].number
        up = event.up != below
    else:
        up = places.spots[place].y > places.spots[event.places[-2]].y
    spot = places.spots[place]
    return spot.x, spot.y + (LENGTH / 2 if up != first else -LENGTH / 2)
