"""The command line: wiring only. Everything that stops a command is caught here, and nowhere else."""

from __future__ import annotations

import os
import sys
from pathlib import Path

import click

from . import __version__
from .commands.build import build
from .commands.draw import draw
from .commands.lint import lint
from .commands.new import new
from .commands.single import single
from .commands.tally import tally
from .commands.terminal import show_findings, speak_utf8, tell
from .errors import BookletError, FindingsError

STOPPED, PIPE_CLOSED = 130, 141   # as a shell counts SIGINT and SIGPIPE

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

"booklet COMMAND --help" tells more.

Exit code: 0 all is well, 1 something was found in a pattern or book file, 2 wrong use or unreadable input.
"""


class Commands(click.Group):
    """The commands, and what a shell is told when one of them stops."""

    def list_commands(self, context: click.Context) -> list[str]:
        return list(self.commands)   # in the order of the work, not of the alphabet

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


for command in (build, single, lint, tally, draw, new):
    main.add_command(command)
