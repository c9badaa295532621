"""The record of what was published, and the marks of content in it."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from booklet.source.content import facts, plain, printed, stitched
from booklet.source.releases import Releases, entry_of, entry_of_book, order, read_releases
from tests.source.texts import SMALL, good, read, with_change

ENTRY = '- pattern: a\n  version: "1.0"\n  stitched: "0123456789abcdef"\n  printed: "0123456789abcdef"\n'


def released(text):
    made, found = read_releases(text, "releases.yaml")
    assert [finding.one_line() for finding in found] == []
    return made


def wrong(text):
    return [finding.one_line() for finding in read_releases(text, "releases.yaml")[1]]


def test_what_is_written_is_read_back():
    pattern = good(SMALL)
    made = released("# kept\n" + entry_of(pattern) + entry_of_book("First edition", {"a": "1.0"}))
    (one,), (book,) = made.patterns, made.books
    assert (one.slug, one.version, one.stitched, one.printed) == ("a", "1.0", stitched(pattern), printed(pattern))
    assert one.counted == {"base": 4, "rows": 3, "strands": 4, "beads": 87} and sum(one.beads.values()) == 87
    assert one.facts == facts(pattern) and one.copy == "patterns/releases/a-1.0.yaml"
    assert (book.edition, book.patterns) == ("First edition", {"a": "1.0"})


@given(st.text(min_size=1).map(lambda text: " ".join(text.split())).filter(lambda text: text and text.isprintable()))
def test_any_edition_can_be_recorded(edition):
    assert released(entry_of_book(edition[:150], {"a": "1"})).books[0].edition == " ".join(edition[:150].split())


@pytest.mark.parametrize("key", ["7", "N", "y", "n", "e"])
def test_a_bead_key_that_yaml_might_take_for_something_else(key):
    pattern = good(with_change("  D: {name: silver", f"  {key}: {{name: silver").replace("> 1D", f"> 1{key}"))
    assert released(entry_of(pattern)).patterns[0].beads[key] == 1


def test_the_newest_release_is_that_of_the_highest_version_wherever_it_stands():
    made = released("".join(ENTRY.replace("1.0", version) for version in ("1.2", "1.10", "1.9")))
    assert made.last("a").version == "1.10" and made.before("a", "1.10").version == "1.9" and made.before("a", "1.2") is None
    assert made.at("a", "1.2.0").version == "1.2" and made.at("b", "1.2") is None and made.last("b") is None


@given(st.lists(st.integers(0, 99), min_size=1, max_size=4), st.lists(st.integers(0, 99), min_size=1, max_size=4))
def test_versions_are_ordered_number_by_number(one, other):
    longest = [numbers + [0] * (4 - len(numbers)) for numbers in (one, other)]
    texts = [".".join(map(str, numbers)) for numbers in (one, other)]
    assert (order(texts[0]) < order(texts[1])) == (longest[0] < longest[1])


def test_the_book_before_is_the_last_with_other_versions():
    made = released(entry_of_book("First", {"a": "1.0"}) + entry_of_book("Second", {"a": "1.1"}))
    assert made.book_before({"a": "1.1"}).edition == "First" and made.book_before({"a": "1.2"}).edition == "Second"
    assert Releases().book_before({}) is None


@pytest.mark.parametrize(("text", "said"), [
    ("a: 1\n", "releases.yaml:1:1: error: the file of releases must be a list (booklet release writes it) [wrong-type]"),
    ("- pattern: a\n", "releases.yaml:1:3: error: this entry has neither pattern, version, stitched and printed nor book and patterns [missing-field]"),
    (ENTRY.replace("0123", "012G", 1), "releases.yaml:3:13: error: 1.stitched must be 16 digits or letters from a to f, as booklet release wrote them; "
                                       "found '012G456789abcdef' [bad-content]"),
    (ENTRY.replace('"1.0"', "one"), "releases.yaml:2:12: error: 1.version must be numbers with points, such as \"1.0\"; found 'one' [bad-version]"),
    ("- [\n", None),
])
def test_error_a_record_that_somebody_has_broken(text, said):
    lines = wrong(text)
    assert lines == [said] if said else len(lines) == 1


def test_an_empty_record_holds_nothing():
    assert released("# nothing yet\n") == Releases()


@pytest.mark.parametrize(("old", "new", "also_stitched"), [
    ("12W 2B 1W", "12W 1B 2W", True), ("3 |    B B", "3 |    B W", True), ("chalk white", "ivory", True), ("makes: pair", "makes: single", True),
    ("The base row", "This base row", False), ("1.4 m", "1.5 m", False), ("plum", "damson", False), ("each: 1}\nthread", "each: 2}\nthread", False),
    ("# text", "# words", None), ("14W 2B", "7W 7W 2B", None), ("    2 |", "      |", None), ("  end: 3B", "  end: B 2B", None), ('"1.0" ', '"1.1" ', None),
])
def test_marks_change_with_what_is_stitched_and_with_what_is_printed_and_with_nothing_else(old, new, also_stitched):
    before, after = good(SMALL), read(with_change(old, new))[0]
    assert (stitched(before) != stitched(after)) is bool(also_stitched)
    assert (printed(before) != printed(after)) is (also_stitched is not None)


def test_a_field_with_its_default_is_no_part_of_a_mark():
    pattern = good(SMALL)
    assert plain(replace(pattern.piece, stitch="brick")) == plain(pattern.piece) and "stitch" not in plain(pattern.piece)
