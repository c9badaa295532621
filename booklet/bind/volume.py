"""The files of one edition: the inside finished for its printer or screen, its sheets, and its cover."""

from __future__ import annotations

from collections.abc import Awaitable, Callable
from dataclasses import replace

from ..errors import FindingsError
from ..findings import Finding, Severity
from ..source.files import inside
from ..source.workspace import FOLDER, Workspace
from .cover import cover_pdf
from .edition import Edition
from .finish import finished
from .geometry import gutter_for
from .imposition import imposed
from .press.scratch import Scratch
from .standards import problem_of

MOST_ROUNDS = 3   # of setting the pages again because their number asks for another gutter


async def volume(workspace: Workspace, on: Edition, stem: str, bound: Callable[[Edition], Awaitable[Scratch]], cover: bool = False) -> dict[str, Scratch]:
    """The finished files by name. `bound` typesets the inside of an edition. Raises the errors of booklet.errors."""
    profile, year = profile_of(workspace, on), workspace.book.year
    on, content = await _with_gutter(on, bound)
    pages = pages_of(content) if cover and on.paper else 0
    made = finished(content, on, profile, year)
    files = {f"{stem}{on.suffix}.pdf": imposed(made, on.width, on.height) if on.two_up else made}
    if pages:
        outside = await cover_pdf(workspace, on, pages)
        files[f"{stem}{on.suffix}-cover.pdf"] = finished(outside, replace(on, marks=False), profile, year)
    return files


async def _with_gutter(on: Edition, bound: Callable[[Edition], Awaitable[Scratch]]) -> tuple[Edition, Scratch]:
    """The inside, with the gutter that its number of pages asks for. A wider gutter can make more pages but never asks for a narrower one."""
    content = await bound(on)
    for _ in range(MOST_ROUNDS if on.by_pages else 0):
        wanted = gutter_for(pages_of(content), on)
        if abs(wanted - on.gutter) < 0.01:
            break
        on = replace(on, gutter=wanted)
        content = await bound(on)
    return on, content


def pages_of(made: Scratch) -> int:
    """How many pages a PDF has."""
    import pikepdf

    with pikepdf.open(made.file) as pdf:
        return len(pdf.pages)


def profile_of(workspace: Workspace, on: Edition) -> bytes:
    """The colour profile of the edition's press; nothing where none is named. Raises FindingsError for a file that is none."""
    if not on.profile:
        return b""
    path, reason = workspace.root / FOLDER / on.profile, ""
    if not inside(path, workspace.root):
        reason = "lies outside the workspace"
    elif not path.is_file():
        reason = "is not there"
    content = b"" if reason else path.read_bytes()
    reason = reason or problem_of(content)
    if reason:
        raise FindingsError([Finding(workspace.book.mark("editions", on.name, "profile"), Severity.ERROR, "unusable-profile",
                                     f"the profile {on.profile} {reason}", "ask the printer for the .icc file of the press and paper")])
    return content
