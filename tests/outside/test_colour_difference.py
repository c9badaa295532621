"""Colour difference and colour sight.

Sources: Sharma, Wu, Dalal 2005, Color Res. Appl. 30(1), the 34 pairs of CIELAB colours with their CIEDE2000, which fail a
formula that takes the mean of two hues the wrong way round; colour.readthedocs.io, matrix_cvd_Machado2009; and a
general-purpose colour library.
"""

import pytest
from coloraide.everything import ColorAll
from hypothesis import given
from hypothesis import strategies as st

from booklet.lint.sight import SIGHTS, ciede2000, difference, lab, seen

PAIRS = """\
50 2.6772 -79.7751 50 0 -82.7485 2.0425 | 50 3.1571 -77.2803 50 0 -82.7485 2.8615 | 50 2.8361 -74.0200 50 0 -82.7485 3.4412
50 -1.3802 -84.2814 50 0 -82.7485 1.0000 | 50 -1.1848 -84.8006 50 0 -82.7485 1.0000 | 50 -0.9009 -85.5211 50 0 -82.7485 1.0000
50 0 0 50 -1 2 2.3669 | 50 -1 2 50 0 0 2.3669 | 50 2.49 -0.001 50 -2.49 0.0009 7.1792
50 2.49 -0.001 50 -2.49 0.0010 7.1792 | 50 2.49 -0.001 50 -2.49 0.0011 7.2195 | 50 2.49 -0.001 50 -2.49 0.0012 7.2195
50 -0.001 2.49 50 0.0009 -2.49 4.8045 | 50 -0.001 2.49 50 0.0010 -2.49 4.8045 | 50 -0.001 2.49 50 0.0011 -2.49 4.7461
50 2.5 0 50 0 -2.5 4.3065 | 50 2.5 0 73 25 -18 27.1492 | 50 2.5 0 61 -5 29 22.8977
50 2.5 0 56 -27 -3 31.9030 | 50 2.5 0 58 24 15 19.4535 | 50 2.5 0 50 3.1736 0.5854 1.0000
50 2.5 0 50 3.2972 0 1.0000 | 50 2.5 0 50 1.8634 0.5757 1.0000 | 50 2.5 0 50 3.2592 0.3350 1.0000
60.2574 -34.0099 36.2677 60.4626 -34.1751 39.4387 1.2644 | 63.0109 -31.0961 -5.8663 62.8187 -29.7946 -4.0864 1.2630
61.2901 3.7196 -5.3901 61.4292 2.2480 -4.9620 1.8731 | 35.0831 -44.1164 3.7933 35.0232 -40.0716 1.5901 1.8645
22.7233 20.0904 -46.6940 23.0331 14.9730 -42.5619 2.0373 | 36.4612 47.8580 18.3852 36.2715 50.5065 21.2231 1.4146
90.8027 -2.0831 1.4410 91.1528 -1.6435 0.0447 1.4441 | 90.9257 -0.5406 -0.9208 88.6381 -0.8985 -0.7239 1.5381
6.7747 -0.2908 -2.4247 5.8714 -0.0985 -2.2286 0.6377 | 2.0776 0.0795 -1.1350 0.9033 -0.0636 -0.5514 0.9082
"""
PUBLISHED = [tuple(map(float, pair.split())) for line in PAIRS.splitlines() for pair in line.split("|")]
FILTERS = {"red-blind": "protan", "green-blind": "deutan", "blue-blind": "tritan"}
COLOURS = st.integers(0, 0xFFFFFF).map("#{:06x}".format)


def test_there_are_34_pairs():
    assert len(PUBLISHED) == 34 and sum(pair[6] for pair in PUBLISHED) == pytest.approx(183.1864, abs=0.0002)


@pytest.mark.parametrize("pair", PUBLISHED)
def test_published_pair(pair):
    one, other, published = pair[:3], pair[3:6], pair[6]
    assert ciede2000(one, other) == pytest.approx(published, abs=0.0001)
    assert ciede2000(other, one) == pytest.approx(published, abs=0.0001)


@given(COLOURS, COLOURS)
def test_the_library_finds_the_same_difference(one, other):
    expected = ColorAll(one).delta_e(other, method="2000", space="lab-d65")
    assert difference(one, other) == pytest.approx(expected, abs=0.01)


@given(COLOURS)
def test_the_library_finds_the_same_lab(colour):
    assert lab(colour) == pytest.approx(ColorAll(colour).convert("lab-d65").coords(), abs=0.02)


@pytest.mark.parametrize(("sight", "expected"), [
    ("red-blind", ("#6d5f00", "#ffe500", "#0059ff")),
    ("green-blind", ("#a39000", "#efd63a", "#003dfb")),
    ("blue-blind", ("#ff000f", "#00f7d9", "#006b96")),
])
def test_the_primaries_as_other_eyes_see_them(sight, expected):
    assert tuple(seen(colour, sight) for colour in ("#ff0000", "#00ff00", "#0000ff")) == expected


@given(COLOURS, st.sampled_from(sorted(SIGHTS)))
def test_the_library_sees_the_same(colour, sight):
    expected = ColorAll(colour).filter(FILTERS[sight], method="machado").convert("srgb").clip()
    assert difference(seen(colour, sight), expected.to_string(hex=True, fit=False)) < 1.0


@given(st.integers(0, 255), st.sampled_from([*SIGHTS, "grey"]))
def test_a_grey_stays_as_it_is(value, sight):
    grey = f"#{value:02x}{value:02x}{value:02x}"
    assert seen(grey, sight) == grey and lab(grey)[1:] == pytest.approx((0, 0), abs=1e-9)
