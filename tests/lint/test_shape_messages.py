"""Rules about the likely slips of a shape: symmetry, steps of widths and lengths, lone beads."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from booklet.lint.mirrors import differing
from booklet.lint.progressions import is_regular, odd_one, swapped
from tests.lint.books import found

FILE = "patterns/morning-cloud.yaml"
HALVES = "(the two halves of the chart are mirror pictures everywhere else) [chart-nearly-symmetric]"
UPRIGHT = "(the rows above and below the base row are mirror pictures everywhere else) [chart-nearly-symmetric]"
STEP = "[strand-length-out-of-step]"


def chart(*rows, head=""):
    return f"body:\n{head}  chart: |\n" + "".join(f"      | {row}\n" for row in rows)


def fringe(*strands):
    base = len(strands)
    return chart(" " + " ".join("B" * (base - 1)), " ".join("W" * base)) + f"fringe:\n  end: 1B\n  strands: [{', '.join(strands)}]\n"


MOTIF = ["     W W W", "    W B B W", "   W B W B W", "  W B W W B W", " W B W B W B W", "W B W W W W B W"]


def changed(row, column, key):
    rows = list(MOTIF)
    rows[row] = rows[row][:column] + key + rows[row][column + 1:]
    return chart(*rows)


def test_a_mirror_picture_is_no_finding(tmp_path):
    assert found(tmp_path, chart(*MOTIF)) == []


def test_error_chart_nearly_symmetric(tmp_path):
    assert found(tmp_path, changed(3, 10, "W")) == [
        f"{FILE}:14:13: warning: stitch 2 of row 3 is B, but stitch 5 of row 3 is W {HALVES}"]


def test_error_a_stitch_without_its_like(tmp_path):
    lines = found(tmp_path, chart(*MOTIF[:-1], MOTIF[-1][:-2]) + "fringe: {end: 1B, strands: [2W, 2W, 2W, 2W, 2W, 2W, 2W]}\n")
    assert f"{FILE}:16:9: warning: stitch 1 of row 1 is W, but there is no bead opposite it {HALVES}" in lines


@pytest.mark.parametrize(("line", "said"), [
    (4, "16:12: warning: the upper bead of stitch 2 of row 2 is W, but the upper bead of stitch 4 of row 2 is B"),
    (5, "17:12: warning: the lower bead of stitch 2 of row 2 is W, but the lower bead of stitch 4 of row 2 is B")])
def test_error_the_bead_of_a_set_is_named(tmp_path, line, said):
    rows = [row[2:] for row in MOTIF[:4] for _ in range(2)]
    rows[line] = rows[line].replace("W B", "W W", 1)
    assert found(tmp_path, chart(*rows, head="  drop: 2\n")) == [f"{FILE}:{said} {HALVES}"]


def test_error_nearly_symmetric_top_to_bottom(tmp_path):
    rows = ["   W B W", "  W B B W", " W B W B W", "W B B B B W", " W B B B W", "  W B B W", "   W B W"]
    assert found(tmp_path, chart(*rows, head="  base: widest\n")) == [
        f"{FILE}:16:14: warning: stitch 3 of row 5 is B, but stitch 3 of row 2 is W {UPRIGHT}"]


def test_a_star_that_stands_alone_is_meant(tmp_path):
    red = '  R: {name: rust, colour: "#c45a45", finish: matte, kind: cylinder 11/0}\n'
    beads = '  W: {name: chalk white, colour: "#f4f1ea", finish: matte, kind: cylinder 11/0}\n  B: {name: storm blue, colour: "#3d5a80", finish: lustre, kind: cylinder 11/0}\n'
    rows = [*MOTIF[:3], "  W R W W B W", " W B W B W R W", MOTIF[-1]]
    assert found(tmp_path, f"beads:\n{beads}{red}" + chart(*rows)) == []


def test_a_plain_ground_with_a_few_beads_is_no_mirror_picture(tmp_path):
    assert found(tmp_path, chart("     W W W", "    W W B W", "   W W W W W", "  W B W W W W", " W W W W W W W")) == []


def test_error_fringe_nearly_symmetric(tmp_path):
    assert found(tmp_path, fringe("6W 2B", "9W 3B", "12W 4B", "13W", "12W 4B", "9W 2B", "6W 2B")) == [
        f"{FILE}:15:48: warning: strand 6 differs by one bead from strand 2 opposite it (all other strands are like those opposite them) "
        "[fringe-nearly-symmetric]"]


@pytest.mark.parametrize(("strands", "said"), [
    ("4W 6W 8W 11W 12W 14W", "15:25: warning: strand 4 has 12 beads; the other strands step evenly as if it had 11"),
    ("4W 8W 6W 10W 12W 14W 16W", "15:17: warning: strands 2 and 3 have 9 and 7 beads; the other strands step evenly as if these two had changed places"),
    ("4W 14W 8W 10W 12W 6W 16W", "15:17: warning: strands 2 and 6 have 15 and 7 beads; the other strands step evenly as if these two had changed places"),
    ("4W 6W 8W 11W 12W 14W 14W 12W 11W 8W 6W 4W", "15:25: warning: strand 4 has 12 beads; the other strands step evenly as if it had 11"),
    ("5W 5W 5W 5W 5W 4W", "15:33: warning: strand 6 has 5 beads; the other strands step evenly as if it had 6"),
    ("4W 6W 8W 10W 8W 6W 3W 2W", "15:38: warning: strand 7 has 4 beads; the other strands step evenly as if it had 5"),
    ("9W 5W 9W 5W 9W 6W 9W 5W 9W 5W", "15:33: warning: strand 6 has 7 beads; the other strands step evenly as if it had 6"),
    ("4W 9W 7W 12W 3W 12W 7W 9W 8W", "15:47: warning: strand 9 has 9 beads and strand 1 opposite it 5; all other strands are as long as those opposite them"),
])
def test_error_strand_length_out_of_step(tmp_path, strands, said):
    assert found(tmp_path, fringe(*strands.split())) == [f"{FILE}:{said} {STEP}"]


@pytest.mark.parametrize("strands", ["4W 7W 8W 7W 6W 4W", "4W 6W 8W", "3W 9W 4W 12W 6W 2W 11W", "4W 6W 8W 10W 10W 8W 6W 4W", "8W 4W 7W 4W 6W 4W 5W 4W 4W 4W"])
def test_lengths_that_are_regular_or_free_are_no_finding(tmp_path, strands):
    assert found(tmp_path, fringe(*strands.split())) == []


@given(st.integers(-3, 3).filter(bool), st.integers(6, 15), st.data())
def test_the_one_odd_length_of_a_progression_is_found(step, count, data):
    numbers = [60 + step * index for index in range(count)]
    at, by = data.draw(st.integers(0, count - 1)), data.draw(st.sampled_from([-1, 1, 20]))
    slip = [*numbers[:at], numbers[at] + by, *numbers[at + 1:]]
    assert is_regular(numbers) and not odd_one(numbers) and swapped(numbers) is None
    found = odd_one(slip)
    assert is_regular(slip) or found is not None and is_regular([*slip[:found[0]], found[1], *slip[found[0] + 1:]])


@given(st.text("WB", max_size=12), st.text("WB", max_size=12))
def test_as_many_beads_differ_as_must_be_changed_to_make_them_equal(one, other):
    count = differing(tuple(one), tuple(other))
    assert count == differing(tuple(other), tuple(one)) and (count == 0) == (one == other) and count <= max(len(one), len(other))


@pytest.mark.parametrize(("rows", "said"), [
    (["W B B W", " W B B W", "W B B W", " W B B", "W B B W", " W B B W", "W B B W"],
     "row 4 has 3 stitches; the right edge of the rows around it goes in and out by turns, and here not"),
    (["W B B W", " W B B W", "W B B W", " W B B W", "W B B W", "   B B W", "W B B W"],
     "row 2 has 3 stitches; the left edge of the rows around it goes in and out by turns, and here not"),
    (["W B B W", " W B B W", "W B B W", " W B B W", "W B B W", " W B B W", "W B B W", " W B B", "W B B W", " W B B W"],
     "row 3 has 3 stitches; the right edge of the rows around it goes in and out by turns, and here not"),
    ([" W B B W", "  W B B W", " W B B W", "W B B W", " W B B W", "  W B B W", " W B B W"],
     "row 4 has 4 stitches; both edges of the rows around it go in and out by turns, and here not"),
    (["      B W", "     B B B", "    W W W W", "   W W W W W", "    W W W W", "   W W W W W", "  W W W W W W", " W W W W W W W", "W W W W W W W W"],
     "row 6 has 1 stitch more than row 5; all other rows from the bottom up have 1 stitch less than the one below"),
])
def test_error_row_width_out_of_step(tmp_path, rows, said):
    (line,) = found(tmp_path, chart(*rows))
    assert line.split(": warning: ")[1] == f"{said} [row-width-out-of-step]"


def test_a_row_near_an_end_that_is_narrower_at_both_edges_may_be_meant(tmp_path):
    assert found(tmp_path, chart("W B B B W", " W B B W", "W B B B W", " W B B W", "W B B B W", " W B B W", "W B B B W", "   B B", "W B B B W")) == []


def test_error_lone_bead(tmp_path):
    red = '  R: {name: rust, colour: "#c45a45", finish: matte, kind: cylinder 11/0}\n'
    beads = '  W: {name: chalk white, colour: "#f4f1ea", finish: matte, kind: cylinder 11/0}\n  B: {name: storm blue, colour: "#3d5a80", finish: lustre, kind: cylinder 11/0}\n'
    rows = [*MOTIF[:3], "  W R W W B W", *MOTIF[4:]]
    assert found(tmp_path, f"beads:\n{beads}{red}" + chart(*rows)) == [
        f"{FILE}:15:13: note: this is the only bead R (rust) of the piece [lone-bead]"]


def test_error_stray_bead(tmp_path):
    rows = ["   W W W", "  W W B W", " W W W W W", "B B B B B B"]
    sets = [row for row in rows for _ in range(2)]
    assert found(tmp_path, chart("     W W W", "    W W W W", "   W W W B W", "  W W W W W W", " B B B B B B B")) == [
        f"{FILE}:13:18: note: stitch 4 of row 3 is B and lies alone among W, as no other bead of the body does [stray-bead]"]
    assert found(tmp_path, chart(*sets[:3], "  W W W W", *sets[4:], head="  drop: 2\n")) == [
        f"{FILE}:14:15: note: the upper bead of stitch 3 of row 3 is B and lies alone among W, as no other bead of the body does [stray-bead]"]


def test_beads_that_lie_alone_in_numbers_or_in_the_middle_are_meant(tmp_path):
    assert found(tmp_path, chart("     W W W", "    W B W W", "   W W W B W", "  W W W W W W", " B B B B B B B")) == []
    assert found(tmp_path, chart("     W W W", "    W W W W", "   W W B W W", "  W W W W W W", " B B B B B B B")) == []
ODD = ["W B W W B W", " B W B W B"] * 3 + ["W B W W B W"]


def test_error_nearly_symmetric_peyote(tmp_path):
    assert "symmetric" not in str(found(tmp_path, chart(*ODD, head="  stitch: peyote\n")))
    lines = found(tmp_path, chart(*ODD[:3], " B W B B B", *ODD[4:], head="  stitch: peyote\n"))
    assert lines == [f"{FILE}:15:12: warning: stitch 2 of row 4 is W, but stitch 4 of row 4 is B {HALVES}"]


def test_an_even_count_of_peyote_has_no_mirror_picture(tmp_path):
    assert not [line for line in found(tmp_path, chart("W B B W", " W B B W", "W B B W", " W B B W", head="  stitch: peyote\n")) if "symmetric" in line]


def test_error_the_bead_of_a_set_that_lies_is_named(tmp_path):
    rows = ["WB  WB  BW  BW", "  WB  WW  BW", "WB  BW  WB  BW", "  WB  WW  BW", "WB  WB  BW  BW"]
    lines = found(tmp_path, chart(*rows[:3], "  WB  WW  WW", rows[4], head="  stitch: peyote\n  drop: 2\n"))
    assert f"{FILE}:16:19: warning: the left bead of stitch 3 of row 2 is W, but the right bead of stitch 1 of row 2 is B {HALVES}" in lines


@pytest.mark.parametrize(("row", "side"), [("    B W W B", "right"), ("B W W B", "left")])
def test_error_row_off_centre(tmp_path, row, side):
    chart = f"body:\n  chart: |\n    5 |     B B\n    4 |    B W B\n    3 | {row}\n    2 |  B W W W B\n    1 | B W W W W B\n"
    assert f"{FILE}:13:9: warning: row 3 lies 1 stitch too far to the {side}; all other rows lie evenly about one middle [row-off-centre]".replace(
        ":9:", f":{8 + len(row) - len(row.lstrip()) + 1}:") in found(tmp_path, chart)


def test_a_body_that_leans_or_has_one_stitch_more_on_one_side_is_meant(tmp_path):
    for rows in (("B B B B", " B B B B", "  B B B B", "   B B B B", "    B B B B"), ("  B B", " B B B", "B B B B", " B B B B", "B B B B B")):
        chart = "body:\n  chart: |\n" + "".join(f"    {number} | {row}\n" for number, row in zip(range(5, 0, -1), rows))
        assert not any("row-off-centre" in line for line in found(tmp_path, chart))


def test_error_rows_out_of_order(tmp_path):
    steps = chart("       B", "      B B", "   B B B B B", "    B B B B", "     B B B", "  B B B B B B", " B W B W B W B")
    assert [line for line in found(tmp_path, steps) if "[rows-out-of-order]" in line] == [
        f"{FILE}:13:12: warning: rows 3 and 5 seem to have changed places: the other way round the rows would widen and narrow evenly [rows-out-of-order]"]


def test_error_rows_out_of_order_on_one_side_of_the_base_row(tmp_path):
    half = ["B B B B B B", " B B W B B", "B B W W B B", " W B B B W", "B W B B W B"]
    swapped = [half[2], half[1], half[0], *half[3:]]
    text = "body:\n  base: 6\n  chart: |\n" + "".join(f"     | {row}\n" for row in (*swapped[::-1], " W W W W W", *half))
    lines = [line.partition(": warning: ")[2] for line in found(tmp_path, text) if "[rows-out-of-order]" in line]
    assert lines == ["rows 2 and 4 seem to have changed places: the other way round the rows above and below the base row would be mirror pictures [rows-out-of-order]"]
