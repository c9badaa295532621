"""The tags of the tiny book, walked as a screen reader walks them.

Rules are named by their clause of PDF/UA-1 as "PDFUA-1.xml" of the open validation profiles lists them. The package `pdfua` checks 16 of
its 106 rules, and is wrong about some files of the open corpus both ways: it is a smoke test, and our walk is the rest.
"""

import io
import re

import pikepdf
import pytest
from pdfua import validate

from booklet.craft.words import row_words, strand_words
from tests.bind.tagged import read

PAGE_NUMBER = re.compile(r"\d+")
VAGUE = {"here", "click here", "link", "more", "read more"}


@pytest.fixture(scope="module")
def content(tiny):
    return tiny.pdf.read_bytes()


@pytest.fixture(scope="module")
def tags(content):
    return read(content)


def test_headings_go_down_one_level_at_a_time(tags):
    """7.4.2: no level is left out."""
    levels = [int(heading.tag[1]) for heading in tags.all("H1", "H2", "H3", "H4")]
    assert levels[0] == 1 and {1, 2, 3} <= set(levels)
    assert all(after <= before + 1 for before, after in zip(levels, levels[1:]))
    assert all(heading.text for heading in tags.all("H1", "H2", "H3", "H4"))


def test_lists_hold_items_and_items_hold_bodies(tags):
    """7.2: L holds LI (and L, Caption); LI holds Lbl and LBody."""
    lists = tags.all("L")
    assert len(lists) > 10
    for one in lists:
        assert one.children and {child.tag for child in one.children} <= {"LI", "L", "Caption"}
        for item in one.children:
            assert {child.tag for child in item.children} <= {"Lbl", "LBody"} and any(child.tag == "LBody" for child in item.children)


def test_every_row_of_words_is_an_item_with_a_box_to_tick(tiny, tags):
    ticked = [re.sub(r"\s", "", item.text) for item in tags.all("LI") if item.text.startswith("☐")]
    lines = [re.sub(r"\s", "", words.line) for pattern in tiny.workspace.patterns.values() for words in (*row_words(pattern.piece), *strand_words(pattern.piece))]
    assert len(ticked) >= len(lines) and all(any(line in item for item in ticked) for line in lines)


def test_tables_are_rows_of_cells_whose_headers_say_what_they_head(tags):
    """7.2 and 7.5-1."""
    tables = tags.all("Table")
    assert tables
    for table in tables:
        assert {child.tag for child in table.children} <= {"THead", "TBody", "TFoot", "TR", "Caption"}
        rows = table.all("TR")
        assert rows and len({len(row.children) for row in rows}) == 1
        assert all(cell.tag in ("TH", "TD") for row in rows for cell in row.children)
        headers = table.all("TH")
        assert headers and all(header.held["A"]["Scope"] in ("Row", "Column") for header in headers)


def test_charts_tell_their_rows_in_words(tiny, tags):
    """7.3-1, and WCAG 2.2, 1.1.1: the text does what the picture does."""
    told = [re.sub(r"\s", "", figure.alt) for figure in tags.all("Figure")]
    assert all(told)
    for pattern in tiny.workspace.patterns.values():
        for words in (row_words(pattern.piece), strand_words(pattern.piece)):
            lines = [re.sub(r"\s", "", one.line) for one in words]
            assert any(all(line in alt for line in lines) for alt in told)


def test_links_say_where_they_lead(content, tags):
    """WCAG 2.2, 2.4.4; 7.18.5: a link that is no more than a page number has a description."""
    texts = [link.text for link in tags.all("Link")]
    assert texts and not [text for text in texts if not text or text.lower() in VAGUE]
    with pikepdf.open(io.BytesIO(content)) as pdf:
        said = [str(note.Contents) for page in pdf.pages for note in page.get("/Annots", [])]
    assert len(said) >= len(texts) and not [text for text in said if not text.strip() or PAGE_NUMBER.fullmatch(text)]


def test_text_is_read_in_the_order_in_which_it_stands(tags):
    """WCAG 2.2, 1.3.2: page after page, and from the head of each to its foot. Nothing on these pages stands in columns but the index of views."""
    place, checked = (0, -float("inf")), 0
    for element in tags.all("H1", "H2", "H3", "P", "TR", "LI"):
        if element.page < 0:
            continue
        now = (element.page, -element.top)
        assert now >= place or element.page == place[0] and element.top + place[1] < 4, element.text
        place, checked = now, checked + 1
    assert checked > 100


def test_language_and_title_are_said(content):
    """7.2 and 7.1-8 to 7.1-10."""
    with pikepdf.open(io.BytesIO(content)) as pdf:
        assert str(pdf.Root.Lang) == "en" and pdf.Root.ViewerPreferences.DisplayDocTitle and str(pdf.docinfo["/Title"]) == "A Small Sky"
        assert b"<pdfuaid:part>1<" in pdf.Root.Metadata.read_bytes()


def test_a_checker_finds_nothing(tiny):
    report = validate(str(tiny.pdf))
    assert [(finding.rule_id, finding.message) for finding in report.findings] == []
