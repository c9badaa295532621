"""Fringes as runs and as drawings."""

import pytest
from tests.source.texts import SMALL, good, read, said, with_change

from booklet.craft.strand import Charm, Twig

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
    assert (first.mark, second.mark) == (fourth.mark, third.mark)
    assert (first.beads, second.beads) == (fourth.beads, third.beads)


def test_end_beads_may_be_missing_for_a_rule_to_find():
    assert strands("strands: [2W]") == ["WW>"]


@pytest.mark.parametrize(("text", "lines"), [
    ("end: 3B", ["27:3: error: fringe.strands is missing (list the strands, or draw them as chart:, or delete fringe:) [missing-field]"]),
    ("strands: []", ["27:12: error: fringe.strands is empty (list the strands, or delete fringe:) [empty-value]"]),
    ("strands: [2W]\nchart: |\n  | W\n", ["28:10: error: the fringe is given twice, by strands and by a chart (keep one of them) [needless-field]"]),
    ("end: 3B > D\nstrands: [2W]", ["27:11: error: > begins end beads, and none belong here [bad-run-text]"]),
    ("end: B\nstrands: [2W, 3?, '', {a: b}, 4W(]",
     ["28:21: error: fringe.strands.3 is empty (write the strand, or ~ to leave its place empty) [empty-value]",
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


def made(text):
    return good(fringe(text)).piece.strands


def test_places_may_stay_empty():
    pattern = good(fringe("end: B\nstrands:\n  - 2W\n  - ~\n  - '~'\n  - 3W > D"))
    assert [(strand.number, strand.beads, strand.end) for strand in pattern.piece.strands] == [(1, ("W",) * 2, ("B",)), (4, ("W",) * 3, ("D",))]
    assert pattern.fringe_places == 4 and pattern.mark("strand", 4).line == 32


def test_loops_and_twisted_pairs():
    first, second, third, fourth = made("""
end: D
strands:
  - {loop: 9W}
  - {loop: 9W 2B, to: after}
  - {twist: 8W, second: 8B}
  - {twist: 2W 1B > 2B}""")
    assert (first.kind, first.to, first.beads, first.end) == ("loop", 1, ("W",) * 9, ())
    assert (second.to, second.beads) == (2, tuple("WWWWWWWWWBB"))
    assert (third.kind, third.beads, third.end, third.second) == ("twist", ("W",) * 8, ("D",), ("B",) * 8)
    assert (fourth.end, fourth.second) == (tuple("BB"), tuple("WWB"))   # the second line is like the first


def test_twigs_and_charms_keep_their_order():
    text = "end: '2B {moon} 2B'\nstrands:\n  - 2(2W {ring} [3B > 1D]) W\n  - 2W [{ring} B > {moon}] {ring}\n  - W\n  - W > D"
    first, second, third, fourth = made(text)
    assert first.beads == ("W",) * 5 and first.end == ("B",) * 4
    assert first.hung == (Charm(2, "ring"), Twig(2, tuple("BBB"), ("D",)), Charm(4, "ring"), Twig(4, tuple("BBB"), ("D",)))
    assert first.turned == third.turned == (Charm(2, "moon"),) and fourth.turned == ()
    assert second.hung == (Twig(2, ("B",), (), (Charm(0, "ring"),), (Charm(0, "moon"),)), Charm(2, "ring"))
    assert "".join(first.all) == "WWBBBDWWBBBDWBBBB"


def test_mirrored_fringes_keep_empty_places_and_turn_loops_round():
    strands = made("end: B\nmirror: true\nstrands:\n  - {loop: 2W 1B}\n  - ~")
    assert [(s.number, s.to, s.beads) for s in strands] == [(1, 1, tuple("WWB")), (4, -1, tuple("WWB"))]
    strands = made("end: B\nhang: bridges\nmirror: true\nstrands: [2W, 3W]")
    assert [(s.number, len(s.beads)) for s in strands] == [(1, 2), (2, 3), (3, 2)]   # 3 bridges under 4 stitches


@pytest.mark.parametrize(("text", "line"), [
    ("hang: sides\nend: B\nstrands: [2W]", "27:9: error: fringe.hang must be base, lowest, edge or bridges; found 'sides' (did you mean bridges?) [unknown-choice]"),
    ("strands:\n  - {to: next}", "28:7: error: fringe.strands.1 must have either loop or twist (a straight strand is run text alone) [missing-field]"),
    ("strands:\n  - {loop: W, twist: B}", "28:7: error: fringe.strands.1 must have either loop or twist (a straight strand is run text alone) [missing-field]"),
    ("strands:\n  - {loop: W, second: B}", "28:25: error: fringe.strands.1.second belongs to a twist (delete it) [needless-field]"),
    ("strands:\n  - {twist: W, to: next}", "28:22: error: fringe.strands.1.to belongs to a loop (delete it) [needless-field]"),
    ("strands:\n  - {loop: W, to: last}", "28:21: error: fringe.strands.1.to must be next or after; found 'last' [unknown-choice]"),
    ("strands:\n  - {loop: 2W > B}", "28:17: error: > begins end beads, and none belong here [bad-run-text]"),
    ("strands:\n  - {loop: '2W [B > B]'}", "28:18: error: a twig cannot hang here (twigs hang on straight strands) [bad-run-text]"),
    ("strands:\n  - {twist: '2W [B > B]'}", "28:19: error: a twisted pair bears neither twigs nor charms, but for charms among its end beads [bad-run-text]"),
    ("strands:\n  - {twist: '> B'}", "28:15: error: a line of a twisted pair has no beads [bad-run-text]"),
    ("strands:\n  - {loop: '{ring}'}", "28:14: error: a loop without beads [bad-run-text]"),
    ("end: '[W > B]'\nstrands: [W]", "27:9: error: a twig cannot hang here (twigs hang on straight strands) [bad-run-text]"),
    ("end: B\nmirror: true\nstrands: [W, W, {loop: 3W}]", "29:26: error: the middle strand is a loop, so the fringe is not alike on both sides "
     "(write the strands of both sides, without mirror: true) [bad-run-text]"),
])
def test_error_kinds_of_strands(text, line):
    assert said(fringe(text)) == [f"a.yaml:{line}"]
    assert read(fringe(text))[0].piece is None


def test_a_finding_without_a_number_is_counted_from_the_strands():
    text = fringe("end: B\nstrands: ['W > {star}', W, 'W > {star}', W]").replace("  - {item: thread guard, size: 4 mm, each: 1}\n",
                                                                             "  - {item: star, size: 12 x 9 mm}\n  - {item: thread guard}\n")
    pattern = good(text)
    assert [(item.item, item.each) for item in pattern.findings_list] == [("star", 2), ("thread guard", 1), ("lever-back ear wire", 1)]
    assert pattern.piece.charms["star"] == 12.0
