"""The whole message of every rule, at its place."""

import pytest
from msgspec import structs

from booklet.lint import rules as package
from booklet.lint.rules import words_do_not_replay
from booklet.lint.run import lint
from booklet.source.workspace import load
from tests.lint.books import BOOK, completed, found, write_book, write_photo

FILE, BOOK_FILE = "patterns/morning-cloud.yaml", "patterns/book.yaml"
THREE_COLOURS = """\
beads:
  W: {name: chalk white, colour: "#f4f1ea", finish: matte, kind: cylinder 11/0}
  B: {name: storm blue, colour: "#3d5a80", finish: lustre, kind: cylinder 11/0}
  R: {name: brick red, colour: "#c45a45", finish: matte, kind: cylinder 11/0}
"""


def test_nothing_is_found_in_the_pattern_of_these_tests(tmp_path):
    assert found(tmp_path, "", BOOK) == []


def test_error_unknown_bead_key(tmp_path):
    text = """\
body:
  chart: |
    2 |  B X
    1 | W x X
fringe:
  end: 3Q
  strands: [2w 1B, 12W, 12W]
hanger: {kind: loop, beads: 3W 2Z}
colourways:
  dusk: {K: {name: plum, colour: "#5e3a5b", finish: matte}}
"""
    assert found(tmp_path, text) == [
        f"{FILE}:11:12: error: the bead key X stands in the chart in 2 places, but not in the legend (the legend has W, B) [unknown-bead-key]",
        f"{FILE}:12:11: error: the bead key x stands in the chart, but not in the legend (the legend has W, B) [unknown-bead-key]",
        f"{FILE}:14:8: error: the bead key Q stands in the fringe, but not in the legend (the legend has W, B) [unknown-bead-key]",
        f"{FILE}:15:13: error: the bead key w stands in the fringe, but not in the legend (did you mean W?) [unknown-bead-key]",
        f"{FILE}:16:32: error: the bead key Z stands in the hanger, but not in the legend (the legend has W, B) [unknown-bead-key]",
        f"{FILE}:18:10: error: the bead key K is not in the legend (a colourway changes beads of the legend) [unknown-bead-key]",
    ]


def test_error_a_legend_entry_with_a_fault_of_its_own_is_known(tmp_path):
    text = 'beads:\n  W: {name: white, colour: "#f4f1ea", finish: matte, kind: cylinder 11/0}\n  B: {name: blue, colour: "#3d5a8", finish: matte, kind: cylinder 11/0}\n'
    (line,) = found(tmp_path, text)
    assert line.endswith("[bad-colour]")


def test_error_unused_bead_key(tmp_path):
    assert found(tmp_path, THREE_COLOURS) == [
        f"{FILE}:9:3: warning: the legend has R (brick red), but no bead of the piece is R [unused-bead-key]"]


def test_a_bead_of_the_fringe_or_of_the_hanger_is_used(tmp_path):
    assert found(tmp_path, THREE_COLOURS + "hanger: {kind: loop, beads: 5R}\n") == []


@pytest.mark.parametrize(("lower", "said"), [
    ("W B", "14:15: error: stitch 3 from the left of this row has 1 of its 2 beads"),
    ("W B W B", "15:17: error: stitch 4 from the left of this row has 1 of its 2 beads"),
    ("W   W B", "14:13: error: stitch 2 from the left of this row has 1 of its 2 beads"),
    (" W B W", "15:12: error: this line stands 1 character to the right of the first line of its row"),
    ("   W B W", "15:14: error: this line stands 3 characters to the right of the first line of its row"),
])
def test_error_ragged_set(tmp_path, lower, said):
    text = f"body:\n  drop: 2\n  chart: |\n    2 |    B B\n      |    W W\n    1 |   W B W\n      |   {lower}\n"
    assert found(tmp_path, text) == [f"{FILE}:{said} [ragged-set]"]


def test_error_wrong_row_number(tmp_path):
    text = "body:\n  base: widest\n  chart: |\n    2 |  B B\n    1 | W B W\n    4 |  B B\n"
    assert found(tmp_path, text) == [f"{FILE}:14:5: error: this row is numbered 4, but it is row 3 [wrong-row-number]"]


@pytest.mark.parametrize(("chart", "said"), [
    (["2 | B B", "1 | W B W"], "11:9: error: row 2 sits straight on the stitches of row 1 (move it one character to the left or right, "
                               "so that it sits on the thread bridges)"),
    (["2 |   B", "1 | W W B W"], "11:11: error: row 2 sits straight on the stitches of row 1 (move it one character to the left or right, "
                                 "so that it sits on the thread bridges)"),
    (["1 | W B   B W"], "11:15: error: row 1, the base row, has a gap after its stitch 2 (the base row is one ladder: close the gap, or make "
                        "a row without a gap the base row)"),
    (["3 | W B", "2 |  B", "1 | W B"], "11:9: error: row 3 has nothing to hang on: row 2 has one stitch and no thread bridge "
                                       "(give row 2 two stitches or more, or end the shape there)"),
    (["2 |        B", "1 | W W B W"], "11:16: error: row 2 has nothing to hang on: no stitch of it stands over a thread bridge of row 1 "
                                       "(move it inward until one of its stitches stands between two of row 1, or make row 1 wider)"),
    (["3 |  B W B W B", "2 | W B     B W", "1 |  W B W B W"],
     "11:12: error: row 3 joins 2b and 2a, and nothing carries it over the gap between them (leave the gap open in row 3 too, or make it "
     "the base row, so that the two parts hang on it)"),
])
def test_error_row_cannot_be_worked(tmp_path, chart, said):
    text = "body:\n  chart: |\n" + "".join(f"    {line}\n" for line in chart)
    lines = found(tmp_path, text)
    assert f"{FILE}:{said} [row-cannot-be-worked]" in lines
    assert all(line.endswith("[row-cannot-be-worked]") for line in lines)


@pytest.mark.parametrize(("fringe", "said"), [
    ("strands: [12W, 12W]", "the fringe has 2 strands, but the base row has 3 stitches"),
    ("strands: [12W]", "the fringe has 1 strand, but the base row has 3 stitches"),
    ("mirror: true, strands: [12W, 12W, 12W]", "the fringe has 5 strands (3 written and mirrored), but the base row has 3 stitches"),
])
def test_error_strand_count(tmp_path, fringe, said):
    (line,) = found(tmp_path, f"fringe: {{end: 1B, {fringe}}}\n")
    assert line == f"{FILE}:13:{line.split(':')[2]}: error: {said} [strand-count]"


def test_error_strand_without_end_bead(tmp_path):
    text = "fringe:\n  mirror: true\n  strands:\n    - 12W\n    - 12W > 3B\n"
    assert found(tmp_path, text) == [
        f"{FILE}:16:7: error: strand 1 has no end bead, so the needle has nothing to turn on (give the fringe an end: for all strands, "
        "or write > and the end beads in this one) [strand-without-end-bead]"]


@pytest.mark.parametrize(("below", "rows"), [(["3 |  B B"], "the row"), (["3 |  B B", "4 |   B"], "the 2 rows")])
def test_error_fringe_under_lower_rows(tmp_path, below, rows):
    chart = "".join(f"    {line}\n" for line in ["2 |  B B", "1 | W B W", *below])
    text = f"body:\n  base: widest\n  chart: |\n{chart}fringe: {{end: 1B, strands: [2W, 2W, 2W]}}\n"
    (line,) = found(tmp_path, text)
    assert line.endswith(f": warning: the strands hang from row 1 and hide {rows} below it "
                         "(hang: lowest or hang: edge hangs them lower) [fringe-under-lower-rows]")


def test_error_counted_differs(tmp_path):
    text = "fringe: {end: 1B, strands: [2W, 2W, 2W]}\ncounted: {base: 4, rows: 3, strands: 2, beads: 15}\n"
    assert found(tmp_path, text) == [
        f"{FILE}:14:17: error: counted.base is 4, but the pattern has 3 [counted-differs]",
        f"{FILE}:14:26: error: counted.rows is 3, but the pattern has 2 [counted-differs]",
        f"{FILE}:14:38: error: counted.strands is 2, but the pattern has 3 [counted-differs]",
        f"{FILE}:14:48: error: counted.beads is 15, but the pattern has 14 (body 5, fringe 9) [counted-differs]"]


def test_a_right_count_is_no_finding(tmp_path):
    assert found(tmp_path, "hanger: {kind: loop, beads: 5W}\ncounted: {base: 3, rows: 2, strands: 0, beads: 10}\n") == []


def test_error_words_do_not_replay(tmp_path, monkeypatch):
    right = words_do_not_replay.row_words

    def wrong(piece):
        first, second = right(piece)
        return first, structs.replace(second, text=second.text.replace("2B", "B, W").replace("B, W", "1B, 1W"))

    monkeypatch.setattr(words_do_not_replay, "row_words", wrong)
    (line,) = found(tmp_path, "")
    assert line.startswith(f"{FILE}:10:") and line.endswith("[words-do-not-replay]") and "row 2" in line


def test_error_hangers(tmp_path):
    assert found(tmp_path, "hanger: {kind: loop}\n") == [
        f"{FILE}:13:9: error: the hanger is a loop without beads (write its beads, such as beads: 7W) [empty-hanger-loop]"]
    assert found(tmp_path, "hanger: {kind: guard, beads: 7W}\n") == [
        f"{FILE}:13:30: error: the hanger has 7 beads, but its kind is guard [hanger-beads-without-loop]"]


def test_error_hangers_of_a_list(tmp_path):
    assert found(tmp_path, "hanger:\n  - {kind: loop, at: left, passes: 1}\n  - {kind: ring, at: right, span: 3 mm, passes: 1}\n") == [
        f"{FILE}:14:5: error: the hanger is a loop without beads (write its beads, such as beads: 7W) [empty-hanger-loop]",
        f"{FILE}:15:5: warning: this hanger and the one before it both sit on stitch 1 of row 2 "
        "(say at: left, middle or right, or end the body with a wider row) [hangers-share-a-stitch]",
        f"{FILE}:15:35: warning: a hanger of kind ring has no span (delete it) [needless-hanger-field]"]


def test_error_a_guard_that_cannot_sit(tmp_path):
    assert found(tmp_path, "hanger: {kind: guard, span: 5 mm}\n") == [
        f"{FILE}:13:29: warning: the thread guard spans 5 mm, but row 2 at the top has 2 stitches and is 3.2 mm wide "
        "(end the body with a wider row, or hang it by a loop or a ring) [guard-wider-than-top-row]"]


FRINGE = "fringe: {end: 1B, strands: [9W, 9W, 9W]}\nhanger: {kind: guard}\n"


def test_error_too_many_passes_name_the_beads(tmp_path):
    assert found(tmp_path, FRINGE + "thread: {body: {kind: nylon B}, fringe: {kind: nylon D}}\n") == []
    easily = "go through easily with a needle of size 12 (use a thinner thread, or beads with wider holes) [tight-hole]"
    assert found(tmp_path, FRINGE + "thread: {body: {kind: nylon D}, fringe: {kind: nylon D}}\n") == [
        f"{FILE}:11:10: warning: stitches 1 and 2 of row 2 (B; cylinder 11/0, hole 0.8 mm): 5 passes of thread (5 of nylon D, 0.3 mm), but only 3 {easily}",
        f"{FILE}:12:9: warning: stitch 2 of row 1 (B; cylinder 11/0, hole 0.8 mm): 5 passes of thread (5 of nylon D, 0.3 mm), but only 3 {easily}",
        f"{FILE}:12:9: warning: stitches 1 and 3 of row 1 (W; cylinder 11/0, hole 0.8 mm): 4 passes of thread (4 of nylon D, 0.3 mm), but only 3 {easily}"]


def test_error_passes_that_no_hole_can_hold(tmp_path):
    book = "title: B\norder: [morning-cloud]\nthreads: {cord: {diameter: 0.5 mm}}\n"
    assert found(tmp_path, "thread: {body: {kind: cord}}\n", book) == [
        f"{FILE}:{place} (B; cylinder 11/0, hole 0.8 mm): 3 passes of thread (3 of cord, 0.5 mm), but even pressed thin only 2 have room "
        "(use a thinner thread, or beads with wider holes) [thread-too-thick-for-hole]"
        for place in ("11:10: error: stitch 1 of row 2", "12:9: error: stitch 2 of row 1")]


def test_error_a_strand_longer_than_its_thread(tmp_path):
    book = "title: B\norder: [morning-cloud]\ndefaults: {thread: {body: {kind: nylon B}, fringe: {kind: nylon B}}}\n"
    assert found(tmp_path, "fringe: {end: 1B, strands: [60W, 60W, 60W]}\nthread: {length: 0.45 m}\n", book) == [
        f"{FILE}:13:{column}: warning: strand {number} takes more thread than a working length of 0.45 m leaves, which is 150 mm without its ends "
        "(give a longer thread.length) [row-longer-than-thread]" for number, column in ((1, 29), (2, 34), (3, 39))]


def test_error_missing_photo(tmp_path):
    assert found(tmp_path, "photo: {file: photos/cloud.jpg, alt: A cloud.}\n") == [
        f"{FILE}:13:15: error: there is no file patterns/photos/cloud.jpg [missing-photo]"]


def test_a_photo_that_is_there_is_no_finding(tmp_path):
    write_photo(tmp_path, "photos/cloud.jpg", 2000, 1500)
    assert found(tmp_path, "photo: {file: photos/cloud.jpg, alt: A cloud.}\n") == []


def test_error_unprinted_step(tmp_path):
    text = "steps:\n  finishing: Wear it.\n  fringe: {before: Sort the beads.}\n"
    assert found(tmp_path, text) == [f"{FILE}:15:3: warning: this piece has no step fringe, so its text is not printed [unprinted-step]"]


def test_error_unknown_placeholder(tmp_path):
    text = "notes: |\n  {{ title }} has {{ base.stiches }}.\n\n  {{beads.W.piece}} {{beads.R.piece}} {{ 7 * 7 }} {{ base.stiches }}\nsteps:\n  finishing: {after: \"Now {{ pices }}\"}\n"
    assert found(tmp_path, text) == [
        f"{FILE}:14:19: error: the placeholder 'base.stiches' is not known (did you mean base.stitches?) [unknown-placeholder]",
        f"{FILE}:16:21: error: the placeholder 'beads.R.piece' is not known (did you mean beads.W.piece?) [unknown-placeholder]",
        f"{FILE}:16:39: error: the placeholder '7 * 7' is not known [unknown-placeholder]",
        f"{FILE}:16:51: error: the placeholder 'base.stiches' is not known (did you mean base.stitches?) [unknown-placeholder]",
        f"{FILE}:18:27: error: the placeholder 'pices' is not known (did you mean pieces?) [unknown-placeholder]"]


def test_error_unknown_placeholder_on_a_page(tmp_path):
    page = "# Hello\n\n{{ title }} has {{ patterns }} patterns by {{ auther }} for {{ x }}.\n"
    assert found(tmp_path, "", BOOK + "front: [hello]\n", **{"pages/hello.md": page}) == [
        "patterns/pages/hello.md:3:44: error: the placeholder 'auther' is not known (did you mean author?) [unknown-placeholder]",
        "patterns/pages/hello.md:3:61: error: the placeholder 'x' is not known (a page may name title, author or patterns) [unknown-placeholder]"]


def test_error_the_order_of_the_book(tmp_path):
    book = "title: B\norder:\n  - morning-clod\n  - morning-cloud\n  - morning-cloud\n  - xylophone\n"
    assert found(tmp_path, "", book, **{"night-sky.yaml": completed("title: Night Sky\nbody:\n  chart: |\n    2 |  W W\n    1 | W B W\n")}) == [
        f"{BOOK_FILE}:3:3: warning: the order leaves out night-sky, so it comes last in the book [not-in-book-order]",
        f"{BOOK_FILE}:3:5: error: there is no file patterns/morning-clod.yaml (did you mean morning-cloud?) [missing-pattern]",
        f"{BOOK_FILE}:5:5: error: morning-cloud stands in order already [listed-twice]",
        f"{BOOK_FILE}:6:5: error: there is no file patterns/xylophone.yaml [missing-pattern]"]


def test_error_the_pages_of_the_book(tmp_path):
    book = BOOK + "front: [before-you-begin, helo]\nback: [hello, hello]\n"
    assert found(tmp_path, "", book, **{"pages/hello.md": "# Hello\n"}) == [
        f"{BOOK_FILE}:3:27: error: there is no page patterns/pages/helo.md (did you mean hello?) [missing-page]",
        f"{BOOK_FILE}:4:15: error: hello stands in back already [listed-twice]"]


def test_a_book_without_an_order_takes_all(tmp_path):
    assert found(tmp_path, "", "title: B\n") == []


def test_a_folder_without_a_book_file_has_no_findings_about_the_book(tmp_path):
    assert found(tmp_path, "") == []


def test_two_patterns_with_the_same_fault_have_a_finding_each(tmp_path):
    root = write_book(tmp_path, {f"{name}.yaml": completed("counted: {base: 9}\n") for name in ("a", "b")})
    assert [finding.mark.file for finding in lint(load(root))] == ["patterns/a.yaml", "patterns/b.yaml"]


def test_error_level_too_low(tmp_path):
    two_drop = "level: beginner\nbody:\n  drop: 2\n  chart: |\n    2 |  B\n      |  B\n    1 | W W\n      | W W\n"
    asked = f"{FILE}:4:8: warning: the level is beginner, but the piece asks for what this book calls advanced: "
    assert found(tmp_path, two_drop, BOOK + "levels: {advanced: [2-drop]}\n") == [
        f"{asked}2-drop (write level: advanced, or place 2-drop lower under levels: in book.yaml) [level-too-low]"]
    assert found(tmp_path, two_drop, BOOK + "levels: {advanced: [brick-stitch, 2-drop]}\n") == [
        f"{asked}brick stitch, 2-drop (write level: advanced, or place brick-stitch, 2-drop lower under levels: in book.yaml) [level-too-low]"]
    assert found(tmp_path, two_drop, BOOK + "levels: {beginner: [2-drop]}\n") == []
    assert found(tmp_path, two_drop, BOOK) == [
        f"{FILE}:4:8: note: the level is beginner, but the piece asks for what this book calls intermediate: 2-drop "
        "(write level: intermediate, or place 2-drop lower under levels: in book.yaml) [level-too-low]"]


def test_error_a_technique_at_two_levels(tmp_path):
    assert found(tmp_path, "", BOOK + "levels:\n  beginner: [fringe, 2-drop]\n  advanced: [2-drop]\n") == [
        f"{BOOK_FILE}:5:14: error: 2-drop stands in beginner already [listed-twice]"]


def test_the_pages_that_come_with_booklet_are_those_that_are_bound():
    from booklet.bind import pages
    from booklet.lint.rules.book.missing_page import SHIPPED

    assert SHIPPED == pages.SHIPPED and package.__doc__


CHARMED = "fringe: {end: 1B, strands: [2W, '2W > {moon charm}', 2W]}\n"


@pytest.mark.parametrize(("fringe", "said"), [
    ("fringe:\n  hang: bridges\n  end: 1B\n  strands: [2W, 2W, 2W]\n", "12: error: the fringe has 3 strands, but the lowest row has 2 thread bridges [strand-count]"),
    ("fringe:\n  hang: edge\n  end: 1B\n  strands: [2W, ~]\n", "12: error: the fringe has 1 strand and 1 empty place, but the lower edge has 3 places [strand-count]"),
    ("fringe:\n  end: 1B\n  strands: [2W, ~]\n", "12: error: the fringe has 1 strand and 1 empty place, but the base row has 3 stitches [strand-count]"),
    ("fringe:\n  end: 1B\n  strands: [2W, 2W, {loop: 9W}]\n", "28: error: the loop of place 3 comes up at place 4, but there are places 1 to 3 [loop-without-place]"),
    ("fringe:\n  end: 1B\n  strands: [{loop: 1W, to: after}, 2W, ~]\n", "20: error: the beads of this loop measure 1.3 mm, but its places lie 3.2 mm apart "
     "(it needs 4.8 mm of beads or more) [loop-too-short]"),
    (CHARMED + "findings: [{item: ear wire}]\n", "39: error: the findings list no moon charm (add it under findings:) [charm-not-in-findings]"),
    (CHARMED + "findings: [{item: moon charms}]\n", "39: error: the findings list no moon charm (did you mean moon charms?) [charm-not-in-findings]"),
])
def test_error_places_and_charms(tmp_path, fringe, said):
    mine = [line for line in found(tmp_path, fringe) if "note:" not in line]
    assert [line.split(":", 2)[2] for line in mine] == [said]


def test_error_too_few_findings(tmp_path):
    text = "fringe: {end: 1B, strands: ['2W > {star}', ~, '2W > {star}']}\nfindings: [{item: star, each: 1}]\n"
    (line,) = [line for line in found(tmp_path, text) if "note:" not in line]
    assert line.endswith("error: the findings list 1 star for a piece, but its strands take 2 (leave out each: and they are counted) [too-few-findings]")
