"""Fringes as runs and as drawings."""

import pytest
from tests.source.texts import SMALL, good, read, said, with_change

HEAD, _, REST = SMALL.partition("fringe:\n")
TAIL = REST[REST.index("hanger:"):].replace("beads: 87", "rows: 3").replace("counted: {base: 4, rows: 3, strands: 4, rows: 3}", "counted: {rows: 3}")


def fringe(text):
    return HEAD + "fringe:\n" + "".join(f"  {line}\n" for line in text.strip("\n").split("\n")) + TAIL


def strands(text):
    pattern = good(fringe(text))
    if pattern.piece:
        assert [s.beads for s in pattern.piece.strands] == [tuple(b.key for b in s.beads) for s in pattern.written_strands]
        assert [s.number for s in pattern.piece.strands] == list(range(1, len(pattern.piece.strands) + 1))
    return ["".join(b.key for b in s.beads) + ">" + "".join(b.key for b in s.end) for s in pattern.written_strands]


def test_a_strands_own_end_beads_win():
    assert strands("end: 3B\nstrands: [2W, 1W > D]") == ["WW>BBB", "W>D"]


def test_a_drawn_fringe():
    assert strands("""
end: D
chart: |
  | W B W
  | W B B
  |   B
  |   W
""") == ["WW>D", "BBBW>D", "WB>D"]
    assert strands("end: D\nchart: |\n  W B W\n  W B\n") == ["WW>D", "BB>D", "W>D"]


def test_places_of_a_drawn_fringe():
    pattern = good(fringe("end: D\nchart: |\n  | W B\n  | W\n"))
    assert [(b.mark.line, b.mark.column, b.at) for b in pattern.written_strands[0].beads] == [(29, 7, 1), (30, 7, 1)]
    assert pattern.mark("strand", 2) == pattern.written_strands[1].beads[0].mark


@pytest.mark.parametrize(("written", "all"), [
    (["1W"], "1"), (["1W", "2W"], "1221"), (["1W", "2W", "3W"], "12321"), (["1W", "2W", "3W", "4W"], "1234321")])
def test_mirrored_strands_on_four_base_stitches(written, all):
    """k strands make 2k - 1, or 2k where the base row has exactly that many stitches: 4 here."""
    assert [len(s) - 2 for s in strands(f"end: B\nmirror: true\nstrands: [{', '.join(written)}]")] == [int(n) for n in all]
    columns = "\n".join("  | " + " ".join("W" if depth < n else " " for n in range(1, len(written) + 1)).rstrip() for depth in range(len(written)))
    assert [len(s) - 2 for s in strands(f"end: B\nmirror: true\nchart: |\n{columns}")] == [int(n) for n in all]


def test_mirrored_strands_share_their_marks():
    first, second, third, fourth = good(fringe("end: B\nmirror: true\nstrands: [1W, 2W]")).written_strands
    assert (first, second) == (fourth, third)


def test_end_beads_may_be_missing_for_a_rule_to_find():
    assert strands("strands: [2W]") == ["WW>"]


@pytest.mark.parametrize(("text", "lines"), [
    ("end: 3B", ["27:3: error: fringe.strands is missing (list the strands, or draw them as chart:, or delete fringe:) [missing-field]"]),
    ("strands: []", ["27:12: error: fringe.strands is empty (list the strands, or delete fringe:) [empty-value]"]),
    ("strands: [2W]\nchart: |\n  | W\n", ["28:10: error: the fringe is given twice, by strands and by a chart (keep one of them) [needless-field]"]),
    ("end: 3B > D\nstrands: [2W]", ["27:11: error: > begins end beads, and none belong here [bad-run-text]"]),
    ("end: B\nstrands: [2W, 3?, '', {a: b}, 4W(]",
     ["28:21: error: fringe.strands.3 is empty (give it a value or delete it) [empty-value]",
      "28:26: error: the field 'a' is not known in fringe.strands.4 [unknown-field]",
      "28:17: error: the count 3 has no bead key (write the key right after it, as in 3W) [bad-run-text]",
      "28:35: error: this parenthesis is never closed [bad-run-text]"]),
    ("end: B\nchart: |\n  | W B\n  |    W", ["30:10: error: this W hangs under no bead of the first line (the first line has a bead of every "
                                                   "strand, and a strand runs straight down) [bad-chart-text]"]),
    ("end: B\nchart: |\n  | W B\n  | W\n  | W W", ["31:9: error: this W comes after a blank in its strand (a strand ends where it is blank) "
                                                  "[bad-chart-text]"]),
    ("end: B\nchart: |\n  1 | W B\n  2 | W", ["29:5: error: '1' stands before the bar (in a fringe chart nothing may stand there) [bad-chart-text]",
                                             "30:5: error: '2' stands before the bar (in a fringe chart nothing may stand there) [bad-chart-text]"]),
    ("end: B\nstrands: 2W", ["28:12: error: fringe.strands must be a list; found '2W' [wrong-type]"]),
    ("mirror: yes\nend: B\nstrands: [2W]", ["27:11: error: fringe.mirror must be true or false; found 'yes' [unknown-choice]"]),
])
def test_error_fringe(text, lines):
    assert said(fringe(text)) == [f"a.yaml:{line}" for line in lines]
    assert read(fringe(text))[0].piece is None


def test_error_too_many_strands():
    assert said(fringe(f"end: B\nstrands: [{', '.join(['W'] * 401)}]")) == [
        "a.yaml:28:12: error: fringe.strands may have up to 400 entries; found 401 [too-large]"]


def test_no_fringe_at_all():
    pattern = good(HEAD + TAIL)
    assert pattern.written_strands == () and pattern.piece.strands == ()


def test_error_fringe_that_is_no_fringe():
    text = with_change("fringe:\n", "fringe: none\nold:\n")
    assert said(text) == ["a.yaml:26:9: error: fringe must be a group of fields; found 'none' [wrong-type]",
                          "a.yaml:27:1: error: the field 'old' is not known [unknown-field]"]
    assert read(text)[0].piece is None
