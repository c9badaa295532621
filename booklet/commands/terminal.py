"""What commands say: findings, messages and progress. Results go to standard output, all else to standard error."""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path

import click

from ..findings import Finding
from ..source.files import read_file

STYLES = {"file": {"bold": True, "underline": True}, "error": {"fg": "red", "bold": True}, "warning": {"fg": "yellow", "bold": True},
          "note": {"fg": "cyan", "bold": True}, "rule": {"dim": True}, "quiet": {"dim": True}}


def speak_utf8() -> None:
    """Write UTF-8 into pipes and files everywhere, and never stop for a sign that a terminal does not have."""
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(**({"errors": "replace"} if stream.isatty() else {"encoding": "utf-8"}))


def show_findings(findings: Sequence[Finding], folder: Path, err: bool = False) -> None:
    """Print findings: on a terminal with their source lines, else one line each. Files are named from `folder`."""
    if not findings:
        return
    from ..lint.report import counted, grouped, lines   # loaded here, because good files never need it

    stream = sys.stderr if err else sys.stdout
    if not stream.isatty():
        for line in lines(findings):
            click.echo(line, err=err)
        return
    for line in grouped(findings, lambda name: read_file(folder / name, folder)[0] or "", _paint):
        click.echo(line, err=err)
    click.echo(f"\n{counted(findings)}", err=err)


def _paint(role: str, text: str) -> str:
    return click.style(text, **STYLES[role])


def tell(message: str, hint: str = "") -> None:
    """One line for the user, on standard error."""
    click.echo(f"booklet: {message}" + (f" ({hint})" if hint else ""), err=True)


def remark(message: str) -> None:
    """A line that only a person at a terminal wants to see."""
    if sys.stderr.isatty():
        click.echo(message, err=True)


@contextmanager
def progress(start: str) -> Iterator[Callable[[str], None]]:
    """Show what is being done, on a terminal; the value takes the next line to show."""
    if not sys.stderr.isatty():
        yield lambda line: None
        return
    from rich.console import Console

    with Console(stderr=True).status(start) as status:
        yield status.update
