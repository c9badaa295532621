"""booklet release: record what is published, and list what has changed."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

import click

from ..bind.errata import errata_of, errata_of_book, errata_text
from ..bind.files import file_name, write_file
from ..bind.translated import printing
from ..craft.language import _
from ..errors import FindingsError, WrongUse
from ..findings import Severity
from ..lint.run import lint
from ..source.files import read_file
from ..source.pattern import Pattern
from ..source.releases import entry_of, entry_of_book
from ..source.workspace import RELEASES_FILE, Workspace, load, pattern_files
from .reading import checked_folder, unknown_pattern
from .terminal import remark, show_findings

HELP = """Record what is published, and list what has changed for those who have an earlier version.

Nothing is recorded unless lint finds nothing but notes. patterns/releases.yaml gains an entry for each pattern (version,
counts, a mark of its content), and patterns/releases/ a copy of its file; keep both with the patterns. From then on lint tells
when the chart has changed and the version has not.

Where there is an earlier release, the corrections are listed, row by row and strand by strand, with old and new counts. They
print as a page of the single and of the book, and stand as text in build/releases/, for an update in a shop. The names
of the files that were written are printed, one a line.

\b
Examples:
  booklet release cloud-shadow   a single pattern
  booklet release --book         the book, with every pattern in it that has a new version

Exit code: 0 recorded, 1 something was found and nothing recorded, 2 wrong use, or a file that cannot be read or written.
"""

SOLVED = frozenset({"single-and-book-out-of-step"})   # what releasing puts right

HEAD = """\
# What was published, oldest first. booklet release adds to the end of this file, and lint holds the patterns against it.
"""


@click.command(help=HELP)
@click.argument("slugs", metavar="[SLUG]...", nargs=-1)
@click.option("--book", "whole", is_flag=True, help="The whole book.")
@click.pass_obj
def release(folder: Path, slugs: tuple[str, ...], whole: bool) -> None:
    if whole == bool(slugs):
        raise click.UsageError("Name the patterns to release, or give --book." if not whole else "Give either patterns or --book, not both.")
    workspace = _clean(folder, slugs)
    for path in publish(workspace, whole):
        click.echo(path.relative_to(folder).as_posix())


def _clean(folder: Path, slugs: Iterable[str]) -> Workspace:
    """The patterns, or all with the book, in which lint finds nothing. Raises FindingsError."""
    files = {file.stem: file for file in pattern_files(checked_folder(folder))}
    for slug in slugs:
        if slug not in files:
            raise unknown_pattern(slug, files)
    workspace = load(folder, [files[slug] for slug in dict.fromkeys(slugs)] if slugs else None)
    found = [finding for finding in lint(workspace, with_book=not slugs) if finding.rule not in SOLVED]
    if any(finding.severity is not Severity.NOTE for finding in found):
        raise FindingsError(found, "nothing was released, because lint is not clean")
    show_findings(found, folder, err=True)
    return workspace


def publish(workspace: Workspace, whole: bool) -> list[Path]:
    """Record the patterns of the workspace, and with `whole` the book; give the files that were written."""
    new = [pattern for pattern in workspace.patterns.values() if not _is_released(workspace, pattern)]
    versions = {slug: pattern.version for slug, pattern in workspace.patterns.items()}
    entries = [entry_of(pattern) for pattern in new]
    texts = {f"{pattern.slug}-{pattern.version}.txt": _text(workspace, pattern) for pattern in new}
    if whole and _is_new_book(workspace, versions):
        entries.append(entry_of_book(workspace.book.edition, versions))
        texts[f"{file_name(workspace.book.title)}-{file_name(workspace.book.edition)}.txt"] = _text_of_book(workspace)
    if not entries:
        remark("nothing has changed since the last release")
        return []
    made = [*(_copied(workspace, pattern) for pattern in new), _recorded(workspace, entries)]
    return [*made, *(write_file(workspace.root / "build" / "releases" / name, text.encode()) for name, text in texts.items())]


def _is_released(workspace: Workspace, pattern: Pattern) -> bool:
    return workspace.releases is not None and workspace.releases.at(pattern.slug, pattern.version) is not None


def _is_new_book(workspace: Workspace, versions: dict[str, str]) -> bool:
    """Whether the book differs from the last one that was released. Raises WrongUse where nobody could tell the two apart."""
    edition, books = workspace.book.edition, workspace.releases.books if workspace.releases else ()
    if not edition or not versions:
        raise WrongUse("the book has no edition" if versions else "there is no pattern to release", "name it in book.yaml, such as edition: First edition" if versions else "")
    if books and books[-1].patterns == versions:
        return False
    if any(book.edition == edition for book in books):
        raise WrongUse(f"{edition} was released already, with other versions of its patterns", "give the book a new edition: in book.yaml")
    return True


def _copied(workspace: Workspace, pattern: Pattern) -> Path:
    folder = workspace.root / "patterns"
    return write_file(folder / "releases" / f"{pattern.slug}-{pattern.version}.yaml", (folder / f"{pattern.slug}.yaml").read_bytes())


def _recorded(workspace: Workspace, entries: list[str]) -> Path:
    """Add to the end of the record; what stands in it stays as it is."""
    path = workspace.root / "patterns" / RELEASES_FILE
    before = read_file(path, workspace.root)[0] if path.exists() else HEAD
    gap = "" if before.endswith("\n") else "\n"
    return write_file(path, (before + gap + "".join(entries)).encode())


def _text(workspace: Workspace, pattern: Pattern) -> str:
    with printing(workspace, workspace.book.language) as told:
        pattern = told.patterns[pattern.slug]
        errata = errata_of(told, pattern)
        return errata_text([errata]) if errata else _paragraphs(_("{title}, version {version}", title=pattern.title, version=pattern.version), _("The first release."))


def _text_of_book(workspace: Workspace) -> str:
    with printing(workspace, workspace.book.language) as told:
        every, heading = errata_of_book(told), f"{told.book.title}, {told.book.edition}"
        if every:
            return errata_text(every, heading)
        return _paragraphs(heading, _("No corrections.") if told.releases and told.releases.books else _("The first release."))


def _paragraphs(*texts: str) -> str:
    return "\n\n".join(texts) + "\n"
