"""The order of pages on saddle-stitched sheets, against published tables.

"How to Arrange the Pages of a Saddle-Stitched Booklet"; "imposition" (a glossary); "imposition tip"; "booklet page tables".
"""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from booklet.bind.imposition import sides


@pytest.mark.parametrize(("pages", "order"), [
    (8, [(8, 1), (2, 7), (6, 3), (4, 5)]),
    (16, [(16, 1), (2, 15), (14, 3), (4, 13), (12, 5), (6, 11), (10, 7), (8, 9)])])
def test_published_orders(pages, order):
    assert sides(pages) == order


def test_fourteen_pages_take_four_sheets_with_two_blank_pages_at_the_end():
    order = sides(14)
    assert [page for side in order[::2] for page in side] == [16, 1, 14, 3, 12, 5, 10, 7]
    assert [page for side in order[1::2][::-1] for page in side] == [8, 9, 6, 11, 4, 13, 2, 15]


@given(st.integers(1, 400))
def test_pairs_add_up_and_odd_pages_lie_at_the_right(pages):
    order = sides(pages)
    total = 2 * len(order)
    assert total % 4 == 0 and 0 <= total - pages < 4
    assert all(left + right == total + 1 and right % 2 == 1 for left, right in order[::2])
    assert sorted(page for side in order for page in side) == list(range(1, total + 1))
