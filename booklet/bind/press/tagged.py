"""What the typesetter leaves open in a tagged PDF, mended while its objects can still be changed."""

from __future__ import annotations

from functools import lru_cache
from urllib.parse import unquote

from .addresses import LINK


@lru_cache(maxsize=None)
def tell_languages() -> None:
    """Let the typesetter say the language of every element that has one of its own, as PDF/UA asks. It has no way to be asked for this."""
    import pydyf
    from weasyprint.pdf import tags

    build = tags._build_box_tree

    def built(box, *others):
        for element in build(box, *others):
            lang = None if getattr(box, "element", None) is None else box.element.get("lang")
            if lang:
                element["Lang"] = pydyf.String(lang)
            yield element

    tags._build_box_tree = built


def finish(pdf) -> dict[str, str]:
    """Mend what the typesetter leaves open in a tagged PDF. Returns what links lead to: titles by id."""
    _scope_headers(pdf)
    _artifacts(pdf)
    return _resolve_links(pdf)


def _resolve_links(pdf) -> dict[str, str]:
    """Make links between parts links within the book, which say the title of what they lead to."""
    import pydyf

    led = {}
    for link in pdf.objects:
        address = link["A"]["URI"].string if isinstance(link, dict) and link.get("Subtype") == "/Link" and "A" in link else ""
        if address.startswith(LINK):
            name, _, title = map(unquote, address.removeprefix(LINK).partition("?"))
            del link["A"]
            link["Dest"], link["Contents"] = pydyf.String(name), pydyf.String(title)
            led[name] = title
    return led


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


