"""booklet single: patterns bound alone for sale."""

from __future__ import annotations

from pathlib import Path

import click

from ..errors import BookletError, WrongUse
from ..source.workspace import pattern_files
from .reading import checked_folder, some
from .shop import shop_options, workshop
from .terminal import progress, show_findings, tell

HELP = """Check patterns, then bind each alone for sale, as build/single/SLUG.pdf.

A single stands by itself: cover, materials, chart, words, steps, licence and version. SLUG is the name of a
pattern file without its ending. Only the patterns that are asked for have to be free of errors. The
names of the files that were made are printed, one a line.

\b
Examples:
  booklet single cloud-shadow             one pattern
  booklet single cloud-shadow frost-star  two patterns
  booklet single --all                    every pattern of the folder
  booklet single frost-star --edition large   in an edition that book.yaml names; or --edition all

Exit code: 0 made, 1 errors found and nothing written, 2 wrong use, or a file that cannot be read or written.
"""


@click.command(help=HELP)
@click.argument("slugs", metavar="[SLUG]...", nargs=-1)
@click.option("--all", "every", is_flag=True, help="Every pattern of the folder.")
@click.option("--edition", "edition", metavar="NAME", default="", help="The edition to make, or all.")
@shop_options
@click.pass_obj
def single(folder: Path, slugs: tuple[str, ...], every: bool, edition: str, fresh: bool, cluster: str) -> None:
    if every == bool(slugs):
        raise click.UsageError("Name the patterns to bind, or give --all." if not every else "Give either patterns or --all, not both.")
    if every:
        slugs = tuple(file.stem for file in pattern_files(checked_folder(folder)))
        if not slugs:
            raise WrongUse("there is no pattern to bind", "write one into patterns/")
    workspace = some(folder, slugs)
    failed = []
    with workshop(folder, fresh, cluster), progress("loading the typesetter") as now:
        from ..bind.single import build as bind

        for slug in workspace.patterns:
            now(f"binding {slug}")
            try:
                made = bind(workspace, slug, edition)
            except BookletError as error:   # the others are bound all the same
                failed.append((slug, error))
                continue
            for path in made:
                click.echo(path.relative_to(folder).as_posix())
    if len(failed) == 1 == len(workspace.patterns):
        raise failed[0][1]
    if failed:
        for slug, error in failed:
            show_findings(getattr(error, "findings", ()), folder, err=True)
            tell(f"{slug}: {error.message}", error.hint)
        raise click.exceptions.Exit(max(error.exit_code for _, error in failed))
