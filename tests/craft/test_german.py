"""German words: what they say, and that they are read back by a grammar of their own."""

import re

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec import structs
from tests.craft.fringes import fringed
from tests.craft.pieces import piece, stepped, workable
from tests.craft.weaves import any_weave

from booklet.bind.catalogue import language
from booklet.craft.language import _, decimal, ngettext, noun, speaking, whole
from booklet.craft.piece import Hanger
from booklet.craft.plan import ThreadPlan
from booklet.craft.replay import CannotRead, differences, replay
from booklet.craft.steps import reading_the_chart, steps
from booklet.craft.thread import thread_use
from booklet.craft.words import row_words, strand_words


def lines(made):
    with speaking(language("de")):
        return [words.line for words in row_words(made)], [words.line for words in strand_words(made)]


def test_words_of_a_small_piece():
    made = piece([(2, ["W", "W", "B", "W"]), (3, ["W", "B", "W"]), (2, ["B", "B", "R", "7"])], strands=["WWWB", "WBWBWB", "W", ""], end="BBB")
    assert lines(made) == ([
        "Reihe 1 → 4 Stiche: Leiter 2W; dann 1B, 1W",
        "Reihe 2 ← 3 Stiche: Anfang innen 1W, 1B; dann 1W; Ende innen",
        "Reihe 3 → 4 Stiche: Anfang außen 2B; dann 1R, 17; Ende außen",
    ], [
        "Strang 1, 7 Perlen: 3W, 1B; Ende 3B",
        "Strang 2, 9 Perlen: 3 × [1W, 1B]; Ende 3B",
        "Strang 3, 4 Perlen: 1W; Ende 3B",
        "Strang 4, 3 Perlen: Ende 3B",
    ])


@settings(max_examples=120, deadline=None)
@given(st.one_of(workable(), stepped(), fringed(), any_weave()))
def test_words_rebuild_every_piece_in_every_stitch(made):
    assert differences(made, *lines(made), "de") == ()


@settings(max_examples=40, deadline=None)
@given(workable(fringe=False), st.data())
def test_a_changed_bead_is_noticed(made, data):
    other = data.draw(workable(fringe=False).filter(lambda one: one.rows != made.rows))
    assert differences(other, lines(made)[0], [], "de") != ()


@pytest.mark.parametrize("row", [
    "Row 1 → 2 stitches: ladder 2W", "Reihe 1 → 3 Stiche: Leiter 2W", "Reihe 1 → 2 Stiche: Leitern 2W", "Reihe 1 → 2 Stiche: Leiter 2W; then 1W"])
def test_error_words_that_are_no_german_row(row):
    with pytest.raises(CannotRead):
        replay([row], [], language="de")


@pytest.mark.parametrize("strand", ["Strang 1, 3 Perlen: 2W; end 1B", "Strang 1, 4 Perlen: 2W; Ende 1B", "Strand 1, 2 beads: 2W"])
def test_error_words_that_are_no_german_strand(strand):
    with pytest.raises(CannotRead):
        replay([], [strand], language="de")


def test_numbers_plurals_and_genders():
    with speaking(language("de-AT")):
        assert (decimal(1.4, 1), whole(12345), ngettext("{count} bead", "{count} beads", 1), ngettext("{count} bead", "{count} beads", 2)) == (
            "1,4", "12.345", "1 Perle", "2 Perlen")
        said = [_("The thread exits the second {unit}.", unit=noun(*names)) for names in (("stitch", "stitches"), ("set", "sets"), ("bead", "beads"))]
    assert said == ["Der Faden tritt aus dem zweiten Stich aus.", "Der Faden tritt aus dem zweiten Set aus.", "Der Faden tritt aus der zweiten Perle aus."]
    assert _("Row 1") == "Row 1" and decimal(1.4, 1) == "1.4"


@settings(max_examples=40, deadline=None)
@given(st.one_of(workable(), stepped(), fringed(), any_weave()), st.booleans())
def test_steps_of_every_piece_are_german(made, hung):
    made = structs.replace(made, hangers=(Hanger("loop", ("W", "B"), at="left"), Hanger("guard", at="right"))) if hung else made
    plan = ThreadPlan(length=600.0)
    with speaking(language("de")):
        told = [reading_the_chart(made), *(f"{step.title} {step.text}" for step in steps(made, plan, thread_use(made, plan), ear_wire=True))]
    for text in told:
        assert not re.search(r"\b(?:the|and|with|through|row|strand|stitch|bead|beads)\b|[{}|]", text), text


def test_rows_have_an_article_where_there_are_several():
    shape = piece([(1, ["W"] * 4), (2, ["W"] * 3), (3, ["W"] * 2), (4, ["W"])])
    with speaking(language("de")):
        told = {step.id: step.text for step in steps(shape, ThreadPlan(length=600.0), (), ear_wire=True)}
    assert told["row-start-in"].startswith("So beginnen die Reihen 2 und 3.") and told["row-end-in"].startswith("In den Reihen 2 und 3 sitzt der letzte Stich")
    assert told["row-stitches"].startswith("In Reihe 2 jeden weiteren Stich so arbeiten") and told["one-stitch-row"].startswith("Für Reihe 4 den einen Stich aufnehmen")
