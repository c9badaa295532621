"""The tiny book in German: an edition as PDF, and web pages. No word of ours is left in English, and what is the author's says its language."""

import asyncio
import dataclasses
import json
import re
import subprocess
import sys

import pikepdf
import pypdfium2
import pytest
from msgspec.structs import replace

from booklet.bind import book
from booklet.bind.catalogue import language
from booklet.bind.context import shown
from booklet.bind.edition import web_editions
from booklet.bind.geometry import Box, web_room
from booklet.bind.html import WEB, Medium, Setter
from booklet.bind.replayed import printed_lines
from booklet.bind.sections import licence, printed, web_stationery
from booklet.bind.translated import printing
from booklet.bind.web.article import articles
from booklet.bind.web.files import SCRIPTS
from booklet.bind.web.one_file import frame_of, one_file
from booklet.bind.web.orders import ArticlesOrder
from booklet.errors import WrongUse
from booklet.source.workspace import load
from tests.bind.copies import TINY, copy_of

LONG = 9   # characters of a fragment that tell a language
BOOK = """
editions: {deutsch: {language: de-AT}}
translations:
  de:
    title: Ein kleiner Himmel
    findings: {thread guard: Fadenschutz, ear wire: Ohrhaken}
"""
PATTERN = """
translations:
  de:
    title: Morgenwolke
    summary: Eine Wolke aus sechs Stichen.
    beads: {W: kreideweiß, B: sturmblau}
    notes: Die Grundreihe hat {{ base.stitches }} Stiche und {{ size.width }} mm, "leicht" zu zählen.
    steps: {finishing: Fertig.}
    colourways: {dusk: {name: Dämmerung, beads: {B: Pflaume}}}
    links: {film of the row start: Film vom Reihenanfang}
"""


@pytest.fixture(scope="module")
def workspace(tmp_path_factory):
    root = copy_of(TINY, tmp_path_factory.mktemp("german") / "tiny")
    for name, more in (("book", BOOK), ("morning-cloud", PATTERN)):
        file = root / "patterns" / f"{name}.yaml"
        file.write_text(file.read_text("utf-8") + more, "utf-8")
    (root / "patterns" / "pages" / "de").mkdir()
    (root / "patterns" / "pages" / "de" / "hello.md").write_text("# Hallo\n\nEin Buch mit {{ patterns }} Anleitungen.\n", "utf-8")
    found = load(root)
    assert not found.findings
    return found


def page_alone(workspace, tag):
    """The page of a pattern that needs nothing but itself."""
    return asyncio.run(one_file(frame_of(workspace, tag), "morning-cloud"))


@pytest.fixture(scope="module")
def pages(tmp_path_factory):
    """The web pages of the book as if it were written in German."""
    root = copy_of(TINY, tmp_path_factory.mktemp("german-web") / "tiny")
    file = root / "patterns" / "book.yaml"
    file.write_text(file.read_text("utf-8").replace("language: en", "language: de"), "utf-8")
    written = load(root)
    return {name: content.decode() for name, content in asyncio.run(book.web(written, "de")).items() if name.endswith((".html", ".js", ".svg"))} | {
        "one-file.html": page_alone(written, "de")}


@pytest.fixture(scope="module")
def pdf(workspace):
    (path,) = book.build(workspace, ("pdf",), name="deutsch")
    return path


def fragments():
    """Pieces of the English messages, between their values, that are long enough to be known again, unless German says the same."""
    messages = language("de").messages
    german = " ".join(form for forms in messages.values() for form in forms)
    found = {piece.strip(" .,;:") for _context, text in messages for piece in re.split(r"\{[^}]*\}", text)}
    return sorted(piece for piece in found if len(piece) >= LONG and " " in piece and piece not in german)


def folded(text):
    return " ".join(text.replace("\u00a0", " ").split())


def test_no_word_of_ours_is_left_in_the_pdf(pdf):
    document = pypdfium2.PdfDocument(pdf)
    text = folded(" ".join(page.get_textpage().get_text_bounded() for page in document))
    document.close()
    assert [piece for piece in fragments() if piece in text] == []
    assert all(word in text for word in ("Ein kleiner Himmel", "Inhalt", "Morgenwolke", "Mittel, Seite 12", "Anfang innen", "1,40 m (55 in)", "10 % Reserve", "Fadenschutz, 4 mm",
                                         "Bevor es losgeht", "Eine Anleitung finden", "Hallo", "„leicht“"))


def test_the_pdf_says_its_language_and_that_of_each_passage(pdf):
    with pikepdf.open(pdf) as file:
        assert file.Root.Lang == "de-AT"
        said = {str(one.Lang) for one in file.objects if isinstance(one, pikepdf.Dictionary) and "/S" in one and "/Lang" in one}
    assert "en" in said


def test_no_word_of_ours_is_left_in_the_web_pages(pages):
    for name, page in pages.items():
        text = folded(re.sub(r"<(script|style)>.*?</\1>", "", page, flags=re.DOTALL))
        assert name.endswith(".js") or [piece for piece in fragments() if piece in text] == [], name
    assert all('<html lang="de">' in page for name, page in pages.items() if name.endswith(".html"))


def test_scripts_say_their_words_in_the_language_of_the_page(pages):
    script = pages["booklet.js"]
    assert 'ngettext(["{count} Anleitung","{count} Anleitungen"]' in script and '_("Alles fertig")' in script
    assert "forms[+(n != 1)]".replace(" ", "") in script and SCRIPTS[0] == "words.js"
    assert len(script.encode()) < 15_000


def test_what_is_translated_is_printed_and_what_is_not_says_its_language(workspace):
    with printing(workspace, "de") as told:
        cloud, star = (shown(told.patterns[slug], web_room(), 1.0) for slug in ("morning-cloud", "evening-star"))
    assert (cloud.title, [one.name for one in cloud.materials], cloud.colourways[0].name) == ("Morgenwolke", ["kreideweiß", "sturmblau", "silver drop"], "Dämmerung")
    assert (cloud.materials[2].name.__html__(), star.title.__html__()) == (
        '<span lang="en">silver drop</span>', '<span lang="en">Evening &lt;Star&gt; &amp; Moon</span>')
    assert cloud.notes == "<p>Die Grundreihe hat 6 Stiche und 9,6 mm, „leicht“ zu zählen.</p>" and not hasattr(cloud.materials[0].name, "lang")
    assert '<div lang="en"><p>Put it <em>on</em> and go out.</p></div>' in next(step.html for step in star.steps if step.id == "finishing")
    assert next(step.html for step in cloud.steps if step.id == "finishing") == "<p>Fertig.</p>"
    assert "ear-wire" in [step.id for step in cloud.steps] and cloud.links[0].label == "Film vom Reihenanfang"
    assert cloud.colourways[0].changes == "B Pflaume, matt"


def test_printed_lines_of_the_pages_are_german(pages):
    rows, strands = printed_lines(pages["morning-cloud.html"])
    assert rows[1].startswith("Reihe 2 ← 5 Sets: Anfang innen") and strands[0] == "Strang 1, 9 Perlen: 6W, 2B; Ende 1D"


def test_the_gallery_names_levels_and_stitches_in_german(pages):
    assert re.findall("<i>([^<]+)</i>", pages["index.html"])[:2] == ["Mittel, bis 20\N{NO-BREAK SPACE}mm, Ziegelstich"] * 2


def test_english_reads_no_catalogue():
    script = "import sys; from booklet.bind.catalogue import language; language('en-GB'); print('babel' in sys.modules)"
    done = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "False"


def test_web_pages_of_an_edition_speak_its_language(workspace):
    (index,) = book.build(workspace, ("html",), name="deutsch")
    assert index.relative_to(workspace.root).as_posix() == "build/html-deutsch/index.html" and '<html lang="de-AT">' in index.read_text("utf-8")
    assert "Morgenwolke" in (index.parent / "morning-cloud.html").read_text("utf-8")
    assert [on.name for on in web_editions(workspace.book, "all")] == ["", "deutsch"]
    assert '<html lang="de-AT">' in page_alone(workspace, "de-AT") and '<html lang="en">' in page_alone(workspace, "en")


def test_workers_draw_charts_that_leave_room_for_german_words(workspace):
    with printing(workspace, "de") as told:
        pattern, room = told.patterns["morning-cloud"], dataclasses.replace(web_room(), chart=Box(60, 110))   # so narrow that words take room from beads
        common = dataclasses.replace(web_stationery(told), room=room)
        setter = Setter(told.root, Medium(WEB, room), up="", book=common.book, licence=licence(common.book))
        wanted = [str(one.html) for one in articles(setter, pattern, room, 1.0, "Himmel")]
    assert [one["html"] for one in json.loads(ArticlesOrder(printed(pattern), common, 1.0, "Himmel").fill())["articles"]] == wanted


def test_error_an_edition_in_the_language_of_the_book_is_the_same_on_the_web(workspace):
    with pytest.raises(WrongUse) as caught:
        web_editions(replace(workspace.book, language="de-AT"), "deutsch")
    assert str(caught.value) == "the edition 'deutsch' differs on paper alone: web pages are for every size and either hand"
