"""Chart text of peyote, square stitch and loom work."""

import pytest
from tests.source.texts import good, said, with_chart


def chart(text, stitch="peyote", drop=1):
    return with_chart(text, drop).replace("stitch: brick", f"stitch: {stitch}")


def rows(pattern):
    return [(row.number, row.direction, row.first, ["".join(stitch.beads) for stitch in row.stitches]) for row in pattern.piece.rows]


def test_a_line_of_a_peyote_chart_is_a_row():
    pattern = good(chart("""
4 | W B W
3 |  B B D
2 | W W W
1 |  B D D
"""))
    assert pattern.piece.stitch == "peyote"
    assert rows(pattern) == [(1, "right", 2, ["B", "D", "D"]), (2, "right", 1, ["W", "W", "W"]),
                             (3, "left", 2, ["B", "B", "D"]), (4, "right", 1, ["W", "B", "W"])]


def test_the_beads_of_a_peyote_set_lie_side_by_side_and_are_listed_from_the_left():
    pattern = good(chart("""
4 | WB  DD
3 |   BW  DB
2 | WW  BB
1 |   BD  WB
""", drop=2))
    assert pattern.drop == 2 and rows(pattern) == [(1, "right", 2, ["BD", "WB"]), (2, "right", 1, ["WW", "BB"]),
                                                   (3, "left", 2, ["BW", "DB"]), (4, "right", 1, ["WB", "DD"])]
    assert [len(row.lines) for row in pattern.chart.rows] == [2, 2, 2, 2]


@pytest.mark.parametrize(("stitch", "directions"), [("square", ["right", "left", "right"]), ("loom", ["right"] * 3)])
def test_square_and_loom_are_plain_grids(stitch, directions):
    pattern = good(chart("3 | W B\n2 | B B D\n1 | W B D" if stitch == "loom" else "3 | W B\n2 | B B D\n1 | W B D", stitch))
    assert [row.direction for row in pattern.piece.rows] == directions
    assert rows(pattern)[0] == (1, "right", 1, ["W", "B", "D"])


def test_a_fault_is_found_at_its_bead():
    text = chart("4 | W  B\n3 |  BB\n2 | W W\n1 |  B B").replace("  drop: 1\n", "")
    start = text[:text.index("4 | W")].count("\n") + 1
    assert said(text) == [
        f"a.yaml:{start}:12: error: W and B begin 3 characters apart (two neighbours of a row begin 2 characters apart) [bad-chart-text]",
        f"a.yaml:{start + 1}:10: error: 2 beads stand here side by side, but drop is 1 (two neighbours of a row stand two characters apart) [bad-chart-text]"]


@pytest.mark.parametrize(("line", "message"), [
    ("2 | WW  B", "1 bead stands here side by side, but drop is 2 (the 2 beads of a set stand without a space, with 2 spaces before the next set)"),
    ("2 | WW WB", "W and W begin 3 characters apart (two neighbours of a row begin 4 characters apart)"),
    ("2 |  WW  BB", "the sets of this row stand between two columns (a row begins a multiple of 2 characters from the leftmost one)"),
])
def test_error_sets_that_do_not_stand_in_columns(line, message):
    (found,) = said(chart(f"{line}\n1 | BD  WB  DD", drop=2))
    assert f": error: {message} [bad-chart-text]" in found


@pytest.mark.parametrize(("stitch", "name"), [("square", "square stitch"), ("loom", "loom work")])
def test_error_one_bead_a_stitch(stitch, name):
    text = chart("2 | WW\n1 | WW", stitch, drop=2)
    line = text[:text.index("drop: 2")].count("\n") + 1
    assert said(text) == [f"a.yaml:{line}:9: error: body.drop is 2, but {name} has one bead a stitch (leave drop out) [unknown-choice]"]


def test_error_a_bead_that_is_not_in_the_legend_leaves_no_piece():
    from tests.source.texts import read

    assert read(chart("2 | X\n1 | W", "loom"))[0].piece is None
