"""How far rows of words stand apart: measured with the widths of our sans."""

import pytest
from fontTools.ttLib import TTFont

from booklet.bind.edition import Edition
from booklet.bind.fonts import SANS, faces
from booklet.bind.geometry import sheet
from booklet.bind.row_gap import LEAST, USUAL, WIDTHS, lines, row_gap


def test_widths_are_those_of_the_font():
    font = TTFont(next(face.path for face in faces() if (face.family, face.weight, face.italic) == (SANS, 400, False)))
    names, wide = font.getBestCmap(), font["hmtx"]
    for sign, width in WIDTHS.items():
        if ord(sign) in names:
            assert wide[names[ord(sign)]][0] == pytest.approx(1000 * width, abs=3), sign


def test_a_long_row_is_broken_between_words():
    assert [lines("WWWW WWWW WWWW", first, 6.6) for first in (3.3, 6.6, 10.0)] == [2, 2, 1]   # a word of four is 3.144 wide
    assert lines("WWWW\u00a0WWWW", 6.6, 6.6) == 1
    assert lines("W" * 12, 3.3, 3.3) == 3   # 9.432 wide


def test_rows_stand_closer_where_that_saves_a_page():
    page, row = sheet(Edition()), "Row 2 ← 9 stitches: start in 2W; then 5W; end in"
    assert row_gap(page, []) == row_gap(page, [row] * 12) == USUAL
    assert USUAL > row_gap(page, [row] * 28) > row_gap(page, [row] * 31) >= LEAST
    assert row_gap(page, [row] * 36) == USUAL    # they take two pages in any case
