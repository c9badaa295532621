"""Step pictures: every step of every legal piece has one; the thread lies where the path says; numbers, greys and hands are right."""

from __future__ import annotations

import re
from io import BytesIO
from math import hypot

import pytest
from hypothesis import given, settings
from PIL import Image
from tests.craft.fringes import fringed
from tests.craft.pieces import stepped, triangle, workable
from tests.craft.weaves import any_weave

from booklet.craft.events import Anchor, Pass, PickUp, Under, WeaveIn
from booklet.craft.plan import ThreadPlan
from booklet.craft.steps import steps
from booklet.craft.thread import thread_use
from booklet.draw import alphabet
from booklet.draw.colour import contrast, mix
from booklet.draw.png import png_bytes
from booklet.draw.steps import Stage, marks, scene_svg
from booklet.draw.steps.nodes import in_lanes, nodes
from booklet.draw.steps.scene import INK, PALE

PLAN = ThreadPlan(length=600.0)
WITHOUT_NEEDLE = {"warps", "off-the-loom", "ear-wire"}   # nothing is sewn in these steps


def scenes_of(piece):
    stage, uses = Stage(piece), thread_use(piece, PLAN)
    return stage, {step.id: stage.scenes.of(step.id, uses) for step in steps(piece, PLAN, uses, True)}


@settings(max_examples=25)
@given(workable() | any_weave() | fringed() | stepped())
def test_every_step_in_which_the_needle_goes_somewhere_has_a_picture(piece):
    stage, scenes = scenes_of(piece)
    for name, scene in scenes.items():
        assert (scene is None) == (name in WITHOUT_NEEDLE), name
        if scene is not None:
            svg = scene_svg(stage, scene)
            wide, high = (float(re.search(rf' {name}="([0-9.]+)mm"', svg)[1]) for name in ("width", "height"))
            assert wide <= 40.01 and high <= 50.01
            assert svg.count("<path") < 120


@settings(max_examples=25)
@given(workable() | any_weave())
def test_the_thread_goes_through_the_beads_that_the_path_names(piece):
    stage = Stage(piece)
    found = in_lanes(nodes(stage.opened, stage.scenes.events[:12]), 1.0)
    for node in found:
        if node.places:
            for place, (x, y) in zip((node.places[0], node.places[-1]), (node.start, node.end)):
                cell = stage.opened.cells[place]
                assert abs(x - cell.x) <= cell.half[0] + 0.01 and abs(y - cell.y) <= cell.half[1] + 0.01
            assert set(node.places) <= set(stage.scenes.events[node.event].places)


@settings(max_examples=25)
@given(workable(fringe=False) | stepped())
def test_a_pass_up_is_drawn_away_from_the_base(piece):
    stage = Stage(piece)
    levels = {row.number: row.level for row in piece.rows}
    for node in stage.nodes:
        event = stage.scenes.events[node.event]
        if isinstance(event, Pass) and event.places[0].part == "row":
            up = event.up == (levels[event.places[0].line] >= 0)
            assert (node.out[1] < 0) == up and (node.end[1] < node.start[1]) == up


@settings(max_examples=25)
@given(workable(fringe=False) | stepped())
def test_a_stitch_hung_on_a_bridge_is_first_passed_towards_the_bridge(piece):
    events, stage = Stage(piece).scenes.events, Stage(piece)
    ways = {node.event: node.out for node in stage.nodes if node.kind == "beads"}
    for index, event in enumerate(events[:-2]):
        if isinstance(event, PickUp) and isinstance(events[index + 1], Under):
            assert ways[index] == tuple(-part or 0.0 for part in ways[index + 2])


def start_in(hand="right"):
    stage, scenes = scenes_of(triangle(5, hand=hand))
    return stage, scenes["row-start-in"]


def test_the_first_step_of_a_row_tells_its_five_actions_in_order():
    stage, scene = start_in()
    assert [type(scene.shown[index]).__name__ for action in scene.actions for index in action] == ["PickUp", "Under", "Pass", "Pass", "Pass"]
    svg = scene_svg(stage, scene)
    alt = re.search("<title>(.*?)</title>", svg)[1]
    assert alt == ("The way of the thread in row 2. 1 pick up 2 beads, 2W; "
                   "2 pass under the thread bridge between stitches 3 and 4 of row 1; 3 pass up through stitch 3 of row 2; "
                   "4 pass down through stitch 4 of row 2; 5 pass up through stitch 3 of row 2. The needle is at the end of the thread.")


def test_numbers_have_one_disc_for_each_action():
    stage, scene = start_in()
    discs = re.search(r'<path class="number" d="([^"]*)"', scene_svg(stage, scene)) or re.search(r'd="([^"]*)"[^>]*class="number"', scene_svg(stage, scene))
    assert discs[1].count("M") == len(scene.actions) == 5


def test_a_left_handed_picture_is_the_mirror_image():
    right, left = start_in("right"), start_in("left")
    one, other = ([(node.start, node.end) for node in nodes(stage.opened, scene.shown) if node.kind == "beads"] for stage, scene in (right, left))
    xs = [cell.x for cell in right[0].opened.cells.values()]
    width = min(xs) + max(xs)
    assert [((width - ax, ay), (width - bx, by)) for (ax, ay), (bx, by) in one] == [
        ((pytest.approx(ax), pytest.approx(ay)), (pytest.approx(bx), pytest.approx(by))) for (ax, ay), (bx, by) in other]


@pytest.mark.parametrize("colour", ["#000000", "#3d5a80", "#b3412e"])
def test_thread_stands_out_from_pale_beads(colour):
    """WCAG 2.2, success criterion 1.4.11 (w3.org/WAI/WCAG22): 3:1 for parts of graphics that are needed to understand them."""
    assert contrast(INK, mix(colour, "#ffffff", PALE)) >= 3


def test_the_thread_is_seen_in_print():
    stage, scene = start_in()
    image = Image.open(BytesIO(png_bytes(scene_svg(stage, scene), dpi=300))).convert("L")
    dark = sum(value < 70 for value in image.tobytes())
    assert 0.02 < dark / (image.width * image.height) < 0.4


def test_a_new_thread_goes_twice_round_two_neighbours():
    """The new thread must come out as the old one did."""
    stage, scenes = scenes_of(triangle(16))
    scene = scenes["thread-change"]
    begin, *passes = scene.shown
    assert isinstance(begin, Anchor) and len(passes) == 4
    assert passes[0] == passes[2] and passes[1] == passes[3]
    (one, other) = (event.places[0] for event in passes[:2])
    assert one.line == other.line and abs(one.index - other.index) == 1
    last = next(event for event in reversed(scene.before) if isinstance(event, Pass))
    assert (passes[-1].places, passes[-1].up) == (last.places, last.up)


def test_a_whole_row_numbers_its_pick_ups():
    stage = Stage(triangle(6))
    scene = stage.scenes.whole("row", 2)
    assert len(scene.actions) == 4      # two stitches together, then three more
    assert not any(isinstance(event, WeaveIn) for event in scene.shown)
    assert stage.scenes.whole("row", 7) is None


def test_numbers_of_two_figures_stand_within_their_discs():
    for number in range(1, 100):
        cap = marks._cap(str(number))
        assert hypot(cap, alphabet.width(str(number), cap)) <= 2 * marks.DISC - 0.3 and cap >= 0.75 * marks.CAP
