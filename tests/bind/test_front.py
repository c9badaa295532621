"""The front and the back of a book hold their words, however long those are."""

import asyncio
import io

import pypdfium2
import pytest

from booklet.bind.book import style
from booklet.bind.edition import Edition
from booklet.bind.front import front_of
from booklet.bind.html import paper_setter
from booklet.bind.pdf import make_pdf
from tests.bind.copies import TINY

EDITIONS = {"A5": Edition(), "large Letter": Edition(width=215.9, height=279.4, type=18.0, leading=1.5, large=True), "phone": Edition(width=90.0, height=160.0, type=13.0, screen=True)}
LONG = {"title": "Clouds and Fronts over the Western Approaches", "subtitle": "Brick-stitch earrings with fringe for everybody who looks out of the window before going out, and for those who do not",
        "author": "Isobar Bead Studio of the Harbour Road"}


def pages(tiny, on, titles):
    """The text of each page of a cover and a back, and how many titles the back has room for."""
    pieces = [pattern.piece for pattern in tiny.workspace.patterns.values()]
    front = asyncio.run(front_of(pieces, on, LONG["title"], LONG["subtitle"], [LONG["author"]]))
    setter = paper_setter(TINY, on, book={**LONG, "copyright": ""})
    inner = "".join(f'<section class="{name}">{setter.fill(f"parts/{part}.html.jinja", front=front, patterns=[{"title": title} for title in titles])}</section>'
                    for name, part in (("cover", "front"), ("back", "back")))
    html = f'<html lang="en"><head><title>x</title><style>{style(TINY, on)}</style></head><body class="book">{inner}</body></html>'
    return [" ".join(page.get_textpage().get_text_range().split()) for page in pypdfium2.PdfDocument(io.BytesIO(make_pdf(html, TINY, {}, {}, on)))], front.titles


@pytest.mark.parametrize("name", EDITIONS)
def test_long_words_and_many_titles_stay_on_their_page(tiny, name):
    found, room = pages(tiny, EDITIONS[name], [f"Cloud {number}" for number in range(1, 101)])
    cover, back = [page for page in found if page]
    assert all(text in cover for text in LONG.values())
    assert f"Cloud {room - 1}" in back and f"Cloud {room} " not in back and f"and {101 - room} more" in back


def test_a_few_titles_are_all_named(tiny):
    found, room = pages(tiny, EDITIONS["A5"], ["Cloud", "Sun"])
    assert room > 12 and "Cloud" in found[-1] and "Sun" in found[-1] and "more" not in found[-1]
