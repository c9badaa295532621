"""The counting sheet of a pattern, as `booklet tally` prints it for people."""

from __future__ import annotations

import sys
from collections.abc import Iterator

from rich.box import SIMPLE_HEAD
from rich.console import Console
from rich.table import Table
from rich.text import Text

from ..bind.numbers import count, grams, many, metres, mm_and_inches
from ..craft.passes import needle_for
from ..craft.size import mass, size
from ..craft.tally import Tally
from ..craft.techniques import techniques_said
from ..craft.thread import ThreadUse, thread_totals
from ..craft.words import row_words, strand_words
from ..source.pattern import Pattern

PIPE_WIDTH = 200   # columns in a pipe, so that no table is squeezed


def print_sheet(pattern: Pattern, counts: Tally, uses: tuple[ThreadUse, ...]) -> None:
    """Print everything on standard output; plain text in a pipe."""
    console = Console(width=None if sys.stdout.isatty() else PIPE_WIDTH, highlight=False, markup=False, emoji=False)
    console.print(Text(pattern.title, style="bold"), f"version {pattern.version}, {pattern.level}, makes a {pattern.makes}")
    console.print(_beads(counts))
    for name, text in _facts(pattern, counts, uses):
        console.print(Text(f"{name:<9}", style="bold"), text, soft_wrap=True)
    for piece in filter(None, (pattern.piece, pattern.second)):
        if piece is not pattern.piece:
            console.print()
            console.print(Text("The second piece", style="bold"))
        for words in (row_words(piece), strand_words(piece)):
            if words:
                console.print()
            for one in words:
                console.print(one.line, soft_wrap=True)


def _beads(counts: Tally) -> Table:
    table = Table(box=SIMPLE_HEAD, pad_edge=False)
    for heading in ("key", "bead", "kind"):
        table.add_column(heading)
    for heading in ("a piece", "in all", "to buy", "grams", "packs"):
        table.add_column(heading, justify="right", no_wrap=True)
    for line in counts.lines:
        table.add_row(line.key, Text(f"{line.bead.name}, {line.bead.finish}"), Text(line.bead.kind.name), count(line.piece), count(line.total),
                      count(line.to_buy), grams(line.grams), count(line.packs))
    return table


def _facts(pattern: Pattern, counts: Tally, uses: tuple[ThreadUse, ...]) -> Iterator[tuple[str, str]]:
    piece, measured = pattern.piece, size(pattern.piece)
    parts = {"body": counts.body, "fringe": counts.fringe, "hanger": counts.hanger}
    yield "work", techniques_said(piece)
    yield "rows", f"{len(piece.drawn)}, the base row of {many(len(piece.base.stitches), 'stitch', 'stitches')}" + (
        f"; {many(len(piece.strands), 'strand')}" if piece.strands else "")
    yield "beads", f"{count(counts.beads)} a piece ({', '.join(f'{name} {count(part)}' for name, part in parts.items() if part)})" + (
        f", {count(counts.beads * counts.pieces)} in all" if counts.pieces > 1 else "")
    yield "size", f"{mm_and_inches(measured.width)} wide, {mm_and_inches(measured.length)} long"
    yield "mass", f"{grams(mass(piece))} g of beads a piece"
    for use in uses:
        yield "thread", f"{use.kind} for the {use.part}: {metres(use.length)} a piece, in {many(use.lengths, use.unit)}"
    for total in thread_totals(uses, pattern.pieces, pattern.thread):
        spools = f", {many(total.spools, 'spool')}" if total.spools else ""
        warps = f" and {many(total.warps, 'warp')}" if total.warps else ""
        yield "to buy", f"{total.kind}: {metres(total.length)} in all, in {many(total.lengths, 'working length')}{warps}{spools}"
    needle = needle_for(piece, pattern.thread)
    if needle:
        yield "needle", f"size {needle.size}"
    for item in pattern.findings_list:
        yield "findings", f"{count(item.each * pattern.pieces)} {item.item}" + (f", {item.size}" if item.size else "")
