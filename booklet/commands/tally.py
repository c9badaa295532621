"""booklet tally: everything that can be counted in a pattern."""

from __future__ import annotations

import json
from pathlib import Path

import click

from ..craft.summary import summary
from ..craft.tally import tally as count
from ..craft.thread import thread_use
from .reading import some

HELP = """Count a pattern: beads, size, mass, thread, things to buy, and the words of every row and strand.

With --json, one JSON object for scripts: counts by bead key; rows in working order, each with its beads in the order
in which the needle picks them up; sizes in mm, masses in g, and the thread of one piece in mm.

\b
Examples:
  booklet tally cloud-shadow
  booklet tally cloud-shadow --json

Exit code: 0 counted, 1 errors found in this pattern, 2 wrong use or unreadable input.
"""


@click.command(help=HELP)
@click.argument("slug")
@click.option("--json", "as_json", is_flag=True, help="Print one JSON object.")
@click.pass_obj
def tally(folder: Path, slug: str, as_json: bool) -> None:
    pattern = some(folder, [slug], to_print=False).patterns[slug]
    counts = count(pattern.piece, pattern.pieces, pattern.spare_percent, pattern.least_spare, pattern.pack_grams)
    uses = thread_use(pattern.piece, pattern.thread)
    if as_json:
        facts = summary(slug, pattern.version, pattern.makes, pattern.piece, counts, uses, pattern.thread, pattern.second)
        click.echo(json.dumps(facts, ensure_ascii=False, indent=1))
        return
    from .sheet import print_sheet

    print_sheet(pattern, counts, uses)
