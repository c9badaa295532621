"""What a maker is told about two versions of a piece."""

from hypothesis import given, settings
from msgspec.structs import replace

from booklet.craft.corrections import Correction, bead_corrections, corrections
from booklet.craft.piece import Hanger
from booklet.craft.replay import differences
from booklet.craft.tally import tally
from booklet.craft.words import row_words, strand_words
from tests.craft.pieces import LEGEND, piece, stepped, triangle, workable


def lines(piece):
    """The printed lines of a piece by what a correction calls them."""
    rows = {words.name: words.line for words in row_words(piece)}
    return rows, {f"Strand {words.number}": words.line for words in strand_words(piece)}


@settings(deadline=None)
@given(workable() | stepped(), workable() | stepped())
def test_the_words_of_the_old_piece_with_its_corrections_written_in_give_the_new_piece(old, new):
    rows, strands = lines(old)
    for part, what, was, now in corrections(old, new):
        texts, gap = (rows, " ") if part == "row" else (strands, ", ") if part == "strand" else ({}, "")
        if part in ("row", "strand"):
            assert texts.pop(what, None) == (f"{what}{gap}{was}" if was else None)
            if now:
                texts[what] = f"{what}{gap}{now}"
    in_order = [words.name for words in row_words(new)]
    assert set(rows) == set(in_order)
    assert differences(new, [rows[what] for what in in_order], list(strands.values())) == ()


@given(workable())
def test_a_piece_that_has_not_changed_has_no_corrections(one):
    assert corrections(one, one) == () and bead_corrections(tally(one), tally(one)) == ()


def test_every_part_is_told_in_the_order_of_the_work():
    old = triangle(3, strands=["WW", "WW", "WW"], hanger=Hanger("guard"))
    new = piece([(0, ["W", "B", "W"]), (1, ["W", "W"])], strands=["WW", "WB", "WW"], hanger=Hanger("loop", ("W", "W", "B")))
    assert corrections(old, new) == (
        Correction("row", "Row 1", "→ 3 stitches: ladder 2W; then 1W", "→ 3 stitches: ladder 1W, 1B; then 1W"),
        Correction("row", "Row 3", "→ 1 stitch: one stitch 1W", ""),
        Correction("strand", "Strand 2", "3 beads: 2W; end 1W", "3 beads: 1W, 1B; end 1W"),
        Correction("hanger", "Hanger", "a thread guard with a span of 3 mm, 3 times through", "a loop of 2W, 1B, 3 times through"))
    assert bead_corrections(tally(old, 2), tally(new, 2)) == (
        Correction("count", "W", "", "15 → 14 a piece, 30 → 28 in all, 33 → 31 to buy"),
        Correction("count", "B", "", "0 → 3 a piece, 0 → 6 in all, 0 → 7 to buy"),
        Correction("count", "All", "", "15 → 17 a piece, 30 → 34 in all"))


def test_a_bead_with_another_look_is_told_and_one_that_came_or_went():
    old = triangle(2)
    other = {"W": replace(LEGEND["W"], name="ivory"), "X": replace(LEGEND["B"], key="X")}
    assert bead_corrections(tally(old), tally(replace(old, legend=other)))[:5] == (
        Correction("bead", "W", "colour W, matte, cylinder 11/0", "ivory, matte, cylinder 11/0"),
        Correction("bead", "X", "", "colour B, matte, cylinder 11/0"),
        Correction("bead", "B", "colour B, matte, cylinder 11/0", ""),
        Correction("bead", "R", "colour R, matte, cylinder 11/0", ""),
        Correction("bead", "7", "colour 7, matte, cylinder 11/0", ""))
