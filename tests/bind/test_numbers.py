"""Printed numbers. The inch is 25.4 mm exactly; grams have two figures."""

import pytest

from booklet.bind.numbers import count, grams, many, metres, mm_and_inches


@pytest.mark.parametrize("mm, text", [(25.4, "25 mm (1.0 in)"), (6.4, "6.4 mm (0.3 in)"), (101.6, "102 mm (4.0 in)")])
def test_sizes_have_inches_beside_them(mm, text):
    assert mm_and_inches(mm) == text


def test_lengths_of_thread_are_in_metres():
    assert metres(1397) == "1.40 m (55 in)"


@pytest.mark.parametrize("value, text", [(0.6472, "0.65"), (12.6, "13"), (0.0312, "0.031"), (0.30, "0.3"), (123.4, "120"), (0, "0")])
def test_grams_have_two_figures(value, text):
    assert grams(value) == text


def test_counts():
    assert (count(1234), many(1, "bead"), many(3, "bead")) == ("1,234", "1 bead", "3 beads")
