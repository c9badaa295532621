"""Charts and views of peyote, square stitch and loom work, read back from the pictures."""

import pytest
from tests.draw.reading import Seen

from booklet.craft.layout import layout
from booklet.craft.piece import Hanger, Piece, Stitch, Strand
from booklet.craft.stitches import worked_rows
from booklet.draw.chart import chart_size, chart_svg, fit_chart
from booklet.draw.finished import finished_svg, mirrored
from booklet.draw.fringe import fringe_svg
from tests.draw.builders import LEGEND

BEAD = 4.0


def woven(stitch, rows, drop=1, strands=(), hand="right"):
    """Rows bottom up as (position, letters), `drop` letters a stitch."""
    drawn = [[Stitch(at + 2 * i, tuple(letters[k:k + drop])) for i, k in enumerate(range(0, len(letters), drop))] for at, letters in rows]
    lines = tuple(Strand(n, tuple(beads), tuple("B")) for n, beads in enumerate(strands, 1))
    keys = set("".join(letters for _, letters in rows)) | set("".join(strands)) | set("B")
    return Piece({k: b for k, b in LEGEND.items() if k in keys}, drop, hand, worked_rows(stitch, drawn, 0, hand), lines, (Hanger("guard"),), stitch)


EVEN = woven("peyote", [(1, "WBG"), (0, "BBG"), (1, "WWR"), (0, "BRG"), (1, "WSG"), (0, "RBM")])
ODD = woven("peyote", [(0, "WBGS"), (1, "BBG"), (0, "WWRM"), (1, "BRG"), (0, "WSGR")], hand="left")
PAIRS = woven("peyote", [(1, "WBGS"), (0, "BGRM"), (1, "RWSG"), (0, "MBRW"), (1, "BBSS"), (0, "GGRR")], drop=2, strands=("WB", "BW"))
SQUARE = woven("square", [(0, "WBGSR"), (0, "BBGWR"), (2, "WRM"), (2, "GSB")])
LOOM = woven("loom", [(2, "WBG"), (0, "RSWBM"), (2, "BWR")], strands=("WB", "BW", "RG"))
CHARTS = {"even peyote": EVEN, "odd peyote, left-handed": ODD, "2-drop peyote": PAIRS, "square": SQUARE, "loom": LOOM}
EACH = pytest.mark.parametrize("chart", CHARTS.values(), ids=CHARTS)


def middles(chart, scale=BEAD / 1.6):
    """Letter and middle of every bead of the body: columns are a bead's length wide, rows a diameter or half of it high."""
    interlocked, drop = chart.stitch == "peyote", chart.drop
    step, wide = (1.6 / 2, 1.3 * drop) if interlocked else (1.6, 1.3 / 2)
    high = step * (len(chart.rows) - 1) + 1.6
    zero = min(row.first for row in chart.rows)
    edge = 0 if interlocked else 0.65 - wide / 2   # positions are half stitches where rows stand straight above each other
    return [(key, ((stitch.at - zero + 0.5) * wide + edge + (level - (drop - 1) / 2) * 1.3) * scale, (high - step * (row.number - 1) - 0.8) * scale)
            for row in chart.rows for stitch in row.stitches for level, key in enumerate(stitch.beads)]


@EACH
def test_every_bead_has_its_letter_at_its_place(chart):
    found = {(letter.char, round(letter.x, 1), round(letter.y, 1)) for letter in Seen(chart_svg(chart, bead=BEAD)).spelt("letters")}
    wanted = middles(chart)
    assert len(found) == len(wanted)
    for key, x, y in wanted:
        assert any(key == char and abs(x - at) < 0.11 and abs(y - down) < 0.11 for char, at, down in found), (key, x, y)


@EACH
def test_every_bead_has_its_colour(chart):
    seen = Seen(chart_svg(chart, bead=BEAD), without=("letters", "fives"))
    for key, x, y in middles(chart):
        assert seen.colour(x, y) == LEGEND[key].colour


@EACH
def test_beads_lie_along_the_row(chart):
    seen = Seen(chart_svg(chart, bead=BEAD), without=("letters", "fives", "base"))
    shapes = {(round(wide, 1), round(high, 1)) for _, _, wide, high in seen.blobs([bead.colour for bead in chart.legend.values()], 2.0)}
    assert shapes and all(high > wide for wide, high in shapes if wide < 1.5 * high)


@EACH
def test_numbers_and_totals_stand_beside_the_rows_and_not_on_one_another(chart):
    seen = Seen(chart_svg(chart, bead=BEAD))
    left, right = min(x for _, x, _ in middles(chart)), max(x for _, x, _ in middles(chart))
    numbers, totals = seen.numbers("row-numbers"), seen.numbers("row-totals")
    assert sorted(n for n, _, _ in numbers) == [row.number for row in chart.rows] and len(totals) == len(chart.rows)
    for number, x, _ in numbers:
        assert x < left if chart.rows[number - 1].direction == "right" and chart.stitch == "peyote" else x < right or x > right
    for one in (numbers, totals):
        for a in one:
            assert all(a is b or abs(a[1] - b[1]) > 1.5 or abs(a[2] - b[2]) > 2.2 for b in one)


@EACH
def test_nothing_is_drawn_outside_the_picture(chart):
    for svg, aside in ((chart_svg(chart, bead=BEAD), ("guides",)), (finished_svg(chart), ()), (fringe_svg(chart), ("guides",))):
        seen = Seen(svg, without=aside)
        assert all((edge > 250).all() for edge in (seen.pixels[0], seen.pixels[-1], seen.pixels[:, 0], seen.pixels[:, -1]))


@EACH
def test_the_finished_view_has_true_proportion(chart):
    seen = Seen(finished_svg(chart, scale=4.0), without=("metal", "thread"))
    places = layout(chart)
    found = seen.blobs([bead.colour for bead in chart.legend.values()], 0.5)
    wide = max(x + w / 2 for x, _, w, _ in found) - min(x - w / 2 for x, _, w, _ in found)
    assert wide == pytest.approx(4.0 * (max(s.x for p, s in places.spots.items() if p.part == "row") + 0.65 -
                                        min(s.x for p, s in places.spots.items() if p.part == "row") + 0.65), abs=1.2)


def test_a_set_that_lies_is_turned_over_with_its_piece():
    turned = mirrored(PAIRS)
    assert ["".join(s.beads) for s in turned.rows[0].stitches] == ["SG", "BW"]


def test_the_fringe_chart_has_the_base_stitches_side_by_side():
    seen = Seen(fringe_svg(PAIRS, bead=BEAD))
    assert [n for n, _, _ in seen.numbers("strand-numbers")] == [1, 2]


def test_the_largest_scale_fits():
    fit = fit_chart(EVEN, 110, 170, most=20)
    assert (fit.width, fit.height) == chart_size(EVEN, fit.bead) and fit.width <= 110 and fit.height <= 170
