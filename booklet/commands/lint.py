"""booklet lint: check without building."""

from __future__ import annotations

import os
from collections.abc import Iterable, Iterator
from pathlib import Path

import click

from ..errors import WrongUse
from ..findings import Finding
from ..lint.report import as_json, counted
from ..lint.run import lint as check
from ..source.workspace import BOOK_FILE, load, pattern_files
from .reading import checked_folder, unknown_pattern
from .terminal import remark, show_findings

HELP = """Check patterns without building anything.

Each PATH is the name of a pattern (cloud-shadow), a file in patterns/, or a folder with patterns/ in it. Without
one, everything in the current folder is checked, the book file included.

Every finding says file, line and column, what is wrong and, where that is sure, what to do. On a terminal
the line itself is shown, with a marker; in a pipe each finding is one line:

\b
  patterns/cloud-shadow.yaml:19:5: error: this row is numbered 12, but it is row 11 [wrong-row-number]

An error would make the printed pattern wrong, and stops build, single, tally and draw. A warning does not.

\b
Examples:
  booklet lint                                  check everything
  booklet lint cloud-shadow frost-star          check two patterns
  booklet lint patterns/cloud-shadow.yaml       the same for one, as an editor would ask
  booklet lint --format json                    one JSON object for a script
  booklet lint --explain row-cannot-be-worked   why, with a bad and a good example

Exit code: 0 nothing found, 1 any error or warning found, 2 wrong use or unreadable input.
"""


@click.command(help=HELP)
@click.argument("paths", metavar="[PATH]...", nargs=-1)
@click.option("--format", "form", type=click.Choice(["text", "json"]), default="text", show_default=True, help="How to print findings.")
@click.option("--explain", "rule", metavar="RULE", help="Say what a rule checks and why, and stop.")
@click.pass_obj
def lint(folder: Path, paths: tuple[str, ...], form: str, rule: str | None) -> None:
    if rule is not None:
        from ..lint.explain import explain

        click.echo(explain(rule), nl=False)
        return
    asked = asked_for(folder, paths)
    found = sorted(finding for root, files in asked.items() for finding in findings(folder, root, files))
    if form == "json":
        click.echo(as_json(found))
    else:
        show_findings(found, folder)
        if not found:
            remark(counted(found))
    if found:
        click.get_current_context().exit(1)


def asked_for(folder: Path, paths: Iterable[str]) -> dict[Path, set[Path] | None]:
    """The workspaces to check, with the files to check in each; None for all of them."""
    asked: dict[Path, set[Path] | None] = {}
    for root, file in (_place(folder, path) for path in paths) if paths else [(checked_folder(folder), None)]:
        if file is None:
            asked[root] = None
        elif asked.setdefault(root, set()) is not None:
            asked[root].add(file)
    return asked


def _place(folder: Path, path: str) -> tuple[Path, Path | None]:
    """The workspace that a path means, and the file in it (None for all)."""
    by_name = folder / "patterns" / f"{path}.yaml"
    if by_name in pattern_files(folder):
        return folder, by_name
    place = Path(os.path.normpath(folder / path))
    if place.is_dir():
        return checked_folder(place.parent if place.name == "patterns" else place), None
    root = place.parent.parent
    if place.parent.name == "patterns" and (place.name == BOOK_FILE or place in pattern_files(root)):
        return root, place
    if place.exists():
        raise WrongUse(f"{path} is neither a pattern file nor a book file", "pattern files are patterns/NAME.yaml")
    raise unknown_pattern(path, (file.stem for file in pattern_files(folder)))


def findings(folder: Path, root: Path, files: set[Path] | None) -> Iterator[Finding]:
    """What is found in one workspace; files are named from `folder`."""
    book = root / "patterns" / BOOK_FILE
    only = None if files is None else sorted(files - {book})
    for finding in check(load(root, only), with_book=files is None or book in files):
        name = finding.mark.file if root == folder else os.path.relpath(root / finding.mark.file, folder).replace(os.sep, "/")
        yield finding._replace(mark=finding.mark._replace(file=name))
