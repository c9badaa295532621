"""The page on techniques: its pictures stand where the text asks for them, and its table is computed from bead sizes."""

import re

from booklet.bind.pages import made
from booklet.bind.techniques import with_pictures, with_sizes
from booklet.bind.templates import own_folder

TEXT = (own_folder() / "pages" / "techniques.md").read_text("utf-8")


def page():
    return with_pictures(made("techniques", with_sizes(TEXT)).html)


def test_every_picture_that_the_text_asks_for_is_there():
    html = page()
    assert html.count("<svg") == len(re.findall(r"\{picture:", TEXT)) == 8
    assert "{picture" not in html and "{table" not in html


def test_every_picture_has_a_text_of_its_own():
    alts = re.findall("<title>(.*?)</title>", page())
    assert len(set(alts)) == 8 and all(alt.startswith("The way of the thread") for alt in alts)


def test_sizes_are_diameter_across_and_length_up():
    """Rows take diameter across and length up: published row widths in tests/outside/test_axes.py."""
    assert "| cylinder 11/0 | 18 mm (0.7 in) | 14 mm (0.6 in) |" in with_sizes(TEXT)
