"""The techniques that a piece uses, and the level that they ask for."""

import pytest
from hypothesis import given
from msgspec.structs import replace
from tests.craft.pieces import LEGEND, piece, triangle, workable
from tests.craft.weaves import woven

from booklet.craft.beads import BeadKind
from booklet.craft.piece import Hanger
from booklet.craft.techniques import LEVELS, TECHNIQUES, USUAL_LEVELS, needed_level, techniques, techniques_said

SMALL_ROUND = BeadKind("round 15/0", "round", 1.5, 1.1, 0.7)
WITH_SMALL = {**LEGEND, "R": replace(LEGEND["R"], kind=SMALL_ROUND)}
STRANDS = ["WW", "WB", "WW", "WW"]


def ids(made):
    return [technique.id for technique in techniques(made)]


def test_a_plain_triangle():
    assert ids(triangle(4, 2)) == ["ladder-stitch", "brick-stitch"]
    assert techniques_said(triangle(4, 2)) == "ladder stitch, brick stitch"


@pytest.mark.parametrize(("made", "more"), [
    (triangle(4, 2, drop=3), ["2-drop"]),
    (piece([(0, "WWW"), (-1, "WWWW")]), ["increases"]),
    (piece([(0, "WWW"), (1, "WWW")]), ["increases"]),
    (piece([(1, "WW"), (0, "WWW"), (1, "WW")], base=1), ["lower-rows"]),
    (piece([(0, "WWWWW"), (1, "WW")]), ["steps"]),
    (piece([(0, "WWW"), (-3, "WWWWW")]), ["increases", "steps"]),
    (piece([(0, "WWWWW"), (1, ["W", "", "", "W"])]), ["steps", "parts"]),
    (triangle(4, 2, strands=STRANDS), ["fringe"]),
    (triangle(4, 2, hanger=Hanger("loop", tuple("WWW"))), ["bead-loop"]),
    (triangle(40), ["many-beads"]),
])
def test_what_a_piece_asks_for(made, more):
    assert ids(made) == ["ladder-stitch", "brick-stitch", *more]


@pytest.mark.parametrize(("body", "strands", "end", "mixed"), [
    ("WRW", ["WW"] * 3, "W", True), ("WBW", ["WRW"] * 3, "W", True), ("WBW", ["WBW"] * 3, "RRR", False), ("RRR", ["RR"] * 3, "W", False)])
def test_mixed_sizes_are_sizes_side_by_side(body, strands, end, mixed):
    made = replace(piece([(0, body), (1, body[:2])], strands=strands, end=end), legend=WITH_SMALL)
    assert ("mixed-sizes" in ids(made)) == mixed


def test_how_many_beads_a_piece_has_is_no_technique_that_a_page_lists():
    assert techniques_said(triangle(40)) == "ladder stitch, brick stitch"
    assert techniques_said(triangle(4, 2, drop=3, strands=STRANDS)) == "ladder stitch, brick stitch, 3-drop, fringe"


@given(workable())
def test_the_needed_level_is_the_highest_of_its_techniques(made):
    asked = {USUAL_LEVELS[name] for name in ids(made)}
    assert needed_level(made) == [level for level in LEVELS if level in asked][-1]
    assert needed_level(made, dict.fromkeys(TECHNIQUES, "beginner")) == "beginner"
    assert needed_level(made, {**USUAL_LEVELS, "brick-stitch": "advanced"}) == "advanced"


def test_each_weave_is_a_technique_and_an_odd_count_asks_for_more():
    even = woven("peyote", [(1, ["WB"] * 3), (0, ["WB"] * 3)] * 2)
    odd = woven("peyote", [(0, ["W"] * 3), (1, ["W"] * 2)] * 2)
    assert techniques_said(even) == "flat peyote, 2-drop"
    assert ids(odd) == ["flat-peyote", "edge-turn"] and needed_level(odd) == "intermediate"
    assert techniques_said(woven("square", [(0, ["W"] * 3)] * 2)) == "square stitch"
    assert techniques_said(woven("loom", [(0, ["W"] * 3), (0, ["W"] * 4)])) == "loom work, increases"
