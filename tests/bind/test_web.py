"""The web pages: valid, whole, and usable from a disk."""

import re
from html.parser import HTMLParser
from urllib.parse import unquote, urlsplit

import pytest

from booklet.bind.replayed import check_words, printed_lines
from booklet.craft.words import row_words
from booklet.errors import FindingsError

VOID = {"meta", "link", "br", "img", "input", "hr", "col", "wbr"}


class Page(HTMLParser):
    """Links, ids and whether every element is closed in its order."""

    def __init__(self, text):
        super().__init__()
        self.links, self.ids, self.open, self.tags = [], [], [], []
        self.feed(text)
        self.close()

    def handle_starttag(self, tag, attrs):
        self.tags.append((tag, dict(attrs)))
        self.links += [value for name, value in attrs if name in ("href", "src")]
        self.ids += [value for name, value in attrs if name == "id"]
        if tag not in VOID:
            self.open.append(tag)

    def handle_startendtag(self, tag, attrs):
        self.tags.append((tag, dict(attrs)))

    def handle_endtag(self, tag):
        assert self.open and self.open.pop() == tag


@pytest.fixture(scope="module")
def pages(tiny):
    return {path.relative_to(tiny.html).as_posix(): Page(path.read_text("utf-8")) for path in tiny.html.rglob("*.html")}


def test_there_is_a_page_for_everything(pages):
    assert sorted(name for name in pages if "/" not in name) == ["before-you-begin.html", "evening-star.html", "glossary.html", "hello.html", "index.html", "morning-cloud.html", "techniques.html", "thanks.html"]
    assert {name for name in pages if "/" in name} >= {"left/morning-cloud.html", "left/evening-star.html"}


def test_every_element_is_closed_and_ids_are_unique(pages):
    for page in pages.values():
        assert page.open == []
        assert len(page.ids) == len(set(page.ids))


def test_every_page_has_a_language_a_title_and_one_first_heading(pages, tiny):
    for name, page in pages.items():
        tags = dict(page.tags)
        assert tags["html"]["lang"] == "en"
        assert "title" in tags and "viewport" in str(page.tags)
        assert [tag for tag, _ in page.tags].count("h1") == 1, name


def test_every_local_link_leads_to_a_file(pages, tiny):
    followed = 0
    for name, page in pages.items():
        for link in page.links:
            parts = urlsplit(link)
            if parts.path and not parts.scheme:
                assert not parts.path.startswith("/")
                assert (tiny.html / name).parent.joinpath(unquote(parts.path)).is_file(), link
            else:
                assert parts.scheme or parts.fragment in page.ids
            followed += 1
    assert followed >= 60


def test_fonts_come_with_the_pages(tiny):
    css = (tiny.html / "booklet.css").read_text("utf-8")
    sources = re.findall(r'url\("([^"]+)"\)', css)
    assert sources and all((tiny.html / source).is_file() for source in sources)


def test_script_and_style_are_light(tiny):
    assert len((tiny.html / "booklet.js").read_bytes()) < 15_000
    assert len((tiny.html / "booklet.css").read_bytes()) < 25_000


def test_pictures_say_what_they_show(pages):
    for page in pages.values():
        for tag, attributes in page.tags:
            if tag == "svg":
                assert attributes["role"] == "img" and attributes["aria-label"].strip()
            if tag == "img":
                assert attributes["alt"].strip()


def test_words_are_read_back_from_the_page_itself(tiny):
    pattern = tiny.workspace.patterns["morning-cloud"]
    html = (tiny.html / "morning-cloud.html").read_text("utf-8")
    rows, strands = printed_lines(html)
    assert rows == [words.line for words in row_words(pattern.piece)]
    assert len(strands) == 6
    check_words(pattern, html)


def test_error_a_page_whose_words_are_wrong_stops_the_build(tiny):
    pattern = tiny.workspace.patterns["morning-cloud"]
    html = (tiny.html / "morning-cloud.html").read_text("utf-8")
    words = html.index('class="strand-words')
    wrong = html[:words] + html[words:].replace("10W, 2B; end", "9W, 3B; end", 1)
    assert wrong != html
    with pytest.raises(FindingsError) as caught:
        check_words(pattern, wrong)
    (finding,) = caught.value.findings
    assert finding.one_line().startswith("patterns/morning-cloud.yaml:14:10: error: the printed words do not rebuild the chart: strand 3")
