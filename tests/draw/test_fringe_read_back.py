"""The fringe chart, read back from what is drawn."""

import pytest
from tests.draw.builders import LEGEND, piece, triangle, v_fringe
from tests.draw.reading import Seen

from booklet.craft.piece import LEFT, Piece
from booklet.draw.colour import contrast
from booklet.draw.fringe import fit_fringe, fringe_alt, fringe_size, fringe_svg
from booklet.draw.fringe_plan import fringe_plan
from booklet.draw.strands import end_offsets

BEAD = 3.2
MARKS = ("letters", "fives", "guides", "thread", "strand-numbers", "strand-totals", "bead-numbers")
MIXED = triangle(5, strands=("WWo>D", "WW1cW>WWWWW", "W1c>WW", "WWWWWWWWB>BGB", "W>"))
CHARTS = {
    "V with triangles": triangle(7, strands=v_fringe(7)), "mixed kinds and ends": MIXED,
    "left hand": triangle(4, hand=LEFT, strands=("WB>R", "WWB>R", "WWWB>R", "WWWWB>R")),
    "2-drop": piece("B B\nW W\n  B\n  W", drop=2, base=1, strands=("WWWWWW>B", "BBBBBBB>W")),
    "one strand": piece("W", strands=("WWBB>BBB",)), "more strands than stitches": piece("W B", strands=("W>B", "B>W", "W>W")),
    "ends only": piece("W W", strands=(">B", ">BGB")),
}


@pytest.mark.parametrize("chart", CHARTS.values(), ids=CHARTS)
def test_letters_down_a_strand_are_its_beads(chart):
    seen, pitch = Seen(fringe_svg(chart, bead=BEAD)), fringe_plan(chart, BEAD).pitch
    letters = sorted(seen.spelt("letters"), key=lambda letter: letter.y)
    assert len(letters) == sum(len(strand.all) for strand in chart.strands)
    for strand in chart.strands:
        on_line = [letter.char for letter in letters if abs(letter.x - (strand.number - 0.5) * pitch) < 0.05]
        assert tuple(on_line[:len(strand.beads)]) == strand.beads


@pytest.mark.parametrize("chart", CHARTS.values(), ids=CHARTS)
def test_there_are_as_many_blobs_as_beads(chart):
    seen = Seen(fringe_svg(chart, bead=BEAD), without=MARKS)
    blobs = seen.blobs({bead.colour for bead in chart.legend.values()}, least=1.0)
    assert len(blobs) == sum(len(strand.all) for strand in chart.strands)


@pytest.mark.parametrize("chart", CHARTS.values(), ids=CHARTS)
def test_every_bead_shows_its_colour_round_its_letter(chart):
    seen = Seen(fringe_svg(chart, bead=BEAD), without=("letters", "fives"))
    letters = Seen(fringe_svg(chart, bead=BEAD)).spelt("letters")
    assert all(seen.colour(letter.x, letter.y) == chart.legend[letter.char].colour for letter in letters)
    assert all(contrast(letter.ink, chart.legend[letter.char].colour) >= 4.5 for letter in letters)


@pytest.mark.parametrize("chart", CHARTS.values(), ids=CHARTS)
def test_strands_are_numbered_from_the_left_and_counted_below(chart):
    seen = Seen(fringe_svg(chart, bead=BEAD))
    assert [number for number, x, _ in sorted(seen.numbers("strand-numbers"), key=lambda found: found[1])] == [
        strand.number for strand in chart.strands]
    totals = sorted(seen.numbers("strand-totals"), key=lambda found: found[1])
    assert [total for total, _, _ in totals] == [len(strand.all) for strand in chart.strands]
    lowest = max(letter.y for letter in seen.spelt("letters"))
    assert max(y for _, _, y in totals) > lowest


def test_beads_of_all_kinds_have_their_own_size():
    seen = Seen(fringe_svg(MIXED, bead=6.4), without=MARKS)   # four times life size
    sizes = {key: seen.blobs([LEGEND[key].colour], least=1.0)[0][2:] for key in "Wo1Dc"}
    for key, (width, height) in sizes.items():
        kind = LEGEND[key].kind
        assert (width, height) == pytest.approx((kind.diameter * 4, kind.length * 4), abs=0.6), key


def test_no_two_strands_touch():
    seen = Seen(fringe_svg(triangle(6, strands=("WWWW>D",) * 6), bead=BEAD), without=MARKS)
    drops = sorted(seen.blobs([LEGEND["D"].colour]))
    assert len(drops) == 6
    assert all(right[0] - left[0] > (left[2] + right[2]) / 2 + 0.3 for left, right in zip(drops, drops[1:]))


def test_three_end_beads_sit_as_a_small_triangle():
    (left, low, right) = end_offsets([LEGEND["W"].kind] * 3, 0.1)
    assert left[0] == -right[0] < 0 and left[1] == right[1] < low[1] and low[0] == 0
    assert right[0] - left[0] == pytest.approx(1.7)


def test_one_end_bead_hangs_below_its_strand():
    assert end_offsets([LEGEND["W"].kind], 0.1) == [(0.0, pytest.approx(0.1 + 1.3 / 2))]


@pytest.mark.parametrize("count", [2, 4, 5, 7])
def test_other_end_beads_make_a_loop_without_overlaps(count):
    places = end_offsets([LEGEND["W"].kind] * count, 0.1)
    assert len(places) == count and min(y for _, y in places) >= 0.1 + 0.6
    assert [x for x, _ in places] == pytest.approx([-x for x, _ in reversed(places)])
    assert all((a[0] - b[0]) ** 2 + (a[1] - b[1]) ** 2 >= 1.6 ** 2 for i, a in enumerate(places) for b in places[:i])


def test_marks_stand_after_every_fifth_bead():
    chart = piece("W", strands=("W" * 12 + ">B",))
    seen, plan = Seen(fringe_svg(chart, bead=BEAD)), fringe_plan(chart, BEAD)
    step = 1.3 * plan.scale
    assert [number for number, _, _ in seen.numbers("bead-numbers")] == [5, 10]
    assert [y for _, _, y in seen.numbers("bead-numbers")] == pytest.approx([plan.start + 5 * step, plan.start + 10 * step], abs=0.01)
    assert sum(path.get("d").count("M") for path in seen.paths("fives")) == 2


def test_grey_blank_and_bounds():
    small, large = (fringe_svg(triangle(size, strands=("WBWB" * size + ">B",) * size, keys="WBG"), bead=BEAD).count("<")
                    for size in (8, 30))
    assert small == large < 40
    chart = CHARTS["V with triangles"]
    assert {letter.ink for letter in Seen(fringe_svg(chart, blank=True)).spelt("letters")} == {"#000000"}
    assert fringe_svg(chart, grey=True) == fringe_svg(chart, grey=True) != fringe_svg(chart)


def test_the_largest_scale_fits():
    chart = CHARTS["V with triangles"]
    fit = fit_fringe(chart, 60, 60)
    assert (fit.width, fit.height) == fringe_size(chart, fit.bead)
    assert fit.width <= 60 and fit.height <= 60 and fit.legible
    assert max(fringe_size(chart, fit.bead + 0.05)) > 60


def test_alternative_text():
    assert fringe_alt(triangle(7, strands=v_fringe(7))) == (
        "Fringe chart: 7 strands, numbered from the left, under the base row. Each has 13 to 19 beads, "
        "the last 3 of each being end beads. Beads: W chalk white, B storm blue, R rowan red, G old gold.")
    assert fringe_alt(triangle(3)) == "Fringe chart, without strands."


def test_a_fringe_without_a_body_is_drawn():
    chart = CHARTS["one strand"]
    lone = Piece(chart.legend, 1, "right", (), chart.strands)
    assert len(Seen(fringe_svg(lone)).spelt("letters")) == 7


def test_a_chart_grows_evenly_with_its_beads():
    """Each strand ends where the end beads of its neighbour begin, which must not depend on the last digit of a sum."""
    fringed = triangle(7, strands=tuple("W" * (10 + min(at, 6 - at)) + ">WWW" for at in range(7)))
    widths = [fringe_size(fringed, round(0.05 * step, 2))[0] for step in range(30, 121)]
    assert all(0 < after - before < 1 for before, after in zip(widths, widths[1:]))
