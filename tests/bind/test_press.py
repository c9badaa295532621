"""Parts set one by one and joined make the same book as one document, whatever was kept and whoever set them.

Tags: "PDFUA-1.xml" (7.1-3: all content is in the tree or an artifact); ISO 32000-1, 14.7.4.4 (the parent tree).
"""

import asyncio
import gc
import os
import re
import signal
import subprocess
import sys
import threading
import time
import weakref
from dataclasses import dataclass, replace
from pathlib import Path

import pikepdf
import pypdf
import pypdfium2
import pytest

from booklet.bind import book
from booklet.bind.drawings import PICTURE, placed, set_aside
from booklet.bind.edition import edition
from booklet.bind.fonts import css_for_pdf
from booklet.bind.pdf import copy_of, make_pdf, working_in
from booklet.bind.press.addresses import BASE, fetcher_of
from booklet.bind.press.binding import _Place, _Placing, bind
from booklet.bind.press.cache import Cache
from booklet.bind.press.link import LinkOrder
from booklet.bind.press.orders import PartOrder, Setting, key_of
from booklet.bind.press.parts import FOLIO, written
from booklet.bind.press.tagged import finish
from booklet.bind.press.workshop import TIDY, HereAndNow, Workshop, fill, pool
from booklet.errors import UnreadableInput
from booklet.source.workspace import load
from tests.lint.books import PATTERN, write_book


@pytest.fixture(scope="module")
def copy(tiny):
    """The tiny book as HTML, and all that is needed to bind it."""
    on = edition(tiny.workspace.book)
    whole = asyncio.run(book.gathered(tiny.workspace, on))
    return copy_of(book.book_html(tiny.workspace, whole, on), tiny.root, whole.drawings, whole.titles)


@pytest.fixture(scope="module")
def kept(copy, tmp_path_factory):
    """A cache that holds the whole book, and the book."""
    folder = tmp_path_factory.mktemp("press") / "cache"
    with Workshop(folder, HereAndNow) as workshop:
        return folder, bind(copy, workshop)


class Watched(Workshop):
    """A workshop that notes the orders that no cache had."""

    def __init__(self, *arguments):
        super().__init__(*arguments)
        self.filled = []

    def _hand_out(self, key, order, future):
        self.filled.append(order)
        super()._hand_out(key, order, future)


def bound(copy, folder, start=HereAndNow, fresh=False):
    """The book, and the orders that had to be filled."""
    with Watched(folder, start, fresh) as workshop:
        return bind(copy, workshop), workshop.filled


def one_document(copy):
    """The same book set at once by the typesetter alone, with the page numbers that it has itself. It reads all SVG that is there; pictures in the contents lie beside it."""
    from weasyprint import CSS, HTML
    from weasyprint.text.fonts import FontConfiguration

    numbers, drawings = dict.fromkeys(copy.titles, 1), {}

    def beside_it(svg):
        small, found = set_aside(svg, copy.files)
        drawings.update(found)
        return small

    for _ in range(2):
        inner = "".join(part.printed(copy.titles, numbers) for part in copy.document.parts)
        inner = PICTURE.sub(lambda match: beside_it(match[0]) if "data-src" in match[0] else match[0], inner)
        html = f'<html lang="en"><head><title>{copy.document.about.title}</title></head>{copy.document.body}{inner}</body></html>'
        fonts, fetcher = FontConfiguration(), fetcher_of({})
        sheets = [CSS(string=text, font_config=fonts, url_fetcher=fetcher) for text in (css_for_pdf(), copy.document.style)]
        with placed(drawings):
            document = HTML(string=html, base_url=BASE, url_fetcher=fetcher).render(stylesheets=sheets, font_config=fonts, pdf_variant="pdf/ua-1", dpi=300)
        numbers = {name: at for at, page in reversed(list(enumerate(document.pages, 1))) for name in page.anchors}
    return document.write_pdf(finisher=lambda document, pdf: finish(pdf), pdf_variant="pdf/ua-1", dpi=300)


def entries(outline, reader, depth=0):
    for entry in outline:
        if isinstance(entry, list):
            yield from entries(entry, reader, depth + 1)
        else:
            yield depth, entry.title, reader.get_destination_page_number(entry), round(float(entry.top), 2)


def links(reader):
    for at, page in enumerate(reader.pages):
        for link in page.get("/Annots", []):
            link = link.get_object()
            yield at, [round(float(value), 2) for value in link["/Rect"]], link.get("/Dest"), link["/Contents"], link.get("/A", {}).get("/URI")


def same_as_one_document(copy, content, tmp_path):
    """Hold a joined book against the one that the typesetter makes at once. Returns its number of pages."""
    whole = tmp_path / "whole.pdf"
    whole.write_bytes(one_document(copy))
    joined = tmp_path / "joined.pdf"
    joined.write_bytes(content)
    one, other = (pypdfium2.PdfDocument(path) for path in (whole, joined))
    assert len(one) == len(other)
    for ours, theirs in zip(other, one):
        # Drawings are rounded to thousandths of a millimetre where the typesetter reads SVG.
        assert abs(ours.render(scale=1).to_numpy().astype(int) - theirs.render(scale=1).to_numpy()).max() <= 3
        assert ours.get_textpage().get_text_range() == theirs.get_textpage().get_text_range()
    one, other = (pypdf.PdfReader(path) for path in (whole, joined))
    assert list(entries(other.outline, other)) == list(entries(one.outline, one))
    assert sorted(map(str, links(other))) == sorted(map(str, links(one)))
    assert {name: (other.get_destination_page_number(place), place.top) for name, place in other.named_destinations.items()} == {
        name: (one.get_destination_page_number(place), place.top) for name, place in one.named_destinations.items()}
    return len(other.pages)


def test_joined_parts_are_the_book_that_one_document_makes(copy, kept, tmp_path):
    assert same_as_one_document(copy, kept[1], tmp_path) > 20


CONTENTS = """<html lang="en"><head><title>{{ title }}</title><style>{{ style }}</style></head><body class="book"><section class="contents">
<a href="#morning-cloud">Morning Cloud</a> <a class="folio" href="#morning-cloud">{{ folio("morning-cloud") }}</a></section>
{% for section in sections %}{{ section }}{% endfor %}</body></html>"""


@pytest.mark.parametrize("kind", ["large: true", "screen: true", "{grey: true, marks: true, bleed: 3 mm, start: right, hand: left}"])
def test_every_kind_of_edition_is_joined_as_one_document_makes_it(tmp_path, kind):
    root = write_book(tmp_path / "book", {"morning-cloud.yaml": PATTERN, "book.yaml": f"title: B\norder: [morning-cloud]\neditions: {{other: {kind if kind[0] == '{' else f'{{{kind}}}'}}}\n"})
    (root / "templates").mkdir()
    (root / "templates" / "book.html.jinja").write_text(CONTENTS, "utf-8")
    workspace = load(root)
    on = edition(workspace.book, "other")
    whole = asyncio.run(book.gathered(workspace, on))
    copy = copy_of(book.book_html(workspace, whole, on), root, whole.drawings, whole.titles)
    assert same_as_one_document(copy, bind(copy, Workshop(start=HereAndNow)), tmp_path) > 4


def test_contents_print_the_page_that_a_link_leads_to(kept, tmp_path):
    path = tmp_path / "joined.pdf"
    path.write_bytes(kept[1])
    reader = pypdf.PdfReader(path)
    (contents,) = [page for page in reader.pages if page.extract_text().startswith("Contents")]
    printed = [int(number) for number in re.findall(r"\b\d+\b(?=\s*$)", contents.extract_text(), re.MULTILINE)]
    led = {reader.get_destination_page_number(reader.named_destinations[link.get_object()["/Dest"]]) + 1 for link in contents["/Annots"]}
    assert led <= set(printed)
    assert reader.page_labels == [str(number) for number in range(1, len(reader.pages) + 1)]
    assert FOLIO not in contents.extract_text()


def marked(page):
    """The numbers of marked content on a page."""
    for instruction in pikepdf.parse_content_stream(page):
        if str(instruction.operator) == "BDC" and isinstance(instruction.operands[1], pikepdf.Dictionary) and "/MCID" in instruction.operands[1]:
            yield int(instruction.operands[1].MCID)


def test_tags_of_all_parts_hang_in_one_tree(kept, tmp_path):
    path = tmp_path / "joined.pdf"
    path.write_bytes(kept[1])
    with pikepdf.open(path) as pdf:
        assert pdf.check_pdf_syntax() == []
        nums = list(pdf.Root.StructTreeRoot.ParentTree.Nums)
        keys = [int(key) for key in nums[::2]]
        assert keys == sorted(set(keys))
        owners, elements, ids, todo = dict(zip(keys, nums[1::2])), set(), [], [pdf.Root.StructTreeRoot.K[0]]
        while todo:
            element = todo.pop()
            assert element.objgen not in elements
            elements.add(element.objgen)
            ids += [str(element.ID)] if "/ID" in element else []
            for kid in element.get("/K", []):
                if isinstance(kid, pikepdf.Dictionary) and kid.get("/S"):
                    assert kid.P.objgen == element.objgen
                    todo.append(kid)
        assert len(ids) == len(set(ids)) > 10
        used = set()
        for page in pdf.pages:
            used.add(int(page.StructParents))
            claimed = owners[page.StructParents]
            assert all(owner.objgen in elements for owner in claimed if owner is not None)
            for number in marked(page):   # everything that is marked on the page belongs to an element, which claims it
                assert [kid for kid in claimed[number].K if kid == number or isinstance(kid, pikepdf.Dictionary) and kid.get("/MCID") == number]
            for link in page.get("/Annots", []):
                used.add(int(link.StructParent))
                assert owners[int(link.StructParent)].objgen in elements
        assert used == set(keys)


def test_one_worker_or_two_and_cold_or_warm_give_the_same_bytes(copy, kept, tmp_path):
    folder, whole = kept
    again, filled = bound(copy, folder)
    assert again == whole and filled == []
    by_two, filled = bound(copy, tmp_path / "other", lambda: pool(2))
    assert by_two == whole and len(filled) > 5


def test_a_fresh_build_uses_nothing_that_was_there(tmp_path):
    cache = Cache(tmp_path)
    cache.put("aa11", b"old")
    fresh = Cache(tmp_path, fresh=True)
    assert fresh.get("aa11") is None
    fresh.put("aa11", b"new")
    assert fresh.get("aa11") == cache.get("aa11") == b"new"


def test_one_edit_sets_one_part_anew(copy, kept):
    folder, whole = kept
    parts = list(copy.document.parts)
    at = next(at for at, part in enumerate(parts) if part.known.id == "morning-cloud")
    text = parts[at].html.replace("Materials", "Materiel")
    parts[at] = written(text)
    changed, filled = bound(replace(copy, document=replace(copy.document, parts=tuple(parts))), folder)
    assert [order.html[:40] for order in filled if isinstance(order, PartOrder)] == [text[:40]]
    assert len([order for order in filled if isinstance(order, LinkOrder)]) == 1
    assert changed != whole


@pytest.mark.parametrize("change", [
    {"style": "p { color: #123456 }"}, {"language": "de"}, {"body": '<body class="other">'}, {"options": (("pdf_variant", "pdf/ua-1"), ("dpi", 200))},
    {"faces": "other"}, {"files": (("a.png", b"1"),)}, {"bleed": 3.0}, {"black": True}])
def test_every_field_of_a_setting_changes_the_key(change):
    setting = Setting("", files=())
    order = PartOrder(setting, "<p></p>", "left", "")
    assert key_of(order) != key_of(replace(order, setting=replace(setting, **change)))


@pytest.mark.parametrize("change", [{"html": "<p>x</p>"}, {"side": "right"}, {"next": "left"}, {"files": {"a.png": b""}}])
def test_every_field_of_an_order_changes_the_key(change):
    order = PartOrder(Setting(""), "<p></p>", "left", "")
    assert key_of(order) != key_of(replace(order, **change))


def test_another_version_of_the_typesetter_changes_the_key(monkeypatch):
    from booklet.bind.press import orders

    order = PartOrder(Setting(""), "<p></p>", "left", "")
    before = key_of(order)
    monkeypatch.setattr(orders, "engine_versions", lambda: (("weasyprint", "0"),))
    orders._versions_digest.cache_clear()
    assert key_of(order) != before
    orders._versions_digest.cache_clear()


@pytest.mark.parametrize("damage", [lambda content: content[:-5], lambda content: b"", lambda content: content[:100] + b"?" + content[101:], lambda content: b"something else"])
def test_a_damaged_entry_is_made_anew(copy, kept, damage):
    folder, whole = kept
    at = next(at for at, part in enumerate(copy.document.parts) if part.known.id == "before-you-begin")
    placing, keys = _Placing(copy, None), set()
    for side in ("left", "right"):
        placing.places[at] = _Place(side, "", ())
        keys.add(key_of(placing.order(at)))
    (path,) = [path for path in folder.glob("??/*") if path.name in keys]
    path.write_bytes(damage(path.read_bytes()))
    again, filled = bound(copy, folder)
    assert again == whole
    assert [order.html for order in filled] == [copy.document.parts[at].printed(copy.titles, {})]


def test_a_cache_forgets_what_was_not_used_for_longest(tmp_path):
    cache = Cache(tmp_path, most=250)
    for at, key in enumerate(("aa11", "bb22", "cc33")):
        cache.put(key, b"x" * 50)
        os.utime(cache._path(key), (at, at))
    assert cache.get("aa11") == b"x" * 50   # and so is used today
    cache.trim()
    assert [cache.get(key) is None for key in ("aa11", "bb22", "cc33")] == [False, True, False]


def test_a_cache_keeps_all_that_a_build_has_used(tmp_path):
    cache = Cache(tmp_path, most=250)
    cache.put("aa11", b"x" * 50)
    os.utime(cache._path("aa11"), (1, 1))
    for at in range(9):
        cache.put(f"bb2{at}", b"x" * 50)
    cache.trim()
    assert cache.get("aa11") is None and all(cache.get(f"bb2{at}") for at in range(9))


class Wasteful:
    """An order that leaves garbage: a thing that holds itself."""

    left = []

    def fill(self) -> bytes:
        self.own = self
        self.left.append(weakref.ref(self))
        return b"done"


def test_a_worker_collects_what_orders_leave():
    gc.disable()
    try:
        for _ in range(2 * TIDY):
            assert fill(Wasteful()) == b"done"
        assert sum(one() is not None for one in Wasteful.left) <= TIDY
    finally:
        gc.enable()


@dataclass(frozen=True)
class Deadly:
    """An order whose worker is stopped from outside, the first time."""

    once: str

    def fill(self) -> bytes:
        if not Path(self.once).exists():
            Path(self.once).write_text("")
            os.kill(os.getpid(), signal.SIGKILL)
        return b"done"


def test_an_order_is_handed_out_again_when_its_worker_dies(tmp_path):
    with Workshop(tmp_path / "cache", lambda: pool(2)) as workshop:
        assert asyncio.run(workshop.result(Deadly(str(tmp_path / "once")))) == b"done"


def test_a_part_that_cannot_be_set_is_told_from_a_worker(tmp_path):
    with pytest.raises(UnreadableInput, match="nowhere.png is not a file of this workspace"), working_in(Workshop(tmp_path / "cache", lambda: pool(2))):
        make_pdf('<html lang="en"><head><title>x</title></head><body><p><img alt="x" src="nowhere.png"></p></body></html>', tmp_path, {}, {})


@pytest.mark.parametrize("body, message", [
    ('<p>x</p> loose <p>y</p>', "the page template has text outside its sections: loose"),
    ('<p><a href="#nowhere">x</a></p>', "a link leads to 'nowhere', which is no place of this book"),
    ("<p>\ue000nowhere\ue001</p>", "a page number is asked for 'nowhere'")])
def test_error_what_cannot_be_joined_is_one_clear_line(tmp_path, body, message):
    with pytest.raises(UnreadableInput, match=message):
        make_pdf(f'<html lang="en"><head><title>x</title></head><body>{body}</body></html>', tmp_path, {}, {})


def test_error_text_placed_on_a_page_that_it_does_not_fit(tmp_path):
    body = '<section style="position: relative; height: 9cm"><div style="position: absolute; top: 0">' + "<p>Pick up two beads.</p>" * 90 + "</div></section>"
    with pytest.raises(UnreadableInput, match="does not fit it, from 'Pick up two beads.'"):
        make_pdf(f'<html lang="en"><head><title>x</title></head><body>{body}</body></html>', tmp_path, {}, {})


class Plain:
    """An order for which the typesetter has to be there, or not."""

    def __init__(self, typesets):
        self.typesets = typesets

    def fill(self):
        return b"done"


def test_a_worker_that_has_to_load_the_typesetter_leaves_pages_to_others_until_it_has(monkeypatch):
    loads, loaded = threading.Event(), []
    monkeypatch.setattr("booklet.bind.press.typeset.warm", lambda: loaded.append(loads.wait(60)))
    monkeypatch.setattr("booklet.bind.press.workshop._loading", [None])
    assert (fill(Plain(False)), loaded) == (b"done", [])
    assert [fill(Plain(True)), fill(Plain(True)), fill(Plain(False))] == [None, None, b"done"]
    loads.set()
    while (made := fill(Plain(True))) is None:
        time.sleep(0.001)
    assert (made, loaded) == (b"done", [True]) and fill(Plain(True)) == b"done"


KILLED = """
import os, time
from booklet.bind.press.workshop import pool
made = pool(2)
print(*{made.submit(os.getpid).result() for _ in range(20)}, flush=True)
time.sleep(60)
"""


def test_workers_go_when_whoever_began_them_was_killed():
    with subprocess.Popen([sys.executable, "-c", KILLED], stdout=subprocess.PIPE, text=True) as builder:
        at_work = [int(number) for number in builder.stdout.readline().split()]
        assert all(map(is_at_work, at_work)) and at_work
        builder.kill()
    end = time.monotonic() + 20
    while any(map(is_at_work, at_work)) and time.monotonic() < end:
        time.sleep(0.05)
    assert not any(map(is_at_work, at_work))


def is_at_work(process):
    """Whether a process is there and has not ended; whoever begins one that goes on alone may not have noticed its end."""
    try:
        os.kill(process, 0)
        return "(zombie)" not in Path(f"/proc/{process}/status").read_text() if Path("/proc").is_dir() else True
    except OSError:
        return False
