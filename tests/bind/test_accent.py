"""Accents are readable on white: published contrast values of WCAG 2.2, and every accent held against them.

Values: "Relative luminance (WCAG 2.2)", "Understanding SC 1.4.3", "Contrast ratio" (Math for Web Design).
"""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from booklet.bind.accent import INK, accent, readable
from booklet.craft.beads import Bead, BeadKind
from booklet.craft.tally import BeadTally, Tally
from booklet.draw.colour import contrast

KIND = BeadKind("cylinder 11/0", "cylinder", 1.6, 1.3, 0.8)


def counts(*colours_and_counts):
    lines = tuple(BeadTally(Bead(str(n), "", colour, "matte", KIND), piece, piece, piece, 1.0, 1)
                  for n, (colour, piece) in enumerate(colours_and_counts))
    return Tally(1, sum(line.piece for line in lines), 0, 0, lines)


@pytest.mark.parametrize("colour, ratio", [("#000000", 21.0), ("#777777", 4.4781), ("#767676", 4.5422), ("#ff0000", 3.9985), ("#0000ff", 8.5925)])
def test_contrast_on_white_is_the_published_one(colour, ratio):
    assert contrast(colour, "#ffffff") == pytest.approx(ratio, abs=0.005)


def test_a_grey_that_just_fails_is_darkened_and_one_that_just_passes_stays():
    assert contrast(readable("#777777"), "#ffffff") >= 4.5
    assert readable("#767676") == "#767676"


@given(st.integers(0, 0xFFFFFF))
def test_every_colour_becomes_readable_text(number):
    assert contrast(readable(f"#{number:06x}"), "#ffffff") >= 4.5


def test_the_accent_is_the_most_colourful_bead_of_those_used_often():
    assert accent(counts(("#f4f1ea", 60), ("#3d5a80", 30), ("#ff0000", 1))) == readable("#3d5a80")


def test_a_grey_piece_gets_ink():
    assert accent(counts(("#f4f1ea", 60), ("#808080", 30))) == INK
