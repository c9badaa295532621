"""Filling orders with the typesetter. This runs in a worker, needs nothing but the order, and imports the typesetter once."""

from __future__ import annotations

import atexit
import gc
import json
import logging
import re
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from functools import lru_cache

from ...errors import UnreadableInput
from ..drawings import placed, set_aside
from ..fonts import css_for_pdf
from .addresses import BASE, fetcher_of
from .capture import Captured, capture, take_one
from .folios import folio_pages, for_folios, for_parts
from .fragment import Fragment
from .inks import boxed
from .orders import FoliosOrder, FontsOrder, PartOrder, Setting, SidesOrder
from .tagged import finish, tell_languages
from .tidy import tidy

LARGE = 200_000          # characters of a part without drawings that takes a hundred megabytes: the contents of 250 patterns
END = "booklet-end"      # id of the empty element behind a part, which shows where the part has ended


def warm() -> None:
    """Make a worker ready: import the typesetter, which is never garbage."""
    _engine()
    gc.freeze()


@lru_cache(maxsize=None)
def _engine():
    from weasyprint import CSS, HTML
    from weasyprint.text.fonts import FontConfiguration

    tell_languages()
    fonts = FontConfiguration()
    atexit.register(_engine.cache_clear)   # at the very end Python has taken away what it needs to close its fonts
    return HTML, CSS, fonts, CSS(string=css_for_pdf(), font_config=fonts, url_fetcher=fetcher_of({}))


@lru_cache(maxsize=8)
def _sheet(style: str, files: tuple[tuple[str, bytes], ...]):
    _, css, fonts, _ = _engine()
    return css(string=style, font_config=fonts, base_url=BASE, url_fetcher=fetcher_of(dict(files)))


@contextmanager
def _heard() -> Iterator[None]:
    """Whatever the typesetter would only log as an error is raised."""
    problems = _Problems()
    logger = logging.getLogger("weasyprint")
    before, logger.propagate = (list(logger.handlers), logger.propagate), False
    logger.handlers = [problems]
    try:
        yield
    finally:
        logger.handlers, logger.propagate = before
    if problems.texts:
        raise UnreadableInput(f"the PDF cannot be set: {problems.texts[0]}")


class _Problems(logging.Handler):
    def __init__(self) -> None:
        super().__init__(logging.ERROR)
        self.texts: list[str] = []

    def emit(self, record: logging.LogRecord) -> None:
        self.texts.append(record.getMessage())


def _document(setting: Setting, style: str, body: str, side: str = "right", files: Mapping[str, bytes] | None = None):
    """Laid out pages: a document whose first page lies on `side`."""
    html, _, fonts, faces_css = _engine()
    text = f'<!DOCTYPE html><html lang="{setting.language}" style="break-before: {side}"><head><meta charset="utf-8"></head>{setting.body}{body}</body></html>'
    options = {name: value for name, value in setting.options}
    return html(string=text, base_url=BASE, url_fetcher=fetcher_of({**dict(setting.files), **(files or {})})).render(
        stylesheets=[faces_css, _sheet(style, setting.files)], font_config=fonts, **options)


def _captured(document, setting: Setting, finisher: Callable) -> Fragment:
    """Paint the pages as far as objects, and take these before a file is written."""
    try:
        document.write_pdf(finisher=finisher, **dict(setting.options))
    except Captured as taken:
        return taken.fragment
    raise AssertionError("the finisher was not called")


def set_part(order: PartOrder) -> bytes:
    small, drawings = set_aside(order.html, order.files)
    tidies = len(small) > LARGE
    if tidies:   # there shall not be the garbage of other parts besides
        tidy()
    behind = f'<div id="{END}" style="break-before: {order.next or "page"}"></div>'
    with _heard(), placed(drawings):
        document = _document(order.setting, for_parts(order.setting.style), small + behind, order.side, order.files)
        count = next(at for at, page in enumerate(document.pages) if END in page.anchors)
        _check_ended(document.pages[count])

        def finisher(document, pdf):
            links = finish(pdf)
            for page in pdf.page_references:
                boxed(pdf.objects[int(page.split()[0])], order.setting.bleed)
            fragment = capture(document, pdf, 0, count, order.setting.black)
            fragment.links = links
            raise Captured(fragment)

        with _without_fonts():
            fragment = _captured(document, order.setting, finisher)
    del document
    if tidies:
        tidy()
    return fragment.packed()


def _check_ended(page) -> None:
    """Nothing of a part may stand on the page after its end. What is placed on a page by hand would be carried over there, and lost."""
    from weasyprint.formatting_structure.boxes import MarginBox, TextBox

    for child in page._page_box.children:
        for box in child.descendants() if not isinstance(child, MarginBox) else ():
            if isinstance(box, TextBox) and box.text.strip():
                raise UnreadableInput(f"text that is placed on a page does not fit it, from {' '.join(box.text.split())[:40]!r}", "make it shorter, or the page larger")


@contextmanager
def _without_fonts() -> Iterator[None]:
    """While a part is painted, no fonts are made for it: the book has one of each face, with the glyphs of all parts.

    The typesetter has no public way to leave them out, and cutting them down takes a twentieth of the time.
    """
    import pydyf
    from weasyprint import pdf

    own = pdf.build_fonts_dictionary
    pdf.build_fonts_dictionary = lambda *_: pydyf.Dictionary()
    try:
        yield
    finally:
        pdf.build_fonts_dictionary = own


def set_sides(order: SidesOrder) -> bytes:
    """Each kind of part is set empty, twice in a row, each on a page of its own; one that must begin left or right lies on the same side both times."""
    parts = []
    for opening in order.openings:
        end = f"</{re.match('<([a-z0-9]+)', opening)[1]}>"
        for _ in range(2):
            parts.append(f'<div style="break-after: page"></div>{opening[:-1]} id="booklet-{len(parts)}">{end}')
    with _heard():
        pages = _document(order.setting, order.setting.style, "<div></div>" + "".join(parts)).pages
    sides = {name: page._page_box.page_type.side for page in pages for name in page.anchors if name.startswith("booklet-")}
    found = {}
    for at, opening in enumerate(order.openings):
        once, again = sides.get(f"booklet-{2 * at}"), sides.get(f"booklet-{2 * at + 1}")
        found[opening] = once if once and once == again else ""
    return json.dumps(found, sort_keys=True).encode()


def set_folios(order: FoliosOrder) -> bytes:
    with _heard():
        first = next((at for at, page in enumerate(order.pages, 1) if page.number == 1), 0)
        style = for_folios(order.setting.style, order.total, first)
        document = _document(order.setting, style, folio_pages(order.pages), order.pages[0].side)

        def finisher(document, pdf):
            for page in pdf.page_references:
                _as_artifact(pdf.objects[int(pdf.objects[int(page.split()[0])]["Contents"].split()[0])])
            raise Captured(capture(document, pdf, 0, len(order.pages), order.setting.black))

        return _captured(document, Setting("", options=(("pdf_tags", False),)), finisher).packed()


def _as_artifact(content) -> None:
    """Make what is painted on a sheet a thing beside the text; a sheet without a number is left empty."""
    text = b"\n".join(part if isinstance(part, bytes) else str(part).encode() for part in content.stream)
    beyond = re.search(rb"/(\S+) (?:Do|sh)\b|/(?!a1(?:\.0)? |A1(?:\.0)? )(\S+) gs\b", text)
    if beyond:
        raise UnreadableInput("a margin box with a page number holds more than plain text in one colour", "keep pictures and see-through colours out of it")
    content.stream = [b"/Artifact <</Type /Pagination>> BDC", *content.stream, b"EMC"] if b"BT" in text.split() else []
    content.compress = bool(content.stream)


def set_fonts(order: FontsOrder) -> bytes:
    """Each face is called up by one letter, and then made to hold all glyphs of the book."""
    said = [f'<p style="font: {"italic" if italic else "normal"} {weight} 10pt \'{family}\'">x</p>' for _, family, weight, italic, _ in order.faces]
    with _heard():
        document = _document(order.setting, order.setting.style, "".join(said))

        def finisher(document, pdf):
            raise Captured(_filled_fonts(document, order))

        return _captured(document, order.setting, finisher).packed()


def _filled_fonts(document, order: FontsOrder) -> Fragment:
    import pydyf
    from weasyprint import DEFAULT_OPTIONS
    from weasyprint.pdf.fonts import build_fonts_dictionary

    own = {font.hash: font for font in document.fonts.values()}
    missing = [family for name, family, *_ in order.faces if name not in own]
    if missing:
        raise UnreadableInput(f"the PDF cannot be set: the font {missing[0]!r} is not one of this book", "name a family of an @font-face rule")
    for name, _, _, _, glyphs in order.faces:
        own[name].to_unicode = {glyph: text for glyph, text, _ in glyphs}
        own[name].widths = {glyph: width for glyph, _, width in glyphs}
    pdf = pydyf.PDF()
    chosen = {name: own[name] for name, *_ in order.faces}
    return take_one(pdf, build_fonts_dictionary(pdf, chosen, True, True, {**DEFAULT_OPTIONS, **dict(order.setting.options)}))
