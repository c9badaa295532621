"""booklet build: the whole book."""

from __future__ import annotations

from pathlib import Path

import click

from ..bind.press.cache import KEPT
from ..findings import Finding
from .shop import shop_options, workshop
from .terminal import progress, show_findings
from .unchanged import Run, again, read_besides

FORMATS = ("pdf", "html")

HELP = """Check everything, then build the whole book into build/.

The PDF is for print and for screens, and book.yaml can name other editions of it (editions:); the web pages in build/html/ need nothing but a browser. Nothing is written
unless everything is right, and earlier files stay as they were when a build fails. The names of the files
that were made are printed, one a line. Parts of the book that have not changed are taken from build/.cache/, which may be
deleted at any time; where nothing has changed, nothing is built.

\b
Examples:
  booklet build                     PDF and web pages
  booklet build --format pdf        the PDF alone
  booklet build --edition large     the PDF of an edition that book.yaml names
  booklet build --edition all       the PDF of every edition
  booklet build --edition german --format html   the web pages of an edition in another language, in build/html-german/
  booklet -C ../another-book build  a book in another folder

Exit code: 0 built, 1 errors found and nothing written, 2 wrong use, or a file that cannot be read or written.
"""


def read_formats(context: click.Context, option: click.Parameter, text: str) -> tuple[str, ...]:
    """The formats of a list with commas, each once, in our order."""
    names = [name.strip() for name in text.split(",")]
    for name in names:
        if name not in FORMATS:
            raise click.BadParameter(f"{name!r} is not one of {', '.join(FORMATS)}.")
    return tuple(name for name in FORMATS if name in names)


@click.command(help=HELP)
@click.option("--format", "formats", metavar="LIST", default=",".join(FORMATS), show_default=True, callback=read_formats,
              help="What to make: pdf, html, or both with a comma between.")
@click.option("--edition", "edition", metavar="NAME", default="", help="The edition to make, or all; as PDF, if --format does not say otherwise.")
@shop_options
@click.pass_context
def build(context: click.Context, formats: tuple[str, ...], edition: str, fresh: bool, cluster: str) -> None:
    folder: Path = context.obj
    if edition and context.get_parameter_source("formats") is click.core.ParameterSource.DEFAULT:
        formats = ("pdf",)
    run = Run(folder, KEPT, "build", formats, edition)
    if not fresh and again(run, lambda findings: show_findings(findings, folder, err=True), click.echo):
        return
    from .reading import checked_whole   # reading and lint load much, and are not needed where nothing has changed

    from ..bind.book import build as bind   # before the workers are forked, which need it too
    from ..source.workspace import without_charts

    with workshop(folder, fresh, cluster):
        workspace, findings = checked_whole(folder, None if fresh else run.cache)
        workspace, pages = without_charts(workspace), list[Finding]()
        with progress("loading the typesetter") as now:
            made = bind(workspace, formats, now, edition, pages.extend)
    show_findings(pages, folder, err=True)
    run.keep(made, (*findings, *pages), read_besides(workspace))
    for path in made:
        click.echo(path.relative_to(folder).as_posix())
