"""The demo book as its page says: A5, for print. "ISO 216": 148 x 210 mm."""

import io

import numpy
import pypdfium2
import pytest

from tests.bind.demo import built, check_pages, check_size, check_type, check_words


@pytest.fixture(scope="module")
def made():
    return built("")


def test_pages_are_a5(made):
    check_size(made, 148.0, 210.0)


def test_type_is_larger_than_any_law_asks(made):
    """"FDA food label font size" and "Type too small": 6 points are the least of published label rules."""
    check_type(made, 7.0, 9.6)


def test_words_are_read_back_from_the_file(made):
    check_words(made)


def test_no_page_is_nearly_empty_or_runs_out_of_its_margins(made):
    check_pages(made)


def test_every_chart_faces_its_words(made):
    heads = [element for element in made.tags.all("H2") if element.text.lower().endswith(("body chart", "fringe chart", "in words"))]
    pairs = list(zip(heads[::2], heads[1::2]))
    assert len(pairs) >= 20
    for chart, words in pairs:
        assert chart.text.lower().removesuffix("chart") == words.text.lower().removesuffix("in words")
        assert chart.page % 2 == 1 and words.page == chart.page + 1   # the first page, of index 0, lies at the right


def test_no_heading_stands_alone_at_the_foot_of_a_page(made):
    flow = [element for element in made.tags.all("H2", "H3", "P", "LI", "TR", "Figure") if element.page >= 0]
    for head, after in zip(flow, flow[1:]):
        if head.tag in ("H2", "H3"):
            assert after.page in (-1, head.page), head.text


def test_a_page_that_was_left_empty_is_ruled_for_notes(made):
    pages = [page for page in pypdfium2.PdfDocument(io.BytesIO(made.content)) if page.get_textpage().get_text_range().startswith("Your notes")]
    assert pages
    for page in pages:
        dark = numpy.asarray(page.render(scale=2, grayscale=True).to_pil()) < 200
        rules = numpy.flatnonzero(dark.mean(axis=1) > 0.6)
        assert len(set(rules // 8)) >= 18


def test_the_cover_shows_the_pieces_over_most_of_the_page(made):
    picture = numpy.asarray(pypdfium2.PdfDocument(io.BytesIO(made.content))[0].render(scale=1).to_pil().convert("RGB")).astype(int)
    ground = picture[3, 3]
    other = numpy.abs(picture - ground).max(axis=2) > 24
    assert other.mean() > 0.4 and all(part.any() for part in numpy.array_split(other, 8, axis=0))
