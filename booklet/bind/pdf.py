"""HTML to PDF: tagged (PDF/UA-1), offline, and the same bytes every time."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from contextvars import ContextVar
from pathlib import Path

from .press.addresses import files_of_templates
from .press.binding import Copy, bind, faces_digest
from .press.orders import Setting
from .press.parts import cut
from .press.workshop import HereAndNow, Workshop

_workshop: ContextVar[Workshop] = ContextVar("workshop")


@contextmanager
def working_in(workshop: Workshop) -> Iterator[Workshop]:
    """Everything that is made meanwhile is made there."""
    token = _workshop.set(workshop)
    try:
        with workshop:
            yield workshop
    finally:
        _workshop.reset(token)


def make_pdf(html: str, root: Path, files: Mapping[str, bytes], titles: Mapping[str, str]) -> bytes:
    """One PDF of one HTML document, each child of whose body begins a page. `files` holds pictures by their address, `titles` says by id what inner links lead to.

    Raises UnreadableInput for a picture that cannot be read.
    """
    document = cut(html)
    setting = Setting(document.style, document.about.language, document.body, faces=faces_digest(), files=tuple(sorted(files_of_templates(document.style, root).items())))
    copy = Copy(document, titles, {**files_of_templates(html, root), **files}, setting)
    try:
        return bind(copy, _workshop.get())
    except LookupError:
        with Workshop(start=HereAndNow) as workshop:
            return bind(copy, workshop)
