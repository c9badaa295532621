"""HTML to PDF: tagged (PDF/UA-1), offline, and the same bytes every time."""

from __future__ import annotations

import gc
import logging

from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from functools import partial
from hashlib import sha256
from pathlib import Path
from urllib.parse import unquote, urlsplit

from ..errors import UnreadableInput
from ..source.files import inside
from .drawings import Drawing, set_aside
from .fonts import css_for_pdf, faces

BASE = "booklet:///"   # relative addresses in a page begin here; no path of the machine gets into a PDF


def make_pdf(html: str, root: Path, files: Mapping[str, bytes], titles: Mapping[str, str]) -> bytes:
    """One PDF of one HTML document. `files` holds pictures by their address, `titles` says by id what inner links lead to. Raises UnreadableInput for a picture that cannot be read."""
    from weasyprint import CSS, HTML
    from weasyprint.text.fonts import FontConfiguration

    problems = _Problems()
    logger = logging.getLogger("weasyprint")
    before, logger.propagate = (list(logger.handlers), logger.propagate), False
    logger.handlers = [problems]
    gc.disable()  # a tenth of the time; a document's boxes live until its end anyway
    try:
        fetcher, fonts = _fetcher(root, files), FontConfiguration()
        faces_css = CSS(string=css_for_pdf(), font_config=fonts, url_fetcher=fetcher)
        small, drawings = set_aside(html)
        document = HTML(string=small, base_url=BASE, url_fetcher=fetcher)
        with placed(drawings):
            made = document.write_pdf(stylesheets=[faces_css], font_config=fonts, pdf_variant="pdf/ua-1", dpi=300, finisher=partial(finish, titles),
                                      pdf_identifier=sha256(html.encode()).hexdigest()[:32].encode())
    finally:
        gc.enable()
        logger.handlers, logger.propagate = before
    if problems.texts:
        raise UnreadableInput(f"the PDF cannot be set: {problems.texts[0]}")
    return made


@contextmanager
def placed(drawings: Mapping[str, Drawing]) -> Iterator[None]:
    """While a document is set, an <svg> that stands for a drawing is painted as that drawing.

    The typesetter has no public way to do this for an inline <svg>; a test holds its pages against those made from SVG.
    """
    from weasyprint.html import HTML_HANDLERS, make_replaced_box

    svg = "{http://www.w3.org/2000/svg}svg"
    own = HTML_HANDLERS[svg]

    def handler(element, box, get_image, base_url):
        drawing = drawings.get(element.get("data-drawing"))
        return [make_replaced_box(element, box, drawing)] if drawing else own(element, box, get_image, base_url)

    HTML_HANDLERS[svg] = handler
    try:
        yield
    finally:
        HTML_HANDLERS[svg] = own


class _Problems(logging.Handler):
    """Keeps the errors that the typesetter would only log."""

    def __init__(self) -> None:
        super().__init__(logging.ERROR)
        self.texts: list[str] = []

    def emit(self, record: logging.LogRecord) -> None:
        self.texts.append(record.getMessage())


def _fetcher(root: Path, files: Mapping[str, bytes]):
    """A fetcher that knows our own fonts, the given files and those of the user's templates, and refuses everything else."""
    from weasyprint.urls import URLFetcher, URLFetcherResponse

    own = {face.path.as_uri(): face.path for face in faces()}

    class Fetcher(URLFetcher):
        def fetch(self, url, headers=None):
            name = unquote(urlsplit(url).path).lstrip("/") if url.startswith(BASE) else None
            if name in files:
                return URLFetcherResponse(url, files[name])
            path = own.get(url) or (name and root / "templates" / name)
            if not path or not path.is_file() or not (url in own or inside(path, root / "templates")):
                raise ValueError(f"{url.removeprefix(BASE)} is not a file of this workspace")
            return URLFetcherResponse(url, path.read_bytes())

    return Fetcher()


def finish(titles: Mapping[str, str], document, pdf) -> None:
    """Mend what the typesetter leaves open in a tagged PDF."""
    _describe_links(titles, pdf)
    _scope_headers(pdf)
    _artifacts(pdf)


def _describe_links(titles: Mapping[str, str], pdf) -> None:
    """Let inner links say the title of what they lead to; the typesetter gives the bare id."""
    import pydyf

    for link in pdf.objects:
        if isinstance(link, dict) and link.get("Subtype") == "/Link" and "Dest" in link:
            link["Contents"] = pydyf.String(titles[link["Dest"].string])


def _scope_headers(pdf) -> None:
    """Say of every header cell whether it heads a column or a row, which PDF/UA asks for."""
    for element in pdf.objects:
        if isinstance(element, dict) and element.get("S") == "/TH" and "A" in element:
            element["A"]["Scope"] = "/Row" if _in_body(element, pdf) else "/Column"


def _in_body(element: dict, pdf) -> bool:
    row = _object(element["P"], pdf)
    return _object(row["P"], pdf).get("S") == "/TBody"


def _object(reference: bytes, pdf):
    return pdf.objects[int(reference.split()[0])]


def _artifacts(pdf) -> None:
    """Page numbers and running feet are tagged but hang nowhere in the tree: make them artifacts."""
    root = _object(pdf.catalog["StructTreeRoot"], pdf)
    reached = _reached(root, pdf)
    numbers = _object(root["ParentTree"], pdf)["Nums"]
    elements = dict(zip(numbers[::2], numbers[1::2]))
    for page in pdf.page_references:
        page = _object(page, pdf)
        owners = elements[page["StructParents"]]
        stray = {mcid for mcid, owner in enumerate(owners) if owner not in reached}
        for mcid in stray:
            owners[mcid] = "null"
        _unmark(_object(page["Contents"], pdf).stream, stray)


def _reached(root: dict, pdf) -> set[bytes]:
    """References of every structure element that hangs in the tree."""
    reached, todo = set(), list(root["K"])
    while todo:
        reference = todo.pop()
        if isinstance(reference, bytes) and reference not in reached:
            reached.add(reference)
            todo += _object(reference, pdf).get("K", ())
    return reached


def _unmark(stream: list, stray: set[int]) -> None:
    """Turn `/Span <</MCID n>> BDC` of stray marks into `/Artifact BMC`."""
    for at in range(len(stream) - 2):
        if stream[at + 2] == b"BDC" and isinstance(stream[at + 1], dict) and stream[at + 1].get("MCID") in stray:
            stream[at:at + 3] = ["/Artifact", b"", b"BMC"]


