"""booklet single: patterns bound alone for sale."""

from __future__ import annotations

from pathlib import Path

import click

from ..bind.press.cache import KEPT
from ..errors import BookletError, FindingsError, WrongUse
from ..findings import Finding
from .shop import shop_options, workshop
from .terminal import progress, show_findings, tell
from .unchanged import Run, again, read_besides

HELP = """Check patterns, then bind each alone for sale, as build/single/SLUG.pdf; or with --one-file as a web page, build/single/SLUG.html,
that holds all it needs: fonts, pictures, script, the other hand and the mirror image. It opens from any disk and needs no network.

A single stands by itself: cover, materials, chart, words, steps, licence and version. SLUG is the name of a
pattern file without its ending. Only the patterns that are asked for have to be free of errors; where
one of several cannot be bound, the others are bound all the same. The names of the files that were made are
printed, one a line.

\b
Examples:
  booklet single cloud-shadow             one pattern
  booklet single cloud-shadow frost-star  two patterns
  booklet single --all                    every pattern of the folder
  booklet single --all --one-file         every pattern as one web page
  booklet single frost-star --edition large   in an edition that book.yaml names; or --edition all
  booklet single frost-star --edition german --one-file   as a web page in the language of that edition

Exit code: 0 all made, 1 a pattern was not bound because of errors, 2 wrong use, or a file that cannot be read or written.
"""


@click.command(help=HELP)
@click.argument("slugs", metavar="[SLUG]...", nargs=-1)
@click.option("--all", "every", is_flag=True, help="Every pattern of the folder.")
@click.option("--edition", "edition", metavar="NAME", default="", help="The edition to make, or all.")
@click.option("--one-file", "one_file", is_flag=True, help="As one web page, in place of the PDF.")
@shop_options
@click.pass_obj
def single(folder: Path, slugs: tuple[str, ...], every: bool, edition: str, one_file: bool, fresh: bool, cluster: str) -> None:
    if every == bool(slugs):
        raise click.UsageError("Name the patterns to bind, or give --all." if not every else "Give either patterns or --all, not both.")
    run = Run(folder, KEPT, "single", slugs, every, edition, one_file)
    if not fresh and again(run, lambda findings: show_findings(findings, folder, err=True), click.echo):
        return
    from .reading import checked_folder, pattern_files, those_without_errors   # they load much, and are not needed where nothing has changed

    if every:
        slugs = tuple(file.stem for file in pattern_files(checked_folder(folder)))
        if not slugs:
            raise WrongUse("there is no pattern to bind", "write one into patterns/")
    whole: list[Path] = []
    failed: list[tuple[str, BookletError]] = []
    pages: list[Finding] = []
    if one_file:   # before the workers are forked, which need it too
        from ..bind.web.one_file import build_each
    else:
        from ..bind.single import build_each

    with workshop(folder, fresh, cluster, typesets=not one_file):
        workspace, broken, findings = those_without_errors(folder, slugs)
        with progress("making the web pages" if one_file else "loading the typesetter") as now:
            def done(slug: str, made: list[Path] | BookletError) -> None:
                now(f"bound {slug}")
                if isinstance(made, BookletError):
                    failed.append((slug, made))
                    return
                whole.extend(made)
                for path in made:
                    click.echo(path.relative_to(folder).as_posix())

            build_each(workspace, edition, done, pages.extend)
    show_findings(pages, folder, err=True)
    if len(slugs) == 1 and failed:
        raise failed[0][1]
    for slug, error in failed:
        show_findings(getattr(error, "findings", ()), folder, err=True)
        tell(f"{slug}: {error.message}", error.hint)
    for slug in broken:
        tell(f"{slug}: not bound, because it has errors")
    codes = [error.exit_code for _, error in failed] + [FindingsError.exit_code for _ in broken]
    if not codes:
        run.keep(whole, (*findings, *pages), read_besides(workspace))
    else:
        raise click.exceptions.Exit(max(codes))
