"""The command line: wiring only. Everything that stops a command is caught here, and nowhere else.

A command's module is loaded when it is asked for, so that no command waits for what only another one needs.
"""

from __future__ import annotations

import gc
import os
import sys
from importlib import import_module
from pathlib import Path

import click

from . import __version__
from .commands.terminal import show_findings, speak_utf8, tell
from .errors import BookletError, FindingsError

COMMANDS = ("build", "single", "release", "lint", "tally", "draw", "new", "watch")   # modules of commands/, in the order of the work
STOPPED, PIPE_CLOSED = 130, 141   # as a shell counts SIGINT and SIGPIPE
GARBAGE_AFTER = 100_000            # new objects, 700 if nobody says so

HELP = """From a bead designer's pattern files to books and single patterns.

Each pattern is one YAML file, patterns/SLUG.yaml: the chart of a brick-stitch body, the strands of its fringe, and
the beads. From it booklet computes words, counts, materials and pictures, proves that the words give the chart,
and binds them into a book. What all patterns share stands in patterns/book.yaml.

\b
Examples:
  booklet lint                 check every pattern
  booklet tally cloud-shadow   counts, sizes and words of one
  booklet build                the whole book into build/
  booklet single cloud-shadow  one pattern, bound for sale
  booklet new breeze           a pattern file to start from
  booklet watch                pages that follow while you write

"booklet COMMAND --help" tells more.

Exit code: 0 all is well, 1 something was found in a pattern or book file, 2 wrong use or unreadable input.
"""


class Commands(click.Group):
    """The commands, and what a shell is told when one of them stops."""

    def __call__(self, *arguments, **settings):
        """Run as a program. What it loads lives until it ends, and looking for garbage in that took a fifth of a lint."""
        gc.set_threshold(GARBAGE_AFTER)
        try:
            return super().__call__(*arguments, **settings)
        finally:
            gc.freeze()

    def list_commands(self, context: click.Context) -> list[str]:
        return list(COMMANDS)

    def get_command(self, context: click.Context, name: str) -> click.Command | None:
        return getattr(import_module(f".commands.{name}", __package__), name) if name in COMMANDS else None

    def invoke(self, context: click.Context):
        try:
            return super().invoke(context)
        except FindingsError as error:
            show_findings(error.findings, context.params["folder"], err=True)
            tell(error.message)
            context.exit(error.exit_code)
        except BookletError as error:
            tell(error.message, error.hint)
            context.exit(error.exit_code)
        except KeyboardInterrupt:
            tell("stopped")
            context.exit(STOPPED)
        except BrokenPipeError:   # the reader of a pipe has seen enough; nothing more can be said to it
            os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
            context.exit(PIPE_CLOSED)


@click.group(cls=Commands, help=HELP, context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 100})
@click.option("-C", "folder", metavar="DIR", type=click.Path(path_type=Path), default=Path("."),
              help="Work in DIR, a folder with patterns/ in it, instead of the current folder.")
@click.version_option(__version__, prog_name="booklet", message="%(prog)s %(version)s")
@click.pass_context
def main(context: click.Context, folder: Path) -> None:
    speak_utf8()
    context.obj = folder
