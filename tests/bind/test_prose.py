"""Prose: placeholders are looked up and never evaluated, Markdown becomes clean HTML."""

import re

import pytest

from booklet.bind.placeholders import filled, values_of
from booklet.bind.prose import prose
from booklet.craft.tally import tally
from booklet.lint.placeholders import names
from booklet.source.workspace import load
from tests.bind.copies import TINY


def test_placeholders_are_filled_and_escaped():
    assert filled("{{ base.stitches }} of {{title}}", {"base.stitches": "4", "title": "A <b> & c"}) == "4 of A &lt;b&gt; &amp; c"


def test_every_documented_placeholder_has_a_value_for_every_bead():
    pattern = load(TINY).patterns["morning-cloud"]
    counts = tally(pattern.piece, pattern.pieces)
    assert set(values_of(pattern, counts)) == set(names(pattern.legend))


@pytest.mark.parametrize("attack", ["7 * 7", "title.__class__", "[].append", "beads['W']", "self"])
def test_nothing_but_a_name_is_ever_looked_up(attack):
    with pytest.raises(KeyError, match=re.escape(attack)):
        filled("{{ %s }}" % attack, {"title": "x"})


@pytest.mark.parametrize("text", ["<script>alert(1)</script>", '<img src=x onerror="alert(1)">', "[x](javascript:alert(1))", "[x](file:///etc/passwd)",
                                  '<a href="data:text/html,x">x</a>', '<p style="position:fixed">x</p>', "<svg onload=alert(1)>", "[x](../secret)"])
def test_nothing_harmful_is_left(text):
    html = str(prose(text, {}))
    assert not any(bad in html.lower() for bad in ("script", "onerror", "onload", "href", "style", "<img", "<svg"))


def test_headings_start_at_the_level_of_their_place():
    assert "<h3>One</h3>" in prose("# One", {}, top=3)
    assert prose("# One\n\n## Two", {}) == "<h1>One</h1>\n<h2>Two</h2>"


def test_links_to_the_web_and_to_mail_stay():
    assert 'href="https://example.org/a"' in prose("[a](https://example.org/a)", {})
    assert 'href="mailto:a@example.org"' in prose("[a](mailto:a@example.org)", {})
