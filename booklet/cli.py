"""The command line: wiring only."""

from __future__ import annotations

import json
from pathlib import Path

import click

from . import __version__
from .craft.summary import summary
from .craft.tally import tally as count
from .craft.thread import thread_use
from .craft.words import row_words, strand_words
from .lint.run import lint as find
from .source.wording import did_you_mean
from .source.workspace import load


@click.group(context_settings={"help_option_names": ["-h", "--help"]})
@click.option("-C", "folder", type=click.Path(path_type=Path), default=Path("."), help="Work in this folder (one with patterns/ in it).")
@click.version_option(__version__)
@click.pass_context
def main(context: click.Context, folder: Path) -> None:
    """Check and count bead patterns. Exit code: 0 fine, 1 something was found, 2 wrong use or unreadable input."""
    if not (folder / "patterns").is_dir():
        raise click.UsageError(f"{folder} has no folder patterns/")
    context.obj = folder


@main.command()
@click.option("--format", "form", type=click.Choice(["text", "json"]), default="text")
@click.pass_obj
def lint(folder: Path, form: str) -> None:
    """Check every pattern: file, line and column of each fault."""
    found = find(load(folder))
    if form == "json":
        click.echo(json.dumps({"findings": [{"file": f.mark.file, "line": f.mark.line, "column": f.mark.column, "severity": str(f.severity),
                                             "rule": f.rule, "message": f.message, "hint": f.hint} for f in found]}, ensure_ascii=False, indent=1))
    else:
        for finding in found:
            click.echo(finding.one_line())
    raise SystemExit(1 if found else 0)


@main.command()
@click.argument("slug")
@click.option("--json", "as_json", is_flag=True, help="One JSON object.")
@click.pass_obj
def tally(folder: Path, slug: str, as_json: bool) -> None:
    """Counts, size, mass, thread and words of one pattern."""
    workspace = load(folder)
    if slug not in workspace.slugs:
        raise click.UsageError(f"there is no pattern {slug!r} {did_you_mean(slug, workspace.slugs)}".strip())
    name = f"patterns/{slug}.yaml"
    wrong = [finding for finding in find(workspace) if finding.mark.file == name and finding.is_error]
    for finding in wrong:
        click.echo(finding.one_line(), err=True)
    if wrong:
        raise SystemExit(1)
    pattern = workspace.patterns[slug]
    counts = count(pattern.piece, pattern.pieces, pattern.spare_percent, pattern.least_spare, pattern.pack_grams)
    uses = thread_use(pattern.piece, pattern.thread)
    facts = summary(slug, pattern.version, pattern.makes, pattern.piece, counts, uses)
    if as_json:
        click.echo(json.dumps(facts, ensure_ascii=False, indent=1))
        return
    click.echo(f"{pattern.title}, version {pattern.version}, makes a {pattern.makes}: {counts.beads} beads a piece")
    for line in counts.lines:
        click.echo(f"{line.key}  {line.bead.name}, {line.bead.kind.name}: {line.piece} a piece, {line.total} in all, buy {line.to_buy} ({facts['beads'][line.key]['grams']} g)")
    for words in (*row_words(pattern.piece), *strand_words(pattern.piece)):
        click.echo(words.line)
