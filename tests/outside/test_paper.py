"""Page sizes against ISO 216, the inch, and a library of paper sizes."""

import papersize
import pytest

from booklet.source.measures import PAGE_SIZES


@pytest.mark.parametrize("name", ["A3", "A4", "A5", "A6", "B5", "Letter"])
def test_a_library_agrees(name):
    assert PAGE_SIZES[name] == pytest.approx([float(side) for side in papersize.parse_papersize(name.lower(), "mm")], abs=0.01)


@pytest.mark.parametrize(("larger", "smaller"), [("A3", "A4"), ("A4", "A5"), ("A5", "A6"), ("B4", "B5"), ("B5", "B6")])
def test_a_size_is_half_of_the_one_before(larger, smaller):
    """ISO 216 (encyclopedia copy): half of a size is the next, rounded down to whole millimetres."""
    assert PAGE_SIZES[smaller] == (PAGE_SIZES[larger][1] // 2, PAGE_SIZES[larger][0])


@pytest.mark.parametrize(("name", "inches"), [("half letter", (5.5, 8.5)), ("5x8", (5, 8)), ("6x9", (6, 9)), ("7x10", (7, 10)), ("8.5x8.5", (8.5, 8.5))])
def test_trade_trims(name, inches):
    """"Trim sizes and margins" and "What is trim size"; an inch is 25.4 mm."""
    assert PAGE_SIZES[name] == pytest.approx([side * 25.4 for side in inches])
