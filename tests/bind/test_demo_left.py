"""The demo book for the left hand."""

import pytest

from tests.bind.demo import built, check_pages, check_size, check_type, check_words


@pytest.fixture(scope="module")
def made():
    return built("left-handed", every=3)


def test_pages_and_type_are_those_of_the_book(made):
    check_size(made, 148.0, 210.0)
    check_type(made, 7.0, 9.6)


def test_the_base_row_of_every_pattern_runs_to_the_left(made):
    firsts = [element.text for element in made.tags.all("LI") if element.text.startswith("☐ Row 1 ")]
    assert len(firsts) == len(made.patterns) >= 4 and all("Row 1 ←" in words for words in firsts)


def test_words_are_read_back_from_the_file(made):
    check_words(made)


def test_no_page_is_nearly_empty_or_runs_out_of_its_margins(made):
    check_pages(made)
