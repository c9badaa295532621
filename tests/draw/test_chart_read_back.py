"""The body chart, read back from what is drawn: every bead's colour, letter and number."""

import re

import pytest
from tests.draw.builders import LEGEND, diamond, piece, triangle
from hypothesis import given, settings, strategies as st
from tests.draw.reading import Seen

from booklet.craft.piece import LEFT, RIGHT
from booklet.draw.chart import chart_alt, chart_size, chart_svg, fit_chart
from booklet.draw.colour import WHITE, contrast, grey_of
from booklet.draw.fit import LEAST_BEAD

BEAD = 3.2
MARKS = ("letters", "fives", "base", "arrows", "row-numbers", "row-totals", "stitch-numbers", "guides")
SLANT = """
  B B W
 B W W R
G W W R
 W W R
"""
EARS = """
 W           W
W B         B W
 W B B B B B W
"""
NOTCH = """
W W W   B B B
 W W W B B B
"""
CROWN = """
 W     W     W
W B   W B   B W
 W B W B W B W
"""
LEGS = """
  B B B
  W W W
 W B B W
 W B B W
  W   W
  B   B
"""
STEPS = """
      W W
 B B B B B B B
      W B B
   W B W W B W
"""
CHARTS = {
    "triangle": triangle(9), "one-stitch tip": triangle(2), "one stitch": piece("W"), "one row": piece("W B W B W B W"),
    "diamond": diamond(6), "2-drop diamond": diamond(5, 2), "3-drop": diamond(3, 3), "4-drop": diamond(4, 4),
    "slanting": piece(SLANT), "left hand": triangle(7, hand=LEFT), "left hand, base in the middle": diamond(5, 2, hand=LEFT),
    "ears": piece(EARS), "narrow notch": piece(NOTCH, hand=LEFT), "crown": piece(CROWN), "legs": piece(LEGS, drop=2, base=2),
    "steps": piece(STEPS), "base with a gap, cannot be worked": piece(" W   B\nW   B W"), "straight on top, cannot be worked": piece("W B\nW B"),
}

IN_PARTS = pytest.mark.parametrize("chart", [c for c in CHARTS.values() if any(row.part for row in c.rows)],
                                   ids=[name for name, c in CHARTS.items() if any(row.part for row in c.rows)])
IN_ONE_PIECE = pytest.mark.parametrize("chart", [c for c in CHARTS.values() if not any(row.part for row in c.rows)],
                                       ids=[name for name, c in CHARTS.items() if not any(row.part for row in c.rows)])


def places(chart, bead=BEAD):
    """Every bead as (key, x, y), mm from the top left of the body, worked out from the trade's rule alone.

    A cylinder bead is 1.6 wide and 1.3 high; a row is half a stitch to the side of the next (common practice, no source).
    """
    high, zero = bead * 1.3 / 1.6, min(stitch.at for row in chart.rows for stitch in row.stitches)
    top = max(row.level for row in chart.rows)
    return [(key, (stitch.at - zero + 1) * bead / 2, ((top - row.level) * chart.drop + line + 0.5) * high)
            for row in chart.rows for stitch in row.stitches
            for line, key in enumerate(stitch.beads[::-1] if row.level >= 0 else stitch.beads)]


@pytest.mark.parametrize("chart", CHARTS.values(), ids=CHARTS)
def test_every_bead_shows_its_colour(chart):
    seen = Seen(chart_svg(chart, bead=BEAD), without=("letters",))
    assert all(seen.colour(x, y) == chart.legend[key].colour for key, x, y in places(chart))


@pytest.mark.parametrize("chart", CHARTS.values(), ids=CHARTS)
def test_there_are_as_many_blobs_as_beads(chart):
    seen = Seen(chart_svg(chart, bead=BEAD), without=MARKS)
    blobs = seen.blobs({bead.colour for bead in chart.legend.values()})
    assert len(blobs) == len(places(chart))


@pytest.mark.parametrize("chart", CHARTS.values(), ids=CHARTS)
def test_every_bead_bears_its_letter(chart):
    seen = Seen(chart_svg(chart, bead=BEAD))
    found = {(letter.char, round(letter.x, 1), round(letter.y, 1)) for letter in seen.spelt("letters")}
    assert found == {(key, round(x, 1), round(y, 1)) for key, x, y in places(chart)}
    assert len(seen.spelt("letters")) == len(places(chart))


@IN_ONE_PIECE
def test_numbers_stand_where_rows_start_and_totals_where_they_end(chart):
    seen = Seen(chart_svg(chart, bead=BEAD))
    spots, numbers, totals = places(chart), seen.numbers("row-numbers"), seen.numbers("row-totals")
    assert sorted(number for number, _, _ in numbers) == [row.number for row in chart.rows]
    rows, high = sorted(chart.rows, key=lambda row: -row.level), BEAD * 1.3 / 1.6 * chart.drop
    for index, row in enumerate(rows):
        y = (index + 0.5) * high
        edges = [x for _, x, at in spots if abs(at - y) < high / 2]
        (number_x,) = [x for number, x, at in numbers if number == row.number and abs(at - y) < 0.01]
        (total_x,) = [x for total, x, at in totals if abs(at - y) < 0.01 and total == len(row.stitches)]
        starts_left = row.direction == RIGHT
        assert (number_x < min(edges) - BEAD / 2) if starts_left else (number_x > max(edges) + BEAD / 2)
        assert (total_x > max(edges) + BEAD / 2) if starts_left else (total_x < min(edges) - BEAD / 2)


@IN_PARTS
def test_the_number_of_every_part_stands_beside_it_or_outside_its_row(chart):
    seen = Seen(chart_svg(chart, bead=BEAD))
    names, totals = seen.names("row-numbers"), seen.numbers("row-totals")
    assert sorted(name for name, _, _ in names) == sorted(row.name for row in chart.rows)
    taken = {(x, y) for _, x, y in names} | {(x, y) for _, x, y in totals}
    assert len(taken) == len(names) + len(totals)
    zero = min(row.first for row in chart.rows)
    for row in chart.rows:
        (x, y) = next((x, y) for name, x, y in names if name == row.name)
        spans = [((part.first - zero) * BEAD / 2, (part.last - zero + 2) * BEAD / 2) for part in chart.at_level(row.level)]
        own = spans[chart.at_level(row.level).index(row)]
        assert all(not left <= x <= right for left, right in spans)
        beside = [edge for span in spans for edge in span if min(x, own[0]) < edge < max(x, own[1]) and edge not in own]
        assert not beside or not min(spans)[0] < x < max(spans)[1]
        assert abs(y - (max(r.level for r in chart.rows) - row.level + 0.5) * BEAD * 1.3 / 1.6 * chart.drop) < 0.01


@IN_PARTS
def test_all_arrows_of_a_chart_row_point_the_way_it_is_worked(chart):
    found = shafts(chart)
    for level in {row.level for row in chart.rows}:
        runs = [run for at, run in found if at == level]
        assert runs and {run > 0 for run in runs} == {chart.at_level(level)[0].direction == RIGHT}


@IN_ONE_PIECE
def test_arrows_point_into_the_row(chart):
    found = shafts(chart)
    assert len(found) == len(chart.rows)
    for row in chart.rows:
        (run,) = [run for level, run in found if level == row.level]
        assert (run > 0) == (row.direction == RIGHT)


def shafts(chart):
    """Every arrow as (level of its row, mm that it runs to the right)."""
    top, high = max(row.level for row in chart.rows), BEAD * 1.3 / 1.6 * chart.drop
    return [(top - round(float(y) / high - 0.5), float(run)) for path in Seen(chart_svg(chart, bead=BEAD)).paths("arrows")
            for y, run in re.findall(r"M-?[\d.]+ (-?[\d.]+)h(-?[\d.]+)", path.get("d"))]


@pytest.mark.parametrize("hand, side", [(RIGHT, -1), (LEFT, 1)])
@pytest.mark.parametrize("shape", [triangle, diamond])
def test_the_base_row_is_named_and_its_start_dotted(shape, hand, side):
    chart = shape(5, hand=hand)
    seen = Seen(chart_svg(chart, bead=BEAD))
    word = [path for path in seen.paths("base") if len(re.findall("M", path.get("d"))) > 1]
    assert len(word) == 1
    dots = [re.match(r"M(-?[\d.]+) (-?[\d.]+)h0.01$", path.get("d")) for path in seen.paths("base")]
    (dot,) = [match for match in dots if match]
    level = 4 if shape is triangle else 4
    assert float(dot[2]) == pytest.approx((level + 0.5) * BEAD * 1.3 / 1.6, abs=0.01)
    assert float(dot[1]) < 0 if side < 0 else float(dot[1]) > 5 * BEAD


def test_guides_stand_after_every_fifth_stitch_and_row():
    chart = triangle(12)
    seen = Seen(chart_svg(chart, bead=BEAD))
    assert [(number, round(x, 2)) for number, x, _ in seen.numbers("stitch-numbers")] == [
        (5, round(4.5 * BEAD, 2)), (10, round(9.5 * BEAD, 2))]
    (lines,) = [re.findall(r"M-?[\d.]+ (-?[\d.]+)h", path.get("d")) for path in seen.paths("guides")]
    high = BEAD * 1.3 / 1.6
    assert sorted(map(float, lines)) == pytest.approx([2 * high, 7 * high], abs=0.01)


def test_left_hand_counts_fives_from_the_right():
    seen = Seen(chart_svg(triangle(7, hand=LEFT), bead=BEAD))
    assert [(number, round(x, 2)) for number, x, _ in seen.numbers("stitch-numbers")] == [(5, round(2.5 * BEAD, 2))]


def test_a_bead_has_its_true_proportion():
    """11/0 cylinder, 1.6 x 1.3 mm: Seed Bead Size Guide."""
    chart = triangle(4, keys="B")
    blobs = sorted(Seen(chart_svg(chart, bead=8), without=MARKS).blobs([LEGEND["B"].colour]), key=lambda blob: (blob[1], blob[0]))
    one, two, three = blobs[0], blobs[1], blobs[2]
    assert three[0] - two[0] == pytest.approx(8, abs=0.1)
    assert two[1] - one[1] == pytest.approx(8 * 1.3 / 1.6, abs=0.1)
    for _, _, width, height in blobs:   # a little smaller than its cell, by the same gap both ways
        assert 8 - width == pytest.approx(8 * 1.3 / 1.6 - height, abs=0.2)
        assert 0.3 < 8 - width < 0.8


def test_mixed_kinds_in_the_body_keep_their_sizes():
    chart = piece("  o o\n o W o")
    seen = Seen(chart_svg(chart, bead=6.6), without=MARKS)   # 3 times life size: the round beads are 2.2 wide
    sizes = {key: seen.blobs([LEGEND[key].colour]) for key in "oW"}
    assert (len(sizes["o"]), len(sizes["W"])) == (4, 1)
    assert sizes["W"][0][2:] == pytest.approx((1.6 * 3, 1.3 * 3), abs=0.5)
    assert sizes["o"][0][2:] == pytest.approx((2.2 * 3, 1.49 * 3), abs=0.5)


@pytest.mark.parametrize("chart", CHARTS.values(), ids=CHARTS)
def test_in_grey_every_bead_has_the_grey_of_its_luminance(chart):
    seen = Seen(chart_svg(chart, bead=BEAD, grey=True), without=("letters",))
    assert all(seen.colour(x, y) == grey_of(chart.legend[key].colour) for key, x, y in places(chart))
    assert len({path.get("stroke") for path in seen.paths("beads")}) == len({grey_of(b.colour) for b in chart.legend.values()})


def test_a_blank_chart_has_black_letters_on_white():
    chart = triangle(6)
    seen = Seen(chart_svg(chart, bead=BEAD, blank=True))
    assert {letter.ink for letter in seen.spelt("letters")} == {"#000000"}
    assert {path.get("stroke") for path in seen.paths("beads")} == {WHITE}
    assert len(seen.spelt("letters")) == 21


@given(st.integers(0, 0xFFFFFF), st.booleans())
@settings(max_examples=30)
def test_letters_stand_out_from_their_bead(value, grey):
    from msgspec.structs import replace

    bead = replace(LEGEND["W"], colour=f"#{value:06x}")
    seen = Seen(chart_svg(piece("W W W", legend={"W": bead}), bead=BEAD, grey=grey))
    (fill,) = {path.get("stroke") for path in seen.paths("beads")}
    assert all(contrast(letter.ink, fill) >= 4.5 for letter in seen.spelt("letters"))


def test_elements_do_not_grow_with_beads():
    small, large = (chart_svg(triangle(size, keys="WBG"), bead=BEAD).count("<") for size in (12, 60))
    assert small == large
    assert large < 60


def test_the_same_chart_is_the_same_bytes():
    assert chart_svg(diamond(9, 2), bead=BEAD) == chart_svg(diamond(9, 2), bead=BEAD)
    assert re.search(r"\d\.\d{4}|e-\d|-0[ \"a-z]", re.sub(r'aria-label="[^"]*"', "", chart_svg(diamond(9, 2), bead=BEAD))) is None


@pytest.mark.parametrize("chart", CHARTS.values(), ids=CHARTS)
def test_nothing_is_drawn_outside_the_picture(chart):
    seen = Seen(chart_svg(chart, bead=BEAD), without=("guides",))
    rim = [seen.pixels[0], seen.pixels[-1], seen.pixels[:, 0], seen.pixels[:, -1]]
    assert all((edge > 250).all() for edge in rim)


@pytest.mark.parametrize("width, height", [(110, 170), (60, 60), (200, 30)])
def test_the_largest_scale_fits_and_the_next_does_not(width, height):
    chart = triangle(15)
    fit = fit_chart(chart, width, height, most=20)
    assert (fit.width, fit.height) == chart_size(chart, fit.bead)
    assert fit.width <= width and fit.height <= height
    wide, high = chart_size(chart, fit.bead + 0.05)
    assert wide > width or high > height


def test_a_chart_too_large_for_its_box_says_so():
    assert not fit_chart(triangle(60), 110, 170).legible
    assert fit_chart(triangle(60), 110, 170).bead < LEAST_BEAD
    assert fit_chart(triangle(30), 110, 170).legible
    assert fit_chart(triangle(30), 1, 1).bead == 0


def test_alternative_text():
    assert chart_alt(triangle(11)) == (
        "Chart of the body: 11 rows, 66 beads. Row 1, the base row, has 11 stitches and starts at the left. "
        "The rows have 1 to 11 stitches. Beads: W chalk white, B storm blue, R rowan red, G old gold.")
    assert chart_alt(diamond(2, 2, keys="WB", hand=LEFT)) == (
        "Chart of the body: 3 rows, 8 beads. Row 1, the base row, has 2 sets of 2 beads and starts at the right; "
        "1 row hangs below it. The rows have 1 to 2 sets of 2 beads. Beads: W chalk white, B storm blue.")
    assert chart_alt(piece(EARS)) == (
        "Chart of the body: 3 rows, 13 beads. Row 1, the base row, has 7 stitches and starts at the left. 2 rows stand in parts. "
        "The rows have 1 to 7 stitches. Beads: W chalk white, B storm blue.")


def test_a_piece_without_rows_is_an_empty_chart():
    from booklet.craft.piece import Piece

    empty = Piece(LEGEND, 1, RIGHT, ())
    assert Seen(chart_svg(empty)).spelt("letters") == []
    assert chart_alt(empty) == "Chart of the body, without rows."


def test_the_root_is_a_named_picture_in_true_millimetres():
    seen = Seen(chart_svg(triangle(5), bead=BEAD, prefix="june-chart"))
    width, height = chart_size(triangle(5), BEAD)
    assert seen.root.get("role") == "img" and seen.root.get("id") == "june-chart"
    assert seen.root.get("aria-label") == seen.root[0].text == chart_alt(triangle(5))
    assert float(seen.root.get("width").removesuffix("mm")) == pytest.approx(width, abs=0.001) == seen.width
    assert float(seen.root.get("height").removesuffix("mm")) == pytest.approx(height, abs=0.001) == seen.height
