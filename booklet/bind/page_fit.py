"""Whether everything can be read at the size that the page allows: charts before the pages are set, all else after."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping

from ..errors import FindingsError
from ..findings import Finding, Mark, Severity
from ..lint.run import Checked, weighed
from ..source.files import read_file
from ..source.pattern import Pattern
from ..source.workspace import Workspace
from .context import beads_that_fit
from .edition import Edition
from .geometry import Room, sheet
from .set_pages import Seen, set_findings

Report = Callable[[list[Finding]], None]


def unheard(found: list[Finding]) -> None:
    """A report that nobody wants."""


def page_findings(pattern: Pattern, room: Room, fits: Mapping[str, float] | None = None) -> Iterator[Finding]:
    """Charts that fit the room only with beads too narrow for their letters.

    `fits` are the beads that fit, where they are known. Where charts can go on over several pages that is a note, else a warning; an error for one that does not fit at all.
    """
    for name, bead in (beads_that_fit(pattern.piece, room) if fits is None else fits).items():
        if bead >= room.least:
            continue
        mark = pattern.mark(*(("body", "chart") if name == "body" else ("fringe",)))
        if room.tiled:
            one = f"one page holds it with beads {bead:.1f} mm wide, and letters need {room.least:g} mm" if bead >= 0.05 else "one page cannot hold it"
            yield Finding(mark, Severity.NOTE, "chart-too-large-for-page", f"the {name} chart goes on over several pages: {one}",
                          "choose a larger page in book.yaml, or make the piece smaller, if it is to stay in one piece")
        else:
            yield Finding(mark, Severity.WARNING if bead else Severity.ERROR, "chart-too-large-for-page",
                          f"the {name} chart fits this page with beads {bead:.1f} mm wide; letters need {room.least:g} mm",
                          "choose a larger page in book.yaml, or make the piece smaller")


def seen_findings(workspace: Workspace, pattern: Pattern, seen: Seen, on: Edition) -> Iterator[Finding]:
    """What is wrong with the set pages of a pattern bound alone."""
    source = read_file(workspace.root / pattern.file, workspace.root)[0] or ""
    yield from set_findings(seen, sheet(on), pattern.mark("title"), source, f"the single in the edition {on.name}" if on.name else "the single")


def book_findings(workspace: Workspace, seen: Seen, on: Edition) -> Iterator[Finding]:
    """What is wrong with the pages of the whole book in an edition, which is placed in the book file."""
    book = workspace.book
    yield from set_findings(seen, sheet(on), book.mark("title") if book.file else Mark("patterns"), "", f"the edition {on.name}" if on.name else "the book")


def without_errors(workspace: Workspace, found: Iterable[Finding]) -> list[Finding]:
    """What was found, as the book weighs it and its pattern allows it. Raises FindingsError if there are errors.

    Notes are for lint: that a large edition parts its charts is as it should be.
    """
    findings = [finding for finding in weighed(Checked((), ()), found, workspace).findings if finding.severity is not Severity.NOTE]
    if any(finding.is_error for finding in findings):
        raise FindingsError(findings)
    return findings
