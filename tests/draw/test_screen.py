"""Pictures for web pages show every bead where the paper pictures have it, in the same order, and name its key."""

import re

import pytest
from tests.draw.builders import diamond, triangle, v_fringe
from tests.draw.test_lying_charts import CHARTS

from booklet.craft.piece import Hanger
from booklet.draw.screen import screen_chart, screen_file, screen_fringe, screen_pair
from booklet.draw.short import short, through

PIECE = triangle(9, strands=v_fringe(9), hanger=Hanger("guard"))


def beads(svg):
    """By row or strand: the keys with their places, in the order of drawing."""
    found = {}
    for part, group in re.findall(r'<g data-part="([^"]+)">(.*?)</g>', svg):
        for key, data in re.findall(r'<path data-key="(.)"[^>]* d="([^"]*)"', group):
            x = y = 0.0
            for kind, text in re.findall(r"([Mhvl])([^Mhvl]*)", data):
                values = [float(value) for value in re.findall(r"-?(?:\d+\.?\d*|\.\d+)", text)]
                x, y = (values if kind == "M" else (x + (0 if kind == "v" else values[0]), y + (0 if kind == "h" else values[-1])))
                found.setdefault(part, []).append((round(x, 1), round(y, 1), key))
    return found


@pytest.mark.parametrize("piece", [PIECE, diamond(5, 2)], ids=["triangle", "diamond"])
def test_every_row_of_the_chart_can_be_read_back(piece):
    found = beads(screen_chart(piece, 4.0))
    assert list(found) == [f"row-{row.number}" for row in piece.rows]
    for row in piece.rows:
        drawn = sorted(found[f"row-{row.number}"])
        columns = [[(y, key) for x, y, key in drawn if x == column] for column in sorted({x for x, _, _ in drawn})]
        upward = [tuple(key for _, key in sorted(column, reverse=row.level >= 0)) for column in columns]
        assert upward == [stitch.beads for stitch in row.stitches]


def grounds(svg):
    """By row: the boxes (left, right, top, bottom) of what shows between and round its beads."""
    found = {}
    for part, group in re.findall(r'<g data-part="([^"]+)">(.*?)</g>', svg):
        for width, dash, data in re.findall(r'<path class="s-gap" stroke-width="([\d.]+)"(?: stroke-dasharray="([\d. ]+)")?[^>]* d="([^"]*)"', group):
            for x, y, length in (map(float, line) for line in re.findall(r"M(-?[\d.]+)[ ]?(-?[\d.]+)h(-?[\d.]+)", data)):
                on, off = map(float, dash.split()) if dash else (length, 0.0)
                starts = [x + step * (on + off) for step in range(int((length + off) / (on + off) + 0.01))]
                found.setdefault(part, []).extend((left, left + on, y - float(width) / 2, y + float(width) / 2) for left in starts)
    return found


@pytest.mark.parametrize("piece", [PIECE, diamond(5, 2), *CHARTS.values()], ids=["triangle", "diamond", *CHARTS])
def test_no_row_hides_beads_of_another(piece):
    svg = screen_chart(piece, 4.0)
    places, boxes = beads(svg), grounds(svg)
    assert set(places) == set(boxes)
    for part, drawn in places.items():
        for x, y, key in drawn:
            under = {name for name, found in boxes.items() for left, right, top, bottom in found if left < x < right and top < y < bottom}
            assert under == {part}, (x, y, key)


def test_every_strand_can_be_read_back_in_the_order_of_picking_up():
    found = beads(screen_fringe(PIECE, 4.0))
    assert {part: tuple(key for _, _, key in drawn) for part, drawn in found.items()} == {
        f"strand-{strand.number}": strand.all for strand in PIECE.strands}


def test_no_colour_of_a_bead_is_written_into_a_picture_that_the_page_colours():
    for svg in (screen_chart(PIECE, 4.0), screen_fringe(PIECE, 4.0), screen_pair(PIECE, True, 2.0)):
        assert not any(bead.colour in svg for bead in PIECE.legend.values()) and "8060" not in svg
        assert {f"f-{key}" for stitch in PIECE.base.stitches for key in stitch.beads} <= set(re.findall(r'class="(f-.)"', svg))
    assert all(f".f-{key}{{fill:{bead.colour}}}" in screen_file(PIECE, 2.0) for key, bead in PIECE.legend.items())


def test_steps_are_seen_from_where_the_rounded_ones_before_have_led():
    assert through([(index / 3, 1.0) for index in range(4)]) == "M0 1h.33h.34h.33"
    assert short("M0.500 -0.250h12.346") == "M.5-.25h12.35"
