"""booklet lint: check without building."""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial
from pathlib import Path

import click

from ..findings import Finding, Severity
from ..lint.run import Checked
from .asked import Asked, Place, asked_for, check_files, check_input
from .terminal import remark, show_findings

FORMATS = ("text", "json", "sarif", "github")
STANDARD_INPUT = "-"

HELP = """Check patterns without building anything.

Each PATH is the name of a pattern (cloud-shadow), a file in patterns/, or a folder with patterns/ in it. Without
one, everything in the current folder is checked, the book file included. A single - reads one pattern from standard input.

Every finding says file, line and column, what is wrong and, where that is sure, what to do. On a terminal
the line itself is shown, with a marker; in a pipe each finding is one line:

\b
  patterns/cloud-shadow.yaml:19:5: error: this row is numbered 12, but it is row 11 [wrong-row-number]

An error would make the printed pattern wrong, and stops build, single, tally and draw. A warning does not; a note is worth
a look. A pattern allows what is meant, with the reason, and a book weighs rules its own way:

\b
  lint: {allow: {unused-bead-key: The spare colour comes with the kit.}}    in a pattern file
  lint: {severity: {unused-bead-key: error, not-in-book-order: off}}        in book.yaml

\b
Examples:
  booklet lint                                  check everything
  booklet lint cloud-shadow frost-star          check two patterns
  booklet lint patterns/cloud-shadow.yaml       the same for one, as an editor would ask
  booklet lint --fix                            put right what has one right answer, and show what was changed
  booklet lint --fit                            also look at the pages as they would be printed
  booklet lint --format sarif > lint.sarif      for a code host or an editor
  booklet lint --explain row-cannot-be-worked   why, with a bad and a good example

Exit code: 0 nothing found (notes apart), 1 any error or warning found, 2 wrong use or unreadable input.
"""


@click.command(help=HELP)
@click.argument("paths", metavar="[PATH]...", nargs=-1)
@click.option("--format", "form", type=click.Choice(FORMATS), default="text", show_default=True, help="How to print findings.")
@click.option("--strict", is_flag=True, help="Exit with 1 for notes too.")
@click.option("--fix", is_flag=True, help="First put right row numbers, counted and the order of fields; nothing else in the file is touched.")
@click.option("--runs", is_flag=True, help="With --fix: also write a drawn fringe as run text.")
@click.option("--diff", is_flag=True, help="Show what --fix would change, and stop.")
@click.option("--fit", is_flag=True, help="Also set the pages of each pattern, and check type, margins, pictures and fonts on them; takes seconds a pattern.")
@click.option("--name", metavar="FILE", default="patterns/stdin.yaml", show_default=True, help="What findings call standard input.")
@click.option("--explain", "rule", metavar="RULE", help="Say what a rule checks and why, and stop.")
@click.pass_obj
def lint(folder: Path, paths: tuple[str, ...], form: str, strict: bool, fix: bool, runs: bool, diff: bool, fit: bool, name: str, rule: str | None) -> None:
    if rule is not None:
        from ..lint.explain import explain

        click.echo(explain(rule), nl=False)
        return
    if STANDARD_INPUT in paths:
        if len(paths) > 1 or fix or diff or fit:
            raise click.UsageError("Standard input is checked alone, and can neither be fixed in place nor set as pages.")
        run = check_input(folder, name)
    else:
        asked = asked_for(folder, paths)
        if fix or diff:
            _mend(folder, asked, runs, write=fix and not diff, err=form != "text")
        if diff:
            return
        run = check_files(folder, asked, _place() if fit else None)
    _show(run, form, folder)
    if _counts(run.findings, strict):
        click.get_current_context().exit(1)


def _place() -> Place:
    """Where pages are set: from what builds have kept, and by several workers."""
    from .shop import workshop

    return partial(workshop, fresh=False, cluster="")


def _mend(folder: Path, asked: Asked, runs: bool, write: bool, err: bool) -> None:
    from . import mending

    for change in mending.changes(folder, asked, runs):
        for line in mending.diff(change):
            click.echo(line, err=err)
        if write:
            mending.write(change)


def _show(run: Checked, form: str, folder: Path) -> None:
    if form == "text":
        show_findings(run.findings, folder)
        if not run.findings:
            remark("nothing found")
    elif form == "json":
        from ..lint.report import as_json

        click.echo(as_json(run.findings))
    elif form == "sarif":
        from ..lint.sarif import as_sarif

        click.echo(as_sarif(run))
    else:
        from ..lint.github import github_lines

        for line in github_lines(run.findings):
            click.echo(line)


def _counts(findings: Sequence[Finding], strict: bool) -> bool:
    """Whether something was found that the exit code tells."""
    return any(strict or finding.severity is not Severity.NOTE for finding in findings)
