"""The demo book for a phone: pages of 9 to 16, with links that can be hit."""

import io

import pikepdf
import pytest

from tests.bind.demo import built, check_pages, check_size, check_type, check_words


@pytest.fixture(scope="module")
def made():
    return built("screen", every=3)


def test_pages_are_as_wide_as_a_phone_shows(made):
    check_size(made, 90.0, 160.0)


def test_type_can_be_read_at_three_quarters(made):
    check_type(made, 8.0, 13.0)


def test_words_are_read_back_from_the_file(made):
    check_words(made)


def test_every_section_can_be_reached_by_a_link(made):
    with pikepdf.open(io.BytesIO(made.content)) as pdf:
        led = {str(note.Dest) for page in pdf.pages for note in page.get("/Annots", []) if "/Dest" in note}
    assert {pattern.slug for pattern in made.patterns} <= led


def test_nothing_runs_out_of_its_margins(made):
    check_pages(made)
