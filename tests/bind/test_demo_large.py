"""The demo book in large print on Letter: 8.5 x 11 inches. "Guidelines for Large Print": 18 points or more, line spacing 1.5 or more, sans serif, no italics."""

import io

import pypdfium2
import pytest

from tests.bind.demo import built, check_pages, check_size, check_type, check_words


@pytest.fixture(scope="module")
def made():
    return built("large")


def test_pages_are_letter(made):
    check_size(made, 215.9, 279.4)


def test_no_type_is_below_18_points_and_none_is_serif_or_italic(made):
    check_type(made, 17.9, 18.0)
    assert not [one for one in made.types if "Serif" in one.face or "Italic" in one.face]


def test_lines_are_half_as_far_again_apart_as_type_is_high(made):
    """Paragraphs of several lines, measured on the page."""
    document, gaps = pypdfium2.PdfDocument(io.BytesIO(made.content)), []
    for element in made.tags.all("P"):
        if element.page >= 0 and len(element.text) > 150:
            words = document[element.page].get_textpage()
            tops = sorted({round(words.get_charbox(index, loose=True)[1], 1) for index in range(words.count_chars()) if words.get_text_range(index, 1).strip()}, reverse=True)
            gaps += [above - below for above, below in zip(tops, tops[1:])]
            break
    assert gaps and sorted(gaps)[len(gaps) // 2] >= 18 * 1.5 - 0.2


def test_words_are_read_back_from_the_file(made):
    check_words(made)


def test_no_page_is_nearly_empty_or_runs_out_of_its_margins(made):
    check_pages(made)
