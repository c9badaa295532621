"""Step pictures in files of their own: every action can be shown, and short path data leads where long data led."""

import re
from xml.etree import ElementTree

import pytest
from fontTools.pens.recordingPen import RecordingPen
from fontTools.svgLib.path import parse_path
from tests.craft.pieces import triangle

from booklet.craft.plan import ThreadPlan
from booklet.craft.steps import steps
from booklet.craft.thread import thread_use
from booklet.draw.short import relative
from booklet.draw.steps import Moving, Stage, scene_svg

PLAN = ThreadPlan(length=600.0)


def points(path):
    """What a general-purpose reader makes of path data, without lines back to a start, which closing a path draws."""
    pen, found, start = RecordingPen(), [], ()
    parse_path(path, pen)
    for name, places in pen.value:
        start = places[0] if name == "moveTo" else start
        if name != "lineTo" or places[0] != pytest.approx(start, abs=0.011):
            found.append((name, [value for point in places for value in point]))
    return found


def test_short_path_data_leads_where_long_data_leads():
    stage = Stage(triangle(5))
    svg = scene_svg(stage, stage.scenes.of("finishing"))
    for path in re.findall(r' d="([^"]+)"', svg):
        before, after = points(path), points(relative(path))
        assert [name for name, _ in before] == [name for name, _ in after]
        for (_, one), (_, other) in zip(before, after):
            assert other == pytest.approx(one, abs=0.011)


def test_every_action_can_be_shown_and_has_its_needle():
    piece = triangle(5)
    stage, uses = Stage(piece), thread_use(piece, PLAN)
    found = 0
    for step in steps(piece, PLAN, uses, True):
        scene = stage.scenes.of(step.id, uses)
        if scene is None:
            continue
        root = ElementTree.fromstring(scene_svg(stage, scene, on=Moving))
        actions = len(scene.actions)
        assert [part.get("id") for part in root if part.get("id")] == [f"{kind}{number}" for number in range(1, actions + 1) for kind in "ps"]
        classes = [part.get("class", "").split() for part in root if part.tag.endswith("path")]
        for number in range(1, actions + 1):
            assert any("x" in names and f"k{number}" in names for names in classes)
            assert any("y" in names and f"k{number}" in names for names in classes)
        found += 1
    assert found >= 5
