"""HTML to PDF: tagged (PDF/UA-1), offline, and the same bytes every time."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from contextvars import ContextVar
from pathlib import Path

from .edition import Edition
from .press.addresses import files_of_templates, named_in
from .press.binding import Bound, Copy, bind, bound
from .press.orders import Setting
from .press.parts import Part, cut
from .press.versions import faces_digest
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


def workshop() -> Workshop:
    """Where things are made: where `working_in` says, else in this process, and nothing is kept."""
    return _workshop.get(None) or Workshop(start=HereAndNow)


def make_pdf(html: str, root: Path, files: Mapping[str, bytes], titles: Mapping[str, str], on: Edition = Edition()) -> bytes:
    """One PDF of one HTML document for an edition, each child of whose body begins a page. `files` holds pictures by their address, `titles` says by id what inner links lead to.

    Raises UnreadableInput for a picture that cannot be read.
    """
    return bind(copy_of(html, root, files, titles, on), workshop())


async def typeset(html: str, root: Path, files: Mapping[str, bytes], titles: Mapping[str, str], on: Edition = Edition()) -> Bound:
    """What `make_pdf` joins to its PDF, made beside other work."""
    return await set_copy(copy_of(html, root, files, titles, on))


async def set_copy(copy: Copy) -> Bound:
    """The set parts of a copy, made where `working_in` says."""
    return await bound(copy, workshop())


def copy_of(html: str, root: Path, files: Mapping[str, bytes], titles: Mapping[str, str], on: Edition = Edition(), elsewhere: Mapping[str, Sequence[Part]] | None = None) -> Copy:
    """All that the PDF of an HTML document is made of. `elsewhere` has the parts that it only names."""
    document = cut(html, elsewhere or {})
    setting = Setting(document.style, document.about.language, document.body, faces=faces_digest(), files=tuple(sorted(files_of_templates(named_in(document.style), root).items())),
                      bleed=on.bleed, black=not on.screen)
    named = sorted({name for part in document.parts for name in part.known.files})
    return Copy(document, titles, {**files_of_templates(named, root), **files}, setting)
