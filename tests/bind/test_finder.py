"""The index of a book: what is sought, and how it is parted where there are many patterns."""

import re

from msgspec.structs import replace

from booklet.bind import finder
from booklet.bind.book import Gathered, book_apart
from booklet.bind.edition import edition
from booklet.bind.press.parts import cut
from booklet.source.workspace import load
from tests.bind.copies import TINY


def indexed(workspace):
    """The parts of the book that are its index."""
    html, _ = book_apart(workspace, Gathered(list(workspace.patterns.values()), [], (), (), None), edition(workspace.book))
    return [part for part in cut(html).parts if "finder" in part.known.opening]


def test_every_pattern_is_found_by_level_width_beads_and_colour(monkeypatch):
    workspace = load(TINY)
    (index,) = indexed(workspace)
    monkeypatch.setattr(finder, "MANY", 2)
    parts = indexed(workspace)
    assert [re.search("<h1[^>]*>(.*?)</h1>", part.html)[1] for part in parts] == ["Find a pattern", "By width, narrow to wide", "By beads in a piece, few to many", "By colour"]
    assert [part.known.id for part in parts] == ["find-a-pattern", "", "", ""]
    assert all(set(part.known.folios) == set(workspace.patterns) for part in (index, *parts))

    def entries(*found):
        return [" ".join(entry.split()) for part in found for entry in re.findall("<li>.*?</li>", part.html, re.DOTALL)]

    assert entries(index) == entries(*parts)
    assert entries(index)[-1].count("<a ") == len(re.findall("\ue000", entries(index)[-1])) > 0


def test_a_single_pattern_has_no_index():
    workspace = load(TINY)
    one = replace(workspace, patterns=dict([*workspace.patterns.items()][:1]))
    assert indexed(one) == []
