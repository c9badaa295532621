"""Rules about prose: the whole message of each, at its place, and what must not be said."""

import pytest

from tests.lint.books import BOOK, completed, found

FILE = "patterns/morning-cloud.yaml"
WHITE_BLUE = "(the legend has chalk white, storm blue)"
LEADS = "leads nowhere in a pattern that is sold alone (name the step or the picture instead) [page-named-in-prose]"
HAND = ("which is wrong in the edition for the other hand (say what that hand does: the hand that holds the work, the hand with the needle) "
        "[hand-named-in-prose]")
SPAN = "has no figure, and makers measure it in two ways (write the length, such as {{ thread.length }} m) [arm-span-without-figure]"


def said(root, text, book=None, **others):
    lines = found(root, text, book, **others)
    assert all(line.startswith(f"{FILE}:") for line in lines)
    return [line.removeprefix(f"{FILE}:") for line in lines]


def test_error_number_contradicts_pattern(tmp_path):
    text = """\
summary: A cloud of four stitches at its base for a quiet morning.
notes: |
  The base row has 4 stitches, and
  the body has **three rows**. The piece is 9 mm wide. There are {{ base.stitches }} stitches in the base row.

  The base row has
  4 stitches.
steps:
  finishing: {after: "Pick up sets of 2 beads."}
"""
    assert said(tmp_path, text) == [
        "2:21: error: the summary says four stitches, but the base row has 3 [number-contradicts-pattern]",
        "14:20: error: the notes say 4 stitches, but the base row has 3 (write {{ base.stitches }}) [number-contradicts-pattern]",
        "15:18: error: the notes say three rows, but the body has 2 (write {{ rows }}) [number-contradicts-pattern]",
        "15:45: warning: the notes say 9 mm, but the width is 4.8 mm (write {{ size.width }}) [number-contradicts-pattern]",
        "18:3: error: the notes say 4 stitches, but the base row has 3 (write {{ base.stitches }}) [number-contradicts-pattern]",
        "20:39: error: the step finishing says 2 beads, but a stitch has 1 (write {{ drop }}) [number-contradicts-pattern]"]


def test_error_unknown_row_in_prose(tmp_path):
    text = "notes: |\n  See row 4, rows 1 to 3 and strand 2.\n\n  Row one is long; row 2\n  too.\n"
    assert said(tmp_path, text) == [
        "14:7: error: the notes name row 4, but the body has 2 rows [unknown-row-in-prose]",
        "14:14: error: the notes name row 3, but the body has 2 rows [unknown-row-in-prose]",
        "14:30: error: the notes name strand 2, but the piece has no fringe [unknown-row-in-prose]"]


def test_error_unknown_part_of_a_row_in_prose(tmp_path):
    text = """\
body:
  chart: |
    2 |  W W     W W
    1 | W B W B W B W
notes: |
  Rows 1 and 2: 2a, then row 2b and row 2c. Row 1a, row 3a, 4 mm.
"""
    assert [line for line in said(tmp_path, text) if "prose" in line] == [
        "14:37: error: the notes name row 2c, but row 2 has parts a to b [unknown-row-in-prose]",
        "14:45: error: the notes name row 1a, but row 1 has no parts [unknown-row-in-prose]",
        "14:53: error: the notes name row 3, but the body has 2 rows [unknown-row-in-prose]"]


def test_error_unknown_key_in_prose(tmp_path):
    text = "notes: |\n  Pick up 3X, 2W, 1b and 4 beads. The 3D film, 4 m, 2x.\nsteps:\n  finishing: {after: \"End with 3K. Bead I like, bead Z too.\"}\n"
    legend = "but the legend has no such key (the legend has W, B) [unknown-key-in-prose]"
    assert said(tmp_path, text) == [
        f"14:11: error: the notes name bead X, {legend}",
        "14:19: error: the notes name bead b, but the legend has no such key (did you mean B?) [unknown-key-in-prose]",
        f"16:32: error: the step finishing names bead K, {legend}",
        f"16:49: error: the step finishing names bead Z, {legend}"]


def test_error_unknown_bead_in_prose(tmp_path):
    text = "summary: The red beads hang lowest of all the beads in here.\nnotes: The gold drop beads, the blue beads and a red sky.\n"
    assert said(tmp_path, text) == [
        f"2:14: warning: the summary speaks of red beads, but the legend has none {WHITE_BLUE} [unknown-bead-in-prose]",
        f"13:12: warning: the notes speak of gold drop beads, but the legend has none {WHITE_BLUE} [unknown-bead-in-prose]"]


def test_error_unknown_bead_beside_a_known_one(tmp_path):
    text = "notes: Slate grey and chalk white look alike by lamplight, and chalk white or the dark grey of a cloud do not, nor slate, grey and chalk white.\n"
    assert said(tmp_path, text) == [f"13:8: warning: the notes name slate grey beside chalk white, but the legend has no slate grey {WHITE_BLUE} [unknown-bead-in-prose]"]


def test_a_bead_may_be_called_by_what_it_looks_like(tmp_path):
    legend = 'beads:\n  W: {name: coral, colour: "#d44e3a", finish: matte, kind: cylinder 11/0}\n  B: {name: slate, colour: "#4d5870", finish: matte, kind: cylinder 11/0}\n'
    assert said(tmp_path, legend + "notes: The red beads lie between grey beads.\n") == []


def test_error_arm_span_without_figure(tmp_path):
    text = "notes: |\n  Take an arm's length of thread. Take an arm span, 1.5 m, or {{ thread.length }} m, an arm span. A wingspan is long.\n"
    assert said(tmp_path, text) == [f'14:11: warning: "arm\'s length" {SPAN}', f"14:101: warning: 'wingspan' {SPAN}"]


def test_error_hand_named_in_prose(tmp_path):
    text = "notes: |\n  Hold it in your **left\n  hand**, the needle by the right thumb. Left-handed makers turn right. Take it in hand, right side up.\n"
    assert said(tmp_path, text) == [f"14:21: warning: the notes name the left hand, {HAND}", f"15:29: warning: the notes name the right thumb, {HAND}"]


def test_error_page_named_in_prose(tmp_path):
    text = "notes: |\n  See page 12, as on pp. 3; overleaf there is more. The next page. Print the pages twice.\n"
    assert said(tmp_path, text) == [f"14:3: warning: 'See page 12' {LEADS}", f"14:22: warning: 'pp. 3' {LEADS}",
                                    f"14:29: warning: 'overleaf' {LEADS}", f"14:57: warning: 'next page' {LEADS}"]


def test_error_level_contradicted_in_prose(tmp_path):
    text = "level: advanced\nsummary: A good first piece, and for beginners who like clouds.\nnotes: Not a first piece. This is no piece for beginners.\n"
    level = "does not go with the level, which is advanced [level-contradicted-in-prose]"
    assert said(tmp_path, text) == [f"2:12: warning: 'good first piece' {level}", f"2:34: warning: 'for beginners' {level}"]
    assert [line.partition(" [")[0] for line in said(tmp_path, "level: beginner\nnotes: Not for beginners.\n")][:1] == [
        "13:8: warning: 'Not for beginners' does not go with the level, which is beginner"]


def test_error_left_over_title(tmp_path):
    others = {"cloud-shadow.yaml": completed("title: Cloud Shadow\nbody:\n  chart: |\n    2 |  W B\n    1 | W B B\n"),
              "thunderhead.yaml": completed("title: Thunderhead\nbody:\n  chart: |\n    2 |  W W\n    1 | W B B\n")}
    text = ('title: Heat Haze\nlinks:\n  - {label: corrections, url: "https://example.org/cloud-shadow?x=1"}\n'
            "notes: |\n  As in Cloud Shadow. Thunderhead is a word here, a cloud shadow too. In Thunderhead it is not.\n")
    hint = "(write {{ title }} for the title of this one) [left-over-title]"
    assert said(tmp_path, text, BOOK.replace("[", "[cloud-shadow, thunderhead, "), **others) == [
        "14:31: warning: this link leads to cloud-shadow, which is another pattern [left-over-title]",
        f"16:9: warning: the notes name Cloud Shadow, which is another pattern {hint}",
        f"16:74: warning: the notes name Thunderhead, which is another pattern {hint}"]


@pytest.mark.parametrize("text", ['notes: "Pick up\\x20 9X; it is\\u0020 done."\n', "notes: 'Pick up ''9X'', then.'\n", "notes: Pick\n  up\n  9X.\n",
                                  "notes: >\n  Pick\n  up 9X.\n"])
def test_a_phrase_is_found_however_yaml_writes_it(tmp_path, text):
    (line,) = said(tmp_path, text)
    number, column = map(int, line.split(":")[:2])
    written = (tmp_path / FILE).read_text("utf-8").splitlines()[number - 1]
    assert written[column - 1:].startswith("9X")


def test_error_wrong_number_of_patterns(tmp_path):
    page = "# Hello\n\nThis book has twelve brick-stitch\npatterns. The first three patterns are easy; 4 patterns for beginners. It has {{ patterns }} patterns, and 14 designs.\n"
    assert found(tmp_path, "", BOOK + "subtitle: Five patterns\nfront: [hello]\n", **{"pages/hello.md": page}) == [
        "patterns/book.yaml:3:11: error: the subtitle says Five patterns, but the book has 1 [wrong-number-of-patterns]",
        "patterns/pages/hello.md:3:15: error: the page says twelve brick-stitch patterns, but the book has 1 (write {{ patterns }}) [wrong-number-of-patterns]",
        "patterns/pages/hello.md:4:108: error: the page says 14 designs, but the book has 1 (write {{ patterns }}) [wrong-number-of-patterns]"]
