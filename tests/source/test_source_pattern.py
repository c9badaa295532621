"""A whole pattern file to a Pattern, with what it takes from the book."""

import pickle

import pytest
from tests.source.texts import BOOK, SMALL, book, good, grid, read, said, with_change

from booklet.craft.piece import Hanger
from booklet.craft.tally import tally
from booklet.findings import Mark
from booklet.source.pattern import Item, Link, Photo, StepText, WrittenHanger


def threads(pattern):
    return pattern.thread.body, pattern.thread.fringe, pattern.thread.length


def test_every_field_of_a_pattern():
    pattern = good(SMALL)
    assert (pattern.slug, pattern.file, pattern.title, pattern.version, pattern.level) == ("a", "a.yaml", "Cloud Shadow", "1.0", "beginner")
    assert (pattern.makes, pattern.pieces, pattern.mirror, pattern.hand, pattern.drop, pattern.base) == ("pair", 2, False, "right", 2, "bottom")
    assert pattern.summary == "One sentence for the contents page and for a shop listing."
    assert list(pattern.legend) == ["W", "B", "D"] and pattern.legend["B"].name == "storm blue" and pattern.legend["D"].kind.name == "drop 3.4"
    assert pattern.pack_grams == {"W": 5, "B": 5, "D": 10}
    assert pattern.hangers == (WrittenHanger(Hanger("guard")),) and pattern.hanger_beads == ()
    assert pattern.findings_list == (Item("thread guard", "4 mm", 1), Item("lever-back ear wire", "", 1))
    assert threads(pattern) == ("braided 6 lb", "nylon D", 1400)
    assert pattern.photo == Photo("photos/cloud-shadow.jpg", "...")
    assert pattern.links == (Link("film of the row start", "https://example.org/row-start"),)
    assert pattern.notes == "The base row has {{ base.stitches }} stitches."
    assert (pattern.steps, pattern.spare_percent, pattern.least_spare) == ({}, 10, 0)
    assert list(pattern.colourways) == ["dusk"] and list(pattern.colourways["dusk"]) == ["B"]
    assert (pattern.colourways["dusk"]["B"].name, pattern.colourways["dusk"]["B"].kind.name) == ("plum", "cylinder 11/0")
    assert pattern.counted == {"base": 4, "rows": 3, "strands": 4, "beads": 87}


def test_the_piece_of_the_pattern():
    """Counted by hand: 4, 3 and 2 sets of two; strands of 18, 14, 19 and 18 beads."""
    pattern = good(SMALL)
    assert grid(pattern.chart) == ["    B B", "    W W", "   W B W", "   W B W", "  W W B W", "  W B B W"]
    assert [len(strand.all) for strand in pattern.piece.strands] == [18, 14, 19, 18]
    counts = tally(pattern.piece)
    assert (counts.body, counts.fringe, counts.beads) == (18, 69, 87) and counts.beads == pattern.counted["beads"]


def test_places():
    pattern = good(SMALL)
    assert pattern.mark("title") == Mark("a.yaml", 1, 8, 12)
    assert pattern.mark("counted", "beads") == Mark("a.yaml", 51, 48, 2)
    assert pattern.mark("beads", "B") == Mark("a.yaml", 11, 3, 1)
    assert pattern.mark("row", 1) == Mark("a.yaml", 23, 10, 7)
    assert pattern.mark("strand", 2) == Mark("a.yaml", 31, 7, 16)
    assert pattern.mark("body", "chart") == Mark("a.yaml", 18, 10, 1)
    assert pattern.mark("photo", "file") == Mark("a.yaml", 43, 15, 23)
    assert pattern.mark("photo", "nothing") == pattern.mark("photo") and pattern.mark("nothing") == Mark("a.yaml")


def test_a_pattern_can_be_sent_to_another_process():
    pattern = good(SMALL)
    assert pickle.loads(pickle.dumps(pattern)) == pattern


def test_a_loop_of_beads():
    pattern = good(with_change("{kind: guard}", "{kind: loop, beads: 2(3W) 1B}"))
    assert pattern.piece.hangers == (Hanger("loop", tuple("WWWWWWB")),)
    assert [bead.mark.column for bead in pattern.hanger_beads] == [31] * 6 + [35]


def test_hangers_with_all_their_fields():
    pattern = good(with_change("hanger: {kind: guard}", "hanger:\n  - {kind: ring, at: left, size: 5 mm, passes: 4}\n  - {kind: guard, span: 0.2 in, at: right}"))
    assert pattern.piece.hangers == (Hanger("ring", at="left", size=5, passes=4), Hanger("guard", at="right", span=5.08))
    assert [written.path for written in pattern.hangers] == [("hanger", 1), ("hanger", 2)] and pattern.mark("hanger", 2, "at").line == 37
    assert good(with_change("{kind: guard}", "{kind: none}")).piece.hangers == ()


@pytest.mark.parametrize(("fields", "alike", "second"), [
    ("makes: pair\nmirror: true\nfront: true", False, True), ("makes: pair\nmirror: true\nfront: false", False, False),
    ("makes: pair\nmirror: false\nfront: true", False, False), ("makes: single\nmirror: true\nfront: true", False, False),
    ("makes: pair\nmirror: true\nfront: true", True, False)])
def test_the_second_piece_has_words_of_its_own_where_it_has_a_front_and_differs(fields, alike, second):
    text = SMALL.replace("W W B W\n      |  W B B W", "W B B W\n      |  W B B W").replace("    - 3(2W 1B) 4W > 1D\n", "    - 14W 2B\n") if alike else SMALL
    pattern = good(with_change("makes: pair\nmirror: false", fields, text))
    assert (pattern.second is not None) is second
    if second:
        assert [strand.beads for strand in pattern.second.strands] == [strand.beads for strand in reversed(pattern.piece.strands)]


@pytest.mark.parametrize(("item", "wire"), [("lever-back ear wire", True), ("ear hooks", True), ("earwires", True), ("thread guard", False), ("wire", False)])
def test_whether_an_ear_wire_is_among_the_findings(item, wire):
    assert good(with_change("lever-back ear wire", item)).ear_wire is wire


def test_a_hanger_is_kept_as_written_for_rules_to_judge():
    assert good(with_change("{kind: guard}", "{kind: loop}")).hangers[0].hanger == Hanger("loop")
    assert good(with_change("{kind: guard}", "{kind: guard, beads: 2W}")).hangers[0].hanger == Hanger("guard", ("W", "W"))
    assert list(good(with_change("steps: {}", "steps: {lader: x}")).steps) == ["lader"]


def test_only_what_must_be_there():
    text = SMALL[:SMALL.index("fringe:")].replace("mirror: false\nhand: right\n", "").replace("  stitch: brick\n", "").replace("  base: bottom\n", "")
    pattern = good(text)
    assert (pattern.hand, pattern.mirror, pattern.base, pattern.hangers, threads(pattern)) == ("right", False, "bottom", (), ("braided 6 lb", "nylon B", 1400))
    assert pattern.piece.strands == () and pattern.photo is None


def test_the_hand_turns_the_rows():
    assert [row.direction for row in good(with_change("hand: right", "hand: left")).piece.rows] == ["left", "right", "left"]


def test_steps_replace_or_add():
    pattern = good(with_change("steps: {}", "steps:\n  ladder: Mine.\n  hanger: {before: First., after: Then.}"))
    assert pattern.steps == {"ladder": StepText("Mine."), "hanger": StepText(before="First.", after="Then.")}


def test_a_colourway_may_change_the_kind():
    pattern = good(with_change("dusk: {B: {name: plum, colour: \"#5e3a5b\", finish: matte}}", "blue moon: {W: {name: plum, colour: \"#5e3a5b\", kind: round 15/0}}"))
    bead = pattern.colourways["blue moon"]["W"]
    assert (bead.key, bead.colour, bead.finish, bead.kind.name) == ("W", "#5e3a5b", "matte", "round 15/0")


INHERITING = BOOK + """\
pack: 7.5 g
spare: {percent: 12.5 %, least: 4}
defaults:
  level: advanced
  makes: single
  hand: left
  hanger: {kind: loop, beads: 5W}
  findings: [{item: bail, size: 6 mm, each: 2}]
  thread: {body: {kind: waxed linen}, length: 4 ft}
kinds:
  seed 9/0: {shape: round, diameter: 2.5 mm, length: 1.7 mm, hole: 0.9 mm}
threads:
  waxed linen: {diameter: 0.4 mm, material: linen}
"""


def test_what_the_book_gives():
    made, wrong = book(INHERITING)
    assert wrong == []
    bare = SMALL
    for line in ("level: beginner\n", "makes: pair\n", "hand: right\n", "hanger: {kind: guard}\n", "  body:   {kind: braided 6 lb}\n",
                 "  length: 1.4 m\n", "findings:\n  - {item: thread guard, size: 4 mm, each: 1}\n  - {item: lever-back ear wire, each: 1}\n"):
        bare = with_change(line, "", bare)
    pattern = good(with_change("drop 3.4", "seed 9/0", bare), made)
    assert (pattern.level, pattern.makes, pattern.pieces, pattern.hand) == ("advanced", "single", 1, "left")
    assert pattern.piece.hangers == (Hanger("loop", tuple("WWWWW")),) and pattern.hanger_beads[0].mark == Mark("book.yaml", 8, 31, 2)
    assert pattern.findings_list == (Item("bail", "6 mm", 2),)
    assert threads(pattern) == ("waxed linen", "nylon D", 1219.2)
    assert pattern.thread.kind("body").diameter == 0.4 and pattern.thread.kind("fringe").diameter == 0.3
    assert pattern.pack_grams == {"W": 7.5, "B": 7.5, "D": 10} and (pattern.spare_percent, pattern.least_spare) == (12.5, 4)
    assert pattern.legend["D"].kind.diameter == 2.5


def test_the_patterns_own_word_wins():
    assert threads(good(SMALL, book(INHERITING)[0])) == ("braided 6 lb", "nylon D", 1400)
    assert good(SMALL, book(INHERITING)[0]).level == "beginner" and good(SMALL, book(INHERITING)[0]).piece.hangers == (Hanger("guard"),)


def test_error_a_loop_of_the_book_with_a_key_that_only_some_legends_have():
    made, _ = book(INHERITING)
    pattern, found = read(with_change("hanger: {kind: guard}\n", "", SMALL.replace("W", "V")), made)
    assert found == [] and pattern.piece is None and pattern.hanger_beads[0].key == "W"   # the rule on unknown keys says why


def test_a_broken_book_is_not_blamed_on_the_patterns():
    made, wrong = book(INHERITING.replace("level: advanced", "level: hard").replace("seed 9/0", "seed"))
    assert len(wrong) == 1 and made.broken
    assert said(with_change("level: beginner\n", "", with_change("drop 3.4", "seed 9/0")), made) == []


@pytest.mark.parametrize("lost", ["beads", "body", "chart"])
def test_error_without_its_main_parts_there_is_no_piece(lost):
    text = SMALL.replace(f"{lost}:", f"x{lost * 3}:", 1)
    pattern, found = read(text)
    assert pattern.piece is None and len(found) >= 2


def test_error_a_pattern_with_a_wrong_bead_has_no_piece_but_the_rest():
    pattern, found = read(with_change('"#f4f1ea"', "white"))
    assert pattern.piece is None and "W" not in pattern.legend and ("beads", "W") in pattern.marks and len(pattern.chart.rows) == 3
