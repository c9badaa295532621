"""The book as a PDF, read back with general-purpose libraries.

Boxes and bleed: ISO 32000-1, 14.11.2; A5 of ISO 216. Tags: "PDFUA-1.xml" (clauses named beside the checks).
"""

import re

import pikepdf
import pypdf
import pytest

from booklet.craft.words import row_words, strand_words

POINT = 25.4 / 72


@pytest.fixture(scope="module")
def pdf(tiny):
    with pikepdf.open(tiny.pdf) as opened:
        yield opened


@pytest.fixture(scope="module")
def text(tiny):
    pages = pypdf.PdfReader(tiny.pdf).pages
    return " ".join(" ".join(page.extract_text() for page in pages).split())


def elements(pdf):
    """Every structure element of the tag tree, from the root down."""
    todo = [pdf.Root.StructTreeRoot.K]
    while todo:
        item = todo.pop()
        if isinstance(item, pikepdf.Array):
            todo += list(item)
        elif isinstance(item, pikepdf.Dictionary) and "/S" in item:
            yield item
            if "/K" in item:
                todo.append(item.K)


def test_every_row_and_strand_line_is_printed(tiny, text):
    plain = re.sub(r"\s", "", text)
    for pattern in tiny.workspace.patterns.values():
        for words in (*row_words(pattern.piece), *strand_words(pattern.piece)):
            assert re.sub(r"\s", "", words.line) in plain


def test_titles_versions_and_licence_are_printed(text):
    for wanted in ("Evening <Star> & Moon", "Morning Cloud · version 1.2", "You may make these pieces for yourself.", "This book by Isobar Bead Studio has 2 patterns."):
        assert wanted in text
    assert "alert" not in text


def test_title_language_and_author(pdf):
    assert str(pdf.docinfo["/Title"]) == "A Small Sky"
    assert str(pdf.docinfo["/Author"]) == "Isobar Bead Studio"
    assert str(pdf.Root.Lang) == "en"
    assert pdf.Root.ViewerPreferences.DisplayDocTitle  # 7.1-10
    assert "/CreationDate" not in pdf.docinfo


def test_bookmarks_lead_to_patterns_and_their_parts(tiny):
    reader = pypdf.PdfReader(tiny.pdf)
    top = [entry.title for entry in reader.outline if not isinstance(entry, list)]
    assert top == ["A Small Sky", "About this book", "Contents", "Hello", "Before you begin", "Techniques", "Morning Cloud", "Evening <Star> & Moon", "Thanks", "Words we use", "Find a pattern"]
    below = [entry.title for group in reader.outline if isinstance(group, list) for entry in group if not isinstance(entry, list)]
    assert below[:6] == ["Materials", "Thread and findings", "Body chart", "Body in words", "Step by step", "Fringe chart"]


def test_page_boxes_are_the_trim_with_its_bleed(pdf):
    for page in pdf.pages:
        trim, media = [[float(value) for value in box] for box in (page.TrimBox, page.MediaBox)]
        assert (trim[2] - trim[0]) * POINT == pytest.approx(148, abs=0.01)
        assert (trim[3] - trim[1]) * POINT == pytest.approx(210, abs=0.01)
        assert (media[2] - media[0]) * POINT == pytest.approx(154, abs=0.01)


def test_patterns_start_on_left_pages(tiny):
    reader = pypdf.PdfReader(tiny.pdf)
    starts = [reader.get_destination_page_number(entry) + 1 for entry in reader.outline
              if not isinstance(entry, list) and entry.title in ("Morning Cloud", "Evening <Star> & Moon")]
    assert len(starts) == 2
    assert all(number % 2 == 0 for number in starts)


def test_fonts_are_embedded_and_are_ours(pdf):
    names = set()
    for page in pdf.pages:
        for font in page.Resources.Font.values():
            (inner,) = font.DescendantFonts
            assert any(key in inner.FontDescriptor for key in ("/FontFile", "/FontFile2", "/FontFile3"))  # 7.21.4.1
            assert "/ToUnicode" in font
            names.add(str(inner.FontDescriptor.FontName))
    assert names
    assert all("Source" in name or "Booklet" in name for name in names), names


def test_every_picture_has_a_text_and_headings_skip_no_level(pdf):
    kinds = [(str(element.S), element) for element in elements(pdf)]
    figures = [element for kind, element in kinds if kind == "/Figure"]
    assert len(figures) > 6
    assert all(str(figure.Alt).strip() for figure in figures)  # 7.3-1
    assert {"/H1", "/H2", "/H3", "/Table", "/TH", "/L", "/LI", "/LBody", "/Link"} <= {kind for kind, _ in kinds}
    levels = [int(kind[2:]) for kind, _ in reversed(kinds) if re.fullmatch("/H[1-6]", kind)]
    assert min(levels) == 1
    for _, element in kinds:
        if element.S == "/TH":
            assert element.A.Scope in ("/Row", "/Column")  # 7.5-1


def test_every_mark_on_a_page_belongs_to_the_tag_tree_or_is_an_artifact(pdf):
    reached = {element.objgen for element in elements(pdf)}
    owners = dict(zip(*[iter(pdf.Root.StructTreeRoot.ParentTree.Nums)] * 2))
    checked = 0
    for page in pdf.pages:
        held = owners[page.StructParents]
        for operands, operator in pikepdf.parse_content_stream(page):
            if str(operator) == "BDC" and "/MCID" in operands[1]:
                assert held[int(operands[1].MCID)].objgen in reached  # 7.1-3
                checked += 1
    assert checked > 100


def test_links_resolve_and_say_where_they_lead(pdf):
    names = pdf.Root.Names.Dests.Names
    known = {str(name) for name in list(names)[::2]}
    links = [link for page in pdf.pages for link in page.get("/Annots", []) if link.Subtype == "/Link"]
    inner = [str(link.Dest) for link in links if "/Dest" in link]
    outer = {str(link.A.URI) for link in links if "/A" in link}
    assert set(inner) == {"hello", "before-you-begin", "techniques", "morning-cloud", "evening-star", "thanks", "glossary", "find-a-pattern"}
    assert set(inner) <= known
    assert outer == {"https://example.org/row-start?a=1&b=2", "mailto:hello@example.org"}
    said = {str(link.Contents) for link in links}  # 7.18.5-2
    assert said == {"Hello", "Before you begin", "Techniques", "Morning Cloud", "Evening <Star> & Moon", "Thanks", "Words we use", "Find a pattern", *outer}


def test_the_single_stands_alone(tiny):
    reader = pypdf.PdfReader(tiny.single)
    text = " ".join(" ".join(page.extract_text() for page in reader.pages).split())
    assert reader.metadata.title == "Morning Cloud"
    for wanted in ("version 1.2", "You may make these pieces for yourself.", "Before you begin", "Strand 6, 11 beads"):
        assert wanted in text
    assert "Evening" not in text
    assert "this book" not in text.lower()
    assert not re.search(r"see page|page \d+", text, re.IGNORECASE)
