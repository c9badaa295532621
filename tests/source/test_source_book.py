"""The book file."""

import pytest
from tests.source.texts import BOOK, book

from booklet.craft.beads import BeadKind
from booklet.craft.plan import ThreadKind
from booklet.craft.techniques import USUAL_LEVELS
from booklet.findings import Mark
from booklet.source.book import Book, Page
from booklet.source.kinds import shipped_kinds
from booklet.source.threads import shipped_threads

FULL = """\
title: Weather for Wearing
subtitle: Twelve pieces
author: Isobar Bead Studio
publisher: Isobar Bead Studio
year: 2026
edition: First edition
language: en-GB
copyright: © 2026 Isobar Bead Studio
licence: |
  For your own use.

  Please do not copy.
contact: corrections@example.org
order: [frost-star, cloud-shadow]
front: [welcome]
back: [origins.md, studio]
page: {size: 5.5 x 8.5 in, bleed: 0.125 in, gutter: 9.6 mm}
spare: 15 %
pack: 10 g
levels: {beginner: [2-drop], advanced: [increases, mixed-sizes]}
"""


def test_every_field_of_a_book():
    made, wrong = book(FULL)
    assert wrong == []
    assert (made.title, made.subtitle, made.author, made.publisher, made.year, made.edition, made.language) == (
        "Weather for Wearing", "Twelve pieces", "Isobar Bead Studio", "Isobar Bead Studio", 2026, "First edition", "en-GB")
    assert made.copyright == "© 2026 Isobar Bead Studio" and made.licence == "For your own use.\n\nPlease do not copy."
    assert (made.contact, made.order, made.front, made.back) == ("corrections@example.org", ("frost-star", "cloud-shadow"), ("welcome",), ("origins", "studio"))
    assert made.page == Page(139.7, 215.9, 3.175, 9.6)
    assert (made.spare_percent, made.least_spare, made.pack, made.broken) == (15, 0, 10, False)
    assert made.mark("order", 2) == Mark("book.yaml", 14, 21, 12) and made.mark("page", "nothing") == Mark("book.yaml", 17, 7, 1)


def test_levels_of_techniques_are_the_usual_ones_where_the_book_names_no_others():
    made, _ = book(FULL)
    assert {name for name, level in made.placed.items() if level != USUAL_LEVELS[name]} == {"2-drop", "increases", "mixed-sizes"}
    assert (made.placed["2-drop"], made.placed["increases"], made.placed["lower-rows"]) == ("beginner", "advanced", "intermediate")
    assert Book().placed == USUAL_LEVELS


def test_error_a_technique_that_is_not_known():
    _, (line,) = book(BOOK + "levels: {advanced: [incraeses]}\n")
    assert "; found 'incraeses' (did you mean increases?)" in line and line.endswith("[unknown-choice]")


def test_a_book_of_defaults():
    made, wrong = book(BOOK)
    assert wrong == [] and made.page == Page(148, 210, 0, 4) and (made.language, made.year, made.order) == ("en", None, ())
    assert (made.spare_percent, made.least_spare, made.pack) == (10, 0, 5) and Book().kinds == made.kinds == shipped_kinds()


@pytest.mark.parametrize(("line", "percent", "least"), [("10 %", 10, 0), ("0 %", 0, 0), ("{percent: 7.5 %}", 7.5, 0), ("{least: 6}", 10, 6),
                                                       ("{percent: 0 %, least: 6}", 0, 6)])
def test_spare(line, percent, least):
    made, wrong = book(BOOK + f"spare: {line}\n")
    assert wrong == [] and (made.spare_percent, made.least_spare) == (percent, least)


def test_kinds_of_its_own():
    made, wrong = book(BOOK + "kinds:\n  seed 9/0: {shape: round, diameter: 2.5 mm, length: 1.7 mm, hole: 0.9 mm, per_gram: 60, source: weighed here}\n"
                              "  cylinder 11/0: {hole: 0.85 mm}\n  round 8/0: {source: weighed here, per_gram: 38}\n")
    assert wrong == []
    assert made.kinds["seed 9/0"] == BeadKind("seed 9/0", "round", 2.5, 1.7, 0.9, 60, source="weighed here")
    assert (made.kinds["cylinder 11/0"].hole, made.kinds["cylinder 11/0"].diameter) == (0.85, 1.6)
    assert (made.kinds["round 8/0"].per_gram, made.kinds["round 8/0"].diameter) == (38, 3.0)
    assert shipped_kinds()["cylinder 11/0"].hole == 0.8


def test_threads_of_its_own():
    made, wrong = book(BOOK + "threads:\n  silk 2: {diameter: 0.4 mm, material: silk, spool: 2 m, source: measured here}\n  nylon D: {spool: 1000 m}\n")
    assert wrong == []
    assert made.threads["silk 2"] == ThreadKind("silk 2", 0.4, "silk", 2000, "measured here")
    assert (made.threads["nylon D"].spool, made.threads["nylon D"].diameter) == (1_000_000, 0.3)
    assert shipped_threads()["nylon D"].spool == 60_000 and Book().threads == shipped_threads()


def test_a_published_count_does_not_stay_with_another_size():
    made, _ = book(BOOK + "kinds:\n  round 8/0: {diameter: 2.6 mm}\n")
    assert made.kinds["round 8/0"].per_gram is None


@pytest.mark.parametrize(("more", "line"), [
    ("titel: x", "2:1: error: the field 'titel' is not known (did you mean title?) [unknown-field]"),
    ("year: soon", "2:7: error: year must be a whole number; found 'soon' [wrong-type]"),
    ("language: English!", "2:11: error: language must be a language tag such as en-GB; found 'English!' [bad-language]"),
    ("order: [Frost Star]", "2:9: error: order.1 must be small letters, digits and single hyphens, such as cloud-shadow; found 'Frost Star' [bad-slug]"),
    ("front: [../x]", "2:9: error: front.1 must be the name of a page in patterns/pages; found '../x' [bad-name]"),
    ("page: {size: A9}", "2:14: error: page.size must be A3, A4, A5, A6, B4, B5, B6, Letter, half letter, 5x8, 6x9, 7x10, 8x10, 8.5x8.5 or like "
                         "148 x 210 mm; found 'A9' [bad-page-size]"),
    ("page: {size: 20 x 30 mm}", "2:14: error: a page must be 90 to 450 mm wide and 120 to 600 mm high; found '20 x 30 mm' [out-of-range]"),
    ("page: {bleed: 3 in}", "2:15: error: page.bleed must be 0 to 30 mm; found '3 in' [out-of-range]"),
    ("spare: 10", "2:8: error: spare must be a number and a unit, such as 10 %; found '10' [bad-measure]"),
    ("spare: {percent: 10 %, leats: 2}", "2:24: error: the field 'leats' is not known in spare (did you mean least?) [unknown-field]"),
    ("kinds: {seed 9/0: {shape: round}}", None),
    ("kinds: {round 8/0: {hole: 4 mm}}", "2:9: error: the hole of round 8/0, 4 mm, is not narrower than the bead, 3 mm [hole-too-wide]"),
    ("kinds: {round 8/0: {shape: ball}}", "2:28: error: kinds.round 8/0.shape must be cylinder, round, bugle, drop or bicone; found 'ball' [unknown-choice]"),
    ("defaults: {hanger: {kind: loop}}", None),
    ("threads: {silk: {material: silk}}", "2:11: error: threads.silk.diameter is missing (a strength in pounds does not tell how thick a thread is) [missing-field]"),
    ("threads: {silk: {diameter: thin}}", "2:28: error: threads.silk.diameter must be a number and a unit, such as 0.2 mm; found 'thin' [bad-measure]"),
    ("defaults: {thread: {body: {kind: nylon}}}", "2:34: error: the thread kind 'nylon' is not known (did you mean nylon F?) [unknown-thread]"),
])
def test_error_book(more, line):
    made, wrong = book(BOOK + more + "\n")
    if line:
        assert wrong == [f"book.yaml:{line}"]
    assert (made.title, made.page.width) == ("Weather for Wearing", 148.0) and made.broken is bool(wrong)


def test_error_a_new_kind_says_all_it_lacks():
    assert book(BOOK + "kinds: {seed 9/0: {shape: round}}\n")[1] == [
        f"book.yaml:2:9: error: kinds.seed 9/0.{name} is missing [missing-field]" for name in ("diameter", "length", "hole")]


@pytest.mark.parametrize(("text", "line"), [
    ("", "1:1: error: the file is empty (begin with title:) [empty-file]"),
    ("- a", "1:1: error: the file holds a list where fields are expected (begin with title:) [not-a-mapping]"),
    ("subtitle: x", "1:1: error: title is missing [missing-field]")])
def test_error_no_book(text, line):
    made, wrong = book(text)
    assert wrong == [f"book.yaml:{line}"] and made.broken


def test_editions_and_isbn():
    made, wrong = book(BOOK + "isbn: 978-3-16-148410-0\neditions:\n  large: {size: Letter, large: true, leading: 1.6}\n  press: {gutter: by pages, marks: true, paper: 0.1 mm}\n")
    assert wrong == [] and made.isbn == "9783161484100" and list(made.editions) == ["large", "press"]
    assert (made.editions["large"].large, made.editions["large"].leading, made.editions["press"].gutter) == (True, 1.6, "by pages")


@pytest.mark.parametrize(("lines", "message"), [
    ("editions: {all: {}}", "book.yaml:2:12: error: the name of an edition has small letters, digits and single hyphens, and is not all; found 'all' [bad-name]"),
    ("editions: {a: {output: PDF/X-4}}",
     "book.yaml:2:24: error: editions.a.profile is missing (PDF/X-4 names the press: ask the printer for its colour profile, an .icc file) [missing-field]"),
    ("editions: {a: {screen: true, marks: true}}",
     "book.yaml:2:37: error: editions.a cannot have marks: a screen has one side and no edge to trim (delete it) [needless-field]"),
    ("editions: {a: {sheets: two-up, bleed: 3 mm}}",
     "book.yaml:2:39: error: editions.a cannot have bleed: two pages share a sheet, which is not trimmed (delete it) [needless-field]"),
    ("editions: {a: {type: 6 pt}}", "book.yaml:2:22: error: editions.a.type must be 7 to 36 pt; found '6 pt' [out-of-range]"),
    ("isbn: 978-3-16-148410-1", "book.yaml:2:7: error: the last digit of isbn does not go with the others; found '978-3-16-148410-1' "
                                "(compare it with the number that you were given) [bad-isbn]")])
def test_error_editions_and_isbn(lines, message):
    _, found = book(BOOK + lines + "\n")
    assert found == [message]
