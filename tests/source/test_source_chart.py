"""Chart text to rows, and what is said about charts that cannot be read."""

import pytest
from tests.source.texts import good, grid, read, said, with_chart, written

from booklet.source.chart import read_chart


def rows(chart):
    return [(row.number, row.level, row.direction, "".join(bead for stitch in row.stitches for bead in stitch.beads), row.first)
            for row in chart.piece.rows]


def test_rows_of_one_bead():
    pattern = good(with_chart("""
3 |   W
2 |  B W
1 | W B B
"""))
    assert grid(pattern.chart) == ["   W", "  B W", " W B B"]
    assert rows(pattern) == [(1, 0, "right", "WBB", 1), (2, 1, "left", "BW", 2), (3, 2, "right", "W", 3)]


def test_sets_are_listed_from_low_to_high():
    pattern = good(with_chart("""
2 |  W B
  |  B B
1 | W W W
  | B B W
""", drop=2))
    assert rows(pattern) == [(1, 0, "right", "BWBWWW", 1), (2, 1, "left", "BWBB", 2)]


def test_bars_and_numbers_may_be_left_out():
    assert rows(good(with_chart("W B W\n W B"))) == [(1, 0, "right", "WB", 1), (2, 1, "left", "WBW", 0)]
    assert rows(good(with_chart("  |  W B\n  | W B W"))) == [(1, 0, "right", "WBW", 1), (2, 1, "left", "WB", 2)]


def test_blank_lines_and_spaces_at_the_end_do_not_count():
    assert grid(good(with_chart("2 |  W B   \n\n     \n1 | W B W  ")).chart) == ["  W B", " W B W"]


def test_keys_differ_by_case():
    assert grid(good(with_chart("1 | w W 7").replace("  W:", "  w: {name: x, colour: \"#fff\", finish: matte, kind: round 8/0}\n"
                                                     "  7: {name: y, colour: \"#fff\", finish: matte, kind: round 8/0}\n  W:")).chart) == [" w W 7"]


@pytest.mark.parametrize(("base", "numbers"), [("bottom", (3, 2, 1)), ("widest", (2, 1, 3)), ("2", (2, 1, 3)), ("3", (1, 2, 3))])
def test_base_rows(base, numbers):
    text = with_chart("  |  W B\n  | W B W\n  |  B W").replace("base: bottom", f"base: {base}")
    pattern = good(text)
    assert pattern.chart.numbers(pattern.base) == numbers
    assert [row.number for row in sorted(pattern.piece.rows, key=lambda row: -row.level)] == list(numbers)
    for row in pattern.piece.rows:
        drawn = pattern.chart.rows[numbers.index(row.number)]
        assert pattern.mark("row", row.number) == drawn.mark and "".join(b.key for b in drawn.lines[0]) == "".join(s.beads[0] for s in row.stitches)


def test_of_equally_wide_rows_the_lowest_is_the_base():
    text = with_chart("  |  W B\n  | W B W\n  |  B W B\n  |   B W").replace("base: bottom", "base: widest")
    assert good(text).chart.numbers("widest") == (3, 2, 1, 4)


def test_a_row_with_a_gap_is_not_the_widest():
    text = with_chart("  | W B       B W\n  |  W B W B W B\n  |   B W B W B").replace("base: bottom", "base: widest")
    assert good(text).chart.numbers("widest") == (2, 1, 3)


def test_lower_rows_are_turned():
    text = with_chart("2 | W B W\n  | B B B\n1 |W B W B\n  |B W B W\n3 | W W W\n  | B B B", drop=2).replace("base: bottom", "base: 2")
    pattern = good(text)
    assert rows(pattern)[2] == (3, -1, "right", "WBWBWB", 1)   # its upper bead is next to the base row
    assert [row.written for row in pattern.chart.rows] == [2, 1, 3]


def test_places():
    pattern = good(with_chart("12 |  W B\n 1 | W B W"))
    upper, lower = pattern.chart.rows
    assert [(bead.mark.line, bead.mark.column, bead.at) for bead in lower.lines[0]] == [(20, 10, 1), (20, 12, 3), (20, 14, 5)]
    assert (upper.number_mark.line, upper.number_mark.column, upper.number_mark.width) == (19, 5, 2)
    assert (lower.mark.line, lower.mark.column, lower.mark.width) == (20, 10, 5)


def test_a_chart_in_quotes():
    chart, found = read_chart(written('a: "2 |  W B\\n1 | W B W"\n', "a"), 1)
    assert found == [] and grid(chart) == ["  W B", " W B W"]
    assert [bead.mark.column for bead in chart.rows[1].lines[0]] == [19, 21, 23]


CASES = {
    "1 | W ? B": ["19:11: error: '?' may not stand in the chart (only spaces and bead keys stand after the bar) [bad-chart-text]"],
    "1 | W | B": ["19:11: error: '|' may not stand in the chart (only spaces and bead keys stand after the bar) [bad-chart-text]"],
    "1 | W é B": ["19:11: error: 'é' may not stand in the chart (only spaces and bead keys stand after the bar) [bad-chart-text]"],
    "1 |\tW B": ["19:8: error: a tab stands in the chart (use spaces) [tab-in-chart]"],
    "1\t| W B": ["19:6: error: a tab stands in the chart (use spaces) [tab-in-chart]"],
    "2 |  W B\n\t\n1 | W B W": ["20:5: error: a tab stands in the chart (use spaces) [tab-in-chart]"],
    "1 | W WB W": ["19:12: error: W and B stand 1 character apart (two neighbours of a row stand two characters apart) [bad-chart-text]"],
    "1 | W  W": ["19:12: error: W and W stand 3 characters apart (two neighbours of a row stand two characters apart) [bad-chart-text]"],
    "2 |  W B\n    W B W": ["20:9: error: this line of the chart has no bar (put a bar | before the drawing of every line) [bad-chart-text]"],
    "2 |  W B\n1  | W B W": ["20:8: error: this bar does not stand under the bar of the first line (the drawing is read from the bar on) "
                             "[bad-chart-text]"],
    "x |  W B\n1 | W B W": ["19:5: error: 'x' stands before the bar (only a row number may stand there) [bad-chart-text]"],
    "-1 |  W B\n 1 | W B W": ["19:5: error: '-1' stands before the bar (only a row number may stand there) [bad-chart-text]"],
    "2 |\n1 | W B W": ["19:7: error: this line of the chart has no bead [bad-chart-text]"],
    "2 |  W ?\nx | W B\tW": ["19:12: error: '?' may not stand in the chart (only spaces and bead keys stand after the bar) [bad-chart-text]",
                            "20:5: error: 'x' stands before the bar (only a row number may stand there) [bad-chart-text]",
                            "20:12: error: a tab stands in the chart (use spaces) [tab-in-chart]"],
    "\n".join(["| W"] * 1001): ["18:10: error: a chart may have up to 1,000 lines of up to 400 characters [too-large]"],
    "| " + "W " * 300: ["18:10: error: a chart may have up to 1,000 lines of up to 400 characters [too-large]"],
}


@pytest.mark.parametrize("chart", CASES)
def test_error_in_a_chart(chart):
    text = with_chart(chart)
    assert said(text) == ["a.yaml:" + line for line in CASES[chart]]
    assert read(text)[0].piece is None


def test_error_a_lost_line_is_one_fault():
    text = with_chart("3 |  W B\n  |  W B\n2 | W B W\n1 |W B W B\n  |W B W B", drop=2)
    assert said(text) == ["a.yaml:21:9: error: this row has 1 line, but drop is 2 (draw 2 lines for every row, upper beads first) [bad-chart-text]"]


def test_error_lines_that_are_no_multiple_of_drop():
    text = with_chart("|  W B\n|  W B\n| W B W", drop=2)
    assert said(text) == ["a.yaml:21:7: error: this row has 1 line, but drop is 2 (draw 2 lines for every row, upper beads first) [bad-chart-text]"]


def test_error_many_slips_in_one_chart():
    found = said(with_chart("1 | " + "? " * 60))
    assert len(found) == 21 and found[-1] == "a.yaml:19:49: error: and more like these in this chart [bad-chart-text]"


def test_error_a_folded_chart():
    text = with_chart("| W B W\n| B W B").replace("chart: |", "chart: >")
    assert said(text) == ["a.yaml:18:10: error: the lines of the chart run together (write chart: | and the drawing on the lines after it) "
                          "[bad-chart-text]"]


@pytest.mark.parametrize(("base", "line"), [
    ("4", "17:9: error: body.base is row 4 from the bottom, but the chart has 3 rows [no-such-row]"),
    ("top", "17:9: error: body.base must be bottom, widest or a row counted from the bottom; found 'top' [unknown-choice]"),
    ("wides", "17:9: error: body.base must be bottom, widest or a row counted from the bottom; found 'wides' (did you mean widest?) [unknown-choice]"),
])
def test_error_base(base, line):
    text = with_chart("|  W B\n| W B W\n|  W B").replace("base: bottom", f"base: {base}")
    assert said(text) == [f"a.yaml:{line}"]


def test_what_was_drawn_is_kept_where_it_is_no_piece():
    pattern, found = read(with_chart("2 |  W Q\n1 | W B W"))
    assert found == [] and pattern.piece is None and grid(pattern.chart) == ["  W Q", " W B W"] and not pattern.chart.broken
    pattern, found = read(with_chart("2 |  W B\n  |  W\n1 | W B W\n  | W B W", drop=2))
    assert found == [] and pattern.piece is None and grid(pattern.chart)[:2] == ["  W B", "  W"]
