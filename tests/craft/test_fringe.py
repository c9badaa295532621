"""Fringe: where it hangs, its kinds, the needle's way through it, and what is read from that."""

from collections import Counter

import networkx
import pytest
from hypothesis import given, settings
from msgspec.structs import replace
from tests.craft.fringes import fringed
from tests.craft.pieces import CYLINDER, LEGEND, piece, triangle

from booklet.craft.beads import Bead, BeadKind
from booklet.craft.events import Anchor, Pass, PickUp, Place, Through, Under, WeaveIn
from booklet.craft.layout import layout
from booklet.craft.needle import path
from booklet.craft.places import places, strands_fit
from booklet.craft.plan import ThreadPlan
from booklet.craft.replay import CannotRead, differences, replay
from booklet.craft.size import hanging_length, mass, size
from booklet.craft.steps import STEP_IDS, steps
from booklet.craft.strand import LOOP, TWIST, Charm, Strand, Twig, laid
from booklet.craft.summary import summary
from booklet.craft.tally import tally
from booklet.craft.thread import thread_use
from booklet.craft.words import row_words, strand_words


def diamond(middle, hang="edge", drop=1, hand="right", strands=()):
    rows = [*((middle - n, ["W" * drop] * n) for n in range(1, middle)), *((middle - n, ["W" * drop] * n) for n in range(middle, 0, -1))]
    return replace(piece(rows, base=middle - 1, hand=hand), hang=hang, strands=strands)


def plain(count, step=1):
    return tuple(Strand(number, tuple("WWW"), ("B",)) for number in range(1, count + 1, step))


def lines(made):
    return [words.line for words in row_words(made)], [words.line for words in strand_words(made)]


def fringe_of(made):
    """The path of the fringe, one short word an event: d3.1 is down through stitch 1 of row 3, as it hangs."""
    told = []
    for event in path(made).fringe:
        if isinstance(event, Under):
            told.append(f"u{event.row}.{event.left + 1}")
        elif isinstance(event, Pass) and event.places[0].part == "row":
            first = event.places[0]
            down = event.up == (made.holds(first.line, first.index).level < 0)
            told.append(f"{'d' if down else 'u'}{first.line}.{first.index + 1}")
        elif isinstance(event, PickUp):
            told.append("+" + "".join(made.strands[[s.number for s in made.strands].index(place.line)].all[place.index] for place in event.places))
        elif isinstance(event, Pass):
            told.append(f"back{len(event.places)}")
        elif isinstance(event, Through):
            told.append(event.name)
    return " ".join(told)


@pytest.mark.parametrize("middle", [2, 5, 7])
@pytest.mark.parametrize("drop", [1, 2])
def test_the_lower_edge_of_a_diamond_has_two_places_a_row_and_its_tip(middle, drop):
    found = places(diamond(middle, drop=drop))
    assert len(found) == 2 * middle - 1
    assert [place.at for place in found] == list(range(2 * middle - 1))
    assert [place.row.level for place in found] == [*range(0, -middle, -1), *range(2 - middle, 1)]


def test_places_of_every_hang():
    made = piece([(1, ["W"] * 3), (0, ["W"] * 4), (-1, ["W"] * 5), (0, ["W"] * 4)], base=1)
    count = {hang: [(place.row.level, place.index, place.bridge) for place in places(replace(made, hang=hang))]
             for hang in ("base", "lowest", "edge", "bridges")}
    assert count["base"] == [(0, i, False) for i in range(4)]
    assert count["lowest"] == [(-1, i, False) for i in range(3)]
    assert count["bridges"] == [(-1, i, True) for i in range(2)]   # n - 1
    assert count["edge"] == [(1, 0, False), (0, 0, False), (-1, 0, False), (-1, 1, False), (-1, 2, False), (0, 3, False), (1, 4, False)]


def test_upright_sides_have_no_places():
    made = replace(piece([(0, ["W"] * 3), (-1, ["W"] * 4), (0, ["W"] * 3), (-1, ["W"] * 4)]), hang="edge")
    assert [(place.row.level, place.index) for place in places(made)] == [(1, 0), (0, 0), (0, 1), (0, 2), (1, 3)]


def test_a_plain_fringe_goes_up_one_stitch_and_down_the_next():
    assert fringe_of(triangle(3, strands=["WW"] * 3, end="B")) == "d1.1 +WWB back2 u1.1 d1.2 +WWB back2 u1.2 d1.3 +WWB back2 u1.3"
    assert fringe_of(triangle(2, strands=["W", "W"], end="B", hand="left")) == "d1.2 +WB back1 u1.2 d1.1 +WB back1 u1.1"


def test_the_way_along_the_lower_edge_is_hidden():
    made = diamond(3, strands=plain(5))
    assert fringe_of(made).replace(" +WWWB back3", "") == "d1.1 u1.1 d1.2 d4.1 u4.1 d4.2 d5.1 u5.1 u4.1 d4.2 u4.2 u1.2 d1.3 u1.3"


def test_over_an_empty_place_the_needle_goes_through_the_row_above():
    made = replace(triangle(5, 3), strands=plain(5, 2))
    assert fringe_of(made).replace(" +WWWB back3", "").startswith("d1.1 u1.1 u2.1 d2.2 d1.3 u1.3")


def test_on_bridges_the_needle_goes_under_one_after_the_other():
    made = replace(triangle(6, 4), hang="bridges", strands=plain(5))
    assert fringe_of(made).replace(" +WWWB back3", "") == "d1.1 u1.1 u1.1 u1.2 u1.2 u1.3 u1.3 u1.4 u1.4 u1.5 u1.5"
    assert sum(isinstance(event, Under) for event in path(made).fringe) == 10


def test_an_empty_bridge_is_passed_through_stitches():
    made = replace(triangle(4, 2), hang="bridges", strands=plain(3, 2))
    events = [event for event in path(made).fringe if isinstance(event, Pass) and event.places[0].part == "row"]
    assert [(event.places[0].index, event.up) for event in events] == [(0, False), (1, True), (2, False)]


def test_kinds_of_strands_are_worked_each_in_their_way():
    branched = Strand(1, tuple("WWWW"), ("B",), hung=(Twig(2, ("R", "R"), ("7",)), Charm(3, "ring")))
    twisted = Strand(2, ("W", "W"), ("7",), TWIST, second=("B", "R"))
    loop = Strand(3, tuple("WBR"), (), LOOP, 2)
    made = replace(triangle(5, 3), strands=(branched, twisted, loop))
    assert fringe_of(made) == ("d1.1 +WWRR7 back2 +W ring +WB back1 ring back3 u1.1 d1.2 +WW7RB u1.2 d1.3 +WBR u1.5")
    assert lines(made)[1] == ["Strand 1, 8 beads: 2W, twig [2R; end 17], 1W, the ring, 1W; end 1B",
                              "Strand 2, 5 beads, twisted pair: 2W; end 17; up 1R, 1B",
                              "Strand 3, 3 beads, loop from place 3 to 5: 1W, 1B, 1R"]


def test_a_loop_is_worked_from_the_side_from_which_the_fringe_is_worked():
    loop = Strand(1, tuple("WBR"), (), LOOP, 2, hung=(Charm(1, "ring"),))
    right, left = (replace(triangle(3, 2, hand=hand), strands=(loop,)) for hand in ("right", "left"))
    assert (fringe_of(right), fringe_of(left)) == ("d1.1 +W ring +BR u1.3", "d1.3 +RB ring +W u1.1")
    assert lines(left)[1] == ["Strand 1, 3 beads, loop from place 3 to 1: 1R, 1B, the ring, 1W"]


def test_equal_stretches_of_a_branched_strand_are_said_once():
    twigs = tuple(Twig(at, tuple("BB"), ("R",)) for at in (4, 8, 12))
    made = replace(triangle(2, strands=["", "W"]), strands=(Strand(1, ("W",) * 14, ("B",), hung=twigs), Strand(2, ("W",), ("B",))))
    assert lines(made)[1][0] == "Strand 1, 24 beads: 3 × [4W, twig [2B; end 1R]], 2W; end 1B"
    assert differences(made, *lines(made)) == ()


@given(fringed())
def test_words_of_every_fringe_read_back(made):
    assert differences(made, *lines(made)) == ()


@settings(max_examples=30)
@given(fringed(), fringed())
def test_words_of_another_fringe_are_noticed(made, other):
    if len(made.strands) != len(other.strands) or {s.number: s for s in made.strands} != {s.number: s for s in other.strands}:
        other = replace(made, strands=other.strands)
        if lines(made)[1] != [words.line for words in strand_words(other)]:
            assert differences(other, [words.line for words in row_words(made)], lines(made)[1]) != ()


@settings(max_examples=60)
@given(fringed())
def test_the_fringe_is_one_walk(made):
    events = path(made).fringe
    if not made.strands:
        assert events == ()
        return
    assert isinstance(events[0], Anchor) and isinstance(events[-1], WeaveIn)
    walk = networkx.Graph()
    visited = [place for event in events for place in getattr(event, "places", ())]
    walk.add_edges_from(zip(visited, visited[1:]))
    taken = [place for event in events if isinstance(event, PickUp) for place in event.places]
    assert networkx.is_connected(walk) and len(taken) == len(set(taken))
    assert Counter(taken) == Counter(Place("strand", strand.number, index) for strand in made.strands for index in range(len(strand.all)))
    seen = set()
    for event in events:   # nothing of a strand is passed through before it has been picked up
        seen |= set(event.places) if isinstance(event, PickUp) else set()
        assert {place for place in getattr(event, "places", ()) if place.part == "strand"} <= seen


@settings(max_examples=60)
@given(fringed())
def test_passes_through_the_beads_of_a_strand(made):
    """Lines and twigs of a straight strand carry two threads, end beads, loops and twisted pairs one."""
    passes = path(made).passes()
    for strand in made.strands:
        for line in laid(strand):
            own = 2 if strand.kind == "straight" else 1
            assert {passes[Place("strand", strand.number, index)] for index in line.beads} <= {own}
            assert {passes[Place("strand", strand.number, index)] for index in line.end} <= {1}


@settings(max_examples=60)
@given(fringed())
def test_between_strands_the_needle_steps_only_to_a_stitch_beside(made):
    """The thread shows nowhere: each pass begins where the pass before it came out, in a stitch that touches that one."""
    before = None
    for event in path(made).fringe:
        if isinstance(event, (Under, PickUp)):   # under a bridge the needle turns, or hangs a strand
            before = None
        elif isinstance(event, Pass) and event.places[0].part == "row":
            row = made.holds(event.places[0].line, event.places[0].index)
            down = event.up == (row.level < 0)
            at, level = row.stitches[event.places[0].index - row.before].at, row.level
            if before is not None:
                was_at, was_level, was_down = before
                if level == was_level:
                    assert abs(at - was_at) == 2 and down != was_down
                else:
                    assert abs(at - was_at) == 1 and level - was_level == (-1 if down else 1) and down == was_down
            before = at, level, down


@settings(max_examples=60)
@given(fringed())
def test_every_bead_of_the_fringe_is_counted_weighed_and_laid_out(made):
    keys = [key for strand in made.strands for key in strand.all]
    bare = replace(made, strands=())
    counts, without = tally(made), tally(bare)
    assert counts.fringe == len(keys)
    assert {line.key: line.piece - old.piece for line, old in zip(counts.lines, without.lines)} == {key: keys.count(key) for key in made.legend}
    assert mass(made) - mass(bare) == pytest.approx(sum(made.legend[key].kind.mass for key in keys) / 1000)
    spots = layout(made).spots
    assert all(spots[Place("strand", strand.number, index)].key == key for strand in made.strands for index, key in enumerate(strand.all))
    assert size(made).length >= size(bare).length


@settings(max_examples=60)
@given(fringed())
def test_steps_of_every_fringe_say_where_the_thread_exits(made):
    plan = ThreadPlan()
    told = steps(made, plan, thread_use(made, plan))
    assert [step.id for step in told] == [name for name in STEP_IDS if name in {step.id for step in told}]
    assert all("exits" in step.text and "  " not in step.text for step in told)
    kinds = {strand.kind for strand in made.strands}
    wanted = {"fringe-loop": LOOP in kinds, "fringe-twist": TWIST in kinds, "fringe-twigs": any(strand.twigs for strand in made.strands),
              "fringe-charm": any(strand.charms for strand in made.strands)}
    assert {name: name in {step.id for step in told} for name in wanted} == wanted


def test_the_way_from_strand_to_strand_is_told_as_it_is_worked():
    made = diamond(3, strands=plain(5))
    told = {step.id: step.text for step in steps(made, ThreadPlan(), thread_use(made, ThreadPlan()))}
    assert told["fringe-way"] == (
        "No thread may show on the face, so the needle goes through worked stitches. "
        "To strands 2 and 3 pass down through the next stitch to the right, then down through the stitch below to the left. "
        "To strands 4 and 5 pass up through the stitch above to the left, then down through the next stitch to the right. "
        "The thread exits downward, above the next strand. After the last strand the thread exits the top of that stitch.")
    assert "Its 5 places are the stitches whose underside shows" in told["fringe-start"]


def test_lengths_count_every_bead_at_its_own_size():
    drop, small = BeadKind("drop 3.4", "drop", 3.4, 3.4, 0.9), BeadKind("round 15/0", "round", 1.5, 1.1, 0.7)
    legend = {**LEGEND, "B": Bead("B", "drop", "#808080", "matte", drop), "R": Bead("R", "small", "#808080", "matte", small)}
    mixed = Strand(1, tuple("WWRR"), ("B",))
    made = replace(triangle(2, strands=["", ""]), legend=legend, strands=(mixed, Strand(2, ("W",), ("R",))))
    assert hanging_length(made, mixed) == pytest.approx(2 * CYLINDER.length + 2 * small.length + drop.length)
    twig = replace(mixed, hung=(Twig(2, ("W",) * 20, ("R",)),))
    assert hanging_length(made, twig) > hanging_length(made, mixed)
    charm = replace(mixed, turned=(Charm(1, "star"),))
    assert hanging_length(replace(made, charms={"star": 9.0}), charm) == pytest.approx(hanging_length(made, mixed) + 9.0)


def test_a_fringe_on_the_edge_hangs_lower_where_the_body_does():
    made = diamond(4, strands=plain(7))
    assert size(made).length == pytest.approx(7 * 1.3 + 4 * 1.3)      # from the tip
    assert size(replace(made, strands=made.strands[:1])).length == pytest.approx(7 * 1.3 + 4 * 1.3 - 3 * 1.3)


def test_a_loop_is_as_long_as_its_beads():
    """Middles of neighbours are about a bead apart all the way round, and the loop hangs about half its length down."""
    made = replace(triangle(3, 2), strands=(Strand(1, ("W",) * 21, (), LOOP, 1),))
    spots = [layout(made).spots[Place("strand", 1, index)] for index in range(21)]
    apart = [((a.x - b.x) ** 2 + (a.y - b.y) ** 2) ** 0.5 for a, b in zip(spots, spots[1:])]
    assert min(apart) > 1.2 and max(apart) < 1.31
    assert 10 * 1.3 - 2.5 < hanging_length(made, made.strands[0]) < 10 * 1.3 + 1


def test_json_keeps_three_keys_of_a_straight_strand_and_adds_those_of_its_kind():
    strands = (Strand(1, ("W",), ("B",)), Strand(2, ("W",) * 3, ("B",), hung=(Twig(2, ("R",), ("7",)),), turned=(Charm(1, "star"),)),
               Strand(3, tuple("WB"), (), LOOP, 1), Strand(5, ("W",), (), TWIST, second=("B",)))
    made = replace(triangle(5, 4), strands=strands, hang="lowest")
    told = summary("a", "1.0", "pair", made, tally(made, 2), thread_use(made, ThreadPlan()))["fringe"]
    assert told == {"strands": [
        {"strand": 1, "beads": "W", "end": "B"},
        {"strand": 2, "beads": "WWW", "end": "B", "twigs": [{"after": 2, "beads": "R", "end": "7"}], "end_charms": [{"after": 1, "item": "star"}]},
        {"strand": 3, "beads": "WB", "end": "", "kind": "loop", "from": 3, "to": 4},
        {"strand": 5, "beads": "W", "end": "", "kind": "twist", "second": "B"}], "hang": "lowest"}


def test_a_strand_needs_a_place():
    made = replace(triangle(3, 2), strands=plain(3))
    assert strands_fit(made) and not strands_fit(replace(made, hang="bridges"))
    assert not strands_fit(replace(made, strands=(Strand(3, ("W",), (), LOOP, 1),)))
    with pytest.raises(ValueError, match="no place"):
        path(replace(made, hang="bridges"))


@pytest.mark.parametrize("line", [
    "Strand 1, 3 beads: 3W; up 1B", "Strand 1, 4 beads, twisted pair: 3W; end 1B", "Strand 1, 3 beads, loop from place 2 to 3: 3W",
    "Strand 1, 4 beads, loop from place 1 to 2: 3W; end 1B", "Strand 1, 3 beads: 1W, twig [1B; end 1R", "Strand 1, 3 beads: twig [1B, twig [1R]]",
    "Strand 1, 3 beads: 1W; end twig [1B; end 1R]", "Strand 1, 2 beads: 1W, twig [1B; end 1R]", "Strand 1, 1 bead: 1W, the ", "Strand 1, 1 bead: 1W]"])
def test_error_a_strand_that_makes_no_sense(line):
    with pytest.raises(CannotRead):
        replay([], [line])
