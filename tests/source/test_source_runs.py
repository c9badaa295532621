"""Run text to beads."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.source.texts import written

from booklet.source.runs import read_beads, read_strand


def strand(text, keys="WBD"):
    made, found = read_strand(written(f"a: '{text}'\n", "a"), keys)
    assert found == []
    return "".join(bead.key for bead in made.beads), "".join(bead.key for bead in made.end)


def said(text, keys="WBD"):
    made, found = read_strand(written(f"a: '{text}'\n", "a"), keys)
    assert made is None
    return [finding.one_line() for finding in found]


@pytest.mark.parametrize(("text", "beads", "end"), [
    ("W", "W", ""), ("3W", "WWW", ""), ("3W2B", "WWWBB", ""), ("WB", "WB", ""), ("2W 1B W", "WWBW", ""),
    ("3(2W 1B) 4W > 1D", "WWBWWBWWBWWWW", "D"), ("2(W 2(B D))", "WBDBDWBDBD", ""), ("(W B)", "WB", ""), ("W>3B", "W", "BBB"),
    ("W > 3(B)", "W", "BBB"), ("> 3B", "", "BBB"), ("  2W  ", "WW", ""), ("1000W", "W" * 1000, ""), ("2(1000W)", "W" * 2000, "")])
def test_runs(text, beads, end):
    assert strand(text) == (beads, end)


def test_digits_as_keys():
    assert strand("37 7 2(17)", "W7") == ("7777" + "77", "")
    assert strand("3W 7", "W7") == ("WWW7", "")


def test_places():
    made, _ = read_strand(written("a:\n  - 3(2W 1B)  W > D\n", "a", 0), "WBD")
    places = [(bead.mark.line, bead.mark.column, bead.mark.width) for bead in made.beads]
    assert places == [(2, 7, 2), (2, 7, 2), (2, 10, 2)] * 3 + [(2, 15, 1)]
    assert [(bead.mark.column, bead.mark.width) for bead in made.end] == [(19, 1)]
    assert (made.mark.column, made.mark.width) == (5, 15)


@pytest.mark.parametrize(("text", "line"), [
    ("3(2W", "1:5: error: this parenthesis is never closed [bad-run-text]"),
    ("3(2W > B)", "1:5: error: this parenthesis is not closed before > [bad-run-text]"),
    ("2W)", "1:7: error: this parenthesis was never opened [bad-run-text]"),
    ("2W ()", "1:9: error: nothing stands between these parentheses [bad-run-text]"),
    ("2W, 3B", "1:7: error: ',' may not stand here (run text holds counts, bead keys, parentheses and one >) [bad-run-text]"),
    ("2W é", "1:8: error: 'é' may not stand here (run text holds counts, bead keys, parentheses and one >) [bad-run-text]"),
    ("-2W", "1:5: error: '-' may not stand here (run text holds counts, bead keys, parentheses and one >) [bad-run-text]"),
    ("12 W", "1:5: error: the count 12 has no bead key (write the key right after it, as in 3W) [bad-run-text]"),
    ("W 3", "1:7: error: the count 3 has no bead key (write the key right after it, as in 3W) [bad-run-text]"),
    ("0W", "1:5: error: a count is 1 or more; found 0 [bad-run-text]"),
    ("1001W", "1:5: error: a count may be up to 1,000; found '1001' [too-large]"),
    ("1001(W)", "1:5: error: a count may be up to 1,000; found '1001' [too-large]"),
    ("9" * 60 + "W", f"1:5: error: a count may be up to 1,000; found '{'9' * 39}…' [too-large]"),
    ("999(999(W))", "1:15: error: a strand may have up to 2,000 beads [too-large]"),
    ("1000W 1000W W", "1:17: error: a strand may have up to 2,000 beads [too-large]"),
    ("1000W 500W > 501B", "1:4: error: a strand may have up to 2,000 beads [too-large]"),
    ("(" * 21 + "W" + ")" * 21, "1:25: error: parentheses nest deeper than 20 levels [too-deep]"),
    ("W >", "1:7: error: no end beads stand after > [bad-run-text]"),
    ("W > B > D", "1:11: error: > stands twice (end beads begin once) [bad-run-text]"),
    ("W [2B]", "1:7: error: this twig has no end bead, so the needle has nothing to turn on (write > and its end beads, as in [3B > 1R]) [bad-run-text]"),
    ("W [2B > ]", "1:7: error: this twig has no end bead, so the needle has nothing to turn on (write > and its end beads, as in [3B > 1R]) [bad-run-text]"),
    ("W [2B > D", "1:7: error: this bracket is never closed [bad-run-text]"),
    ("W 2B > D]", "1:13: error: this bracket was never opened [bad-run-text]"),
    ("W [2(B > D]", "1:8: error: this parenthesis is not closed before > [bad-run-text]"),
    ("W [B > 2(D]", "1:12: error: this parenthesis is not closed before ] [bad-run-text]"),
    ("W 2([B > D)", "1:9: error: this bracket is not closed before ) [bad-run-text]"),
    ("W [B [W > D] > D]", "1:10: error: a twig cannot hang on a twig (twigs hang on the strand itself) [bad-run-text]"),
    ("W > [B > D]", "1:9: error: a twig cannot hang among end beads (twigs hang on the strand itself) [bad-run-text]"),
    ("W {}", "1:7: error: braces name a finding, such as {ring}; found '{}' [bad-run-text]"),
    ("W {a;b}", "1:7: error: braces name a finding, such as {ring}; found '{a;b}' (a name has letters, digits, spaces and hyphens) [bad-run-text]"),
    ("W {ring", "1:7: error: '{' may not stand here (run text holds counts, bead keys, parentheses and one >) [bad-run-text]"),
    ("900(2W [1B > 1D])", "1:21: error: a strand may have up to 2,000 beads [too-large]"),
])
def test_error_runs(text, line):
    assert said(text) == [f"a.yaml:{line}"]


def test_error_end_beads_where_none_belong():
    beads, found = read_beads(written("a: 3W > B\n", "a"), "WB")
    assert beads is None and [f.one_line() for f in found] == ["a.yaml:1:7: error: > begins end beads, and none belong here [bad-run-text]"]


# A tree of runs, its text, and its beads: what is written is what is read.
RUNS = st.recursive(
    st.tuples(st.integers(1, 9), st.sampled_from("WBD")).map(lambda run: (f"{run[0]}{run[1]}", run[1] * run[0])),
    lambda inner: st.tuples(st.integers(1, 4), st.lists(inner, min_size=1, max_size=3)).map(
        lambda group: (f"{group[0]}({' '.join(text for text, _ in group[1])})", "".join(beads for _, beads in group[1]) * group[0])),
    max_leaves=5)


@given(st.lists(RUNS, min_size=1, max_size=4), st.lists(RUNS, max_size=2))
def test_what_is_written_is_what_is_read(runs, ends):
    beads, end = "".join(b for _, b in runs), "".join(b for _, b in ends)
    text = " ".join(t for t, _ in runs) + (" > " + " ".join(t for t, _ in ends) if ends else "")
    if len(beads) + len(end) <= 1000:
        assert strand(text) == (beads, end)
        assert strand(re.sub(r"(?<![0-9])1(?=[WBD(])", "", text)) == (beads, end)   # a bare key counts one


@given(st.text("WB123() >[]{}", max_size=40).filter(str.strip))
def test_any_signs_are_beads_or_one_finding(text):
    made, found = read_strand(written(f"a: '{text}'\n", "a"), "WB")
    assert (made is None) == (len(found) == 1)
    if found:
        assert found[0].mark.line == 1 and 4 <= found[0].mark.column <= len(text) + 5
