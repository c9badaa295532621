"""Colour arithmetic against published values; sources: Relative luminance (WCAG 2.2), transfer_functions.srgb,
Understanding SC 1.4.3, the Contrast wiki page. Values marked "recomputed" were made with a general-purpose library."""

import pytest
from coloraide import Color
from hypothesis import given, strategies as st

from booklet.draw import tone
from booklet.draw.colour import BLACK, WHITE, channels, contrast, decode, encode, from_channels, grey_of, ink_on, luminance, mix

colours = st.integers(0, 0xFFFFFF).map(lambda value: f"#{value:06x}")


@pytest.mark.parametrize("value, linear", [(1, .00030353), (10, .00303527), (11, .00334654), (119, .18447499),
                                           (128, .21586050), (188, .50288646)])
def test_decoding_as_recomputed(value, linear):
    assert decode(value / 255) == pytest.approx(linear, abs=5e-9)


def test_encoding_as_published():
    assert encode(0.18) == pytest.approx(0.4613561, abs=5e-8)


@pytest.mark.parametrize("colour, ratio", [
    ("#000000", 21.0), ("#777777", 4.4781), ("#767676", 4.5422), ("#757575", 4.6075), ("#959595", 2.9953),
    ("#949494", 3.0335), ("#5a5a5a", 6.8969), ("#595959", 7.0047), ("#ff0000", 3.9985), ("#00ff00", 1.3722),
    ("#0000ff", 8.5925), ("#ffff00", 1.0738)])
def test_contrast_on_white_as_published(colour, ratio):
    assert contrast(colour, WHITE) == pytest.approx(ratio, abs=5e-5)


def test_contrast_of_blue_on_red_as_published():
    assert contrast("#0000ff", "#ff0000") == pytest.approx(2.1489, abs=5e-5)


@given(colours, colours)
def test_contrast_agrees_with_a_colour_library(one, other):
    assert contrast(one, other) == pytest.approx(Color(one).contrast(Color(other), method="wcag21"), abs=0.005)
    assert contrast(one, other) == contrast(other, one)


@given(colours)
def test_a_letter_can_be_read_on_any_bead(colour):
    assert contrast(ink_on(colour), colour) >= 4.5
    assert contrast(ink_on(colour), colour) == max(contrast(BLACK, colour), contrast(WHITE, colour))


@given(colours)
def test_a_grey_has_the_luminance_of_its_colour(colour):
    grey = grey_of(colour)
    assert len({grey[1:3], grey[3:5], grey[5:7]}) == 1
    assert luminance(grey) == pytest.approx(luminance(colour), abs=0.005)
    assert contrast(ink_on(grey), grey) >= 4.5


@given(colours, colours)
def test_mixing_ends_at_both_colours(one, other):
    assert (mix(one, other, 0), mix(one, other, 1)) == (one, other)
    assert from_channels(*channels(one)) == one


@pytest.mark.parametrize("ink, least", [(tone.TEXT, 7.0), (tone.QUIET, 4.5), (tone.GAP, 3.0)])
def test_figures_and_outlines_stand_out_from_paper(ink, least):
    """4.5:1 for figures, 3:1 for outlines: Understanding SC 1.4.3, and Color contrast on 1.4.11."""
    assert contrast(ink, WHITE) >= least


@given(colours, st.sampled_from(tone.TONES))
def test_a_letter_can_be_read_in_every_tone(colour, shade):
    fill = tone.shown(colour, shade)
    assert contrast(tone.ink(fill), fill) >= 4.5
