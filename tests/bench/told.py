"""Sentences that authors write into their notes, each with the number that is true of a pattern."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from random import Random
from typing import NamedTuple

from booklet.craft.size import mass, size
from booklet.craft.tally import tally
from booklet.source.pattern import Pattern
from tests.bench.drawn import Drawn

ONES = "zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen".split()
TENS = "zero ten twenty thirty forty fifty sixty seventy eighty ninety".split()

Value = Callable[[Pattern, Random], "tuple[float, dict[str, object]] | None"]


class Told(NamedTuple):
    """One sentence, with its number and how far wrong a slip makes it."""

    sentence: str       # with {n} for the number
    value: float
    step: float
    decimals: int = 0

    def said(self, value: float, in_words: bool) -> str:
        figures = words(int(value)) if in_words and not self.decimals and value < 100 else f"{value:.{self.decimals}f}"
        text = self.sentence.replace("{n}", figures)
        return text[0].upper() + text[1:]


def words(value: int) -> str:
    """A number below a hundred in words."""
    if value < 20:
        return ONES[value]
    return TENS[value // 10] + (f"-{ONES[value % 10]}" if value % 10 else "")


def sentences(pattern: Pattern, random: Random) -> Iterator[Told]:
    """Every sentence that can be said of a pattern; `random` chooses the row and the strand that some speak of."""
    piece, counts, measured = pattern.piece, tally(pattern.piece, pattern.pieces), size(pattern.piece)
    base, rows, strands = len(piece.base.stitches), len(piece.rows), len(piece.strands)
    for text in ("The base row has {n} stitches.", "Begin with a base row of {n} stitches.", "Row 1 has {n} stitches.", "The piece starts from {n} stitches in the base row.",
                 "The {n} stitches of the base row are worked first."):
        yield Told(text, base, 1)
    for text in ("The body has {n} rows.", "There are {n} rows in the body.", "All {n} rows of the body are worked from the chart.", "The body is {n} rows high."):
        yield Told(text, rows, 1)
    row = random.choice(piece.rows)
    for text in (f"Row {row.number} has {{n}} stitches.", f"In row {row.number} there are {{n}} stitches.", f"Count row {row.number} when it is done: it has {{n}} stitches."):
        yield Told(text, len(row.stitches), 1)
    if piece.drop > 1:
        yield Told("Every stitch has {n} beads.", piece.drop, 1)
        yield Told(f"Row {row.number} has {{n}} sets.", len(row.stitches), 1)
    for text in ("A piece has {n} beads.", "One earring takes {n} beads.", "Each earring is made of {n} beads.", "There are {n} beads in a piece."):
        yield Told(text, counts.beads, 1)
    if pattern.pieces == 2:
        yield Told("The pair takes {n} beads in all.", 2 * counts.beads, 1)
    line = random.choice(counts.lines)
    if line.piece >= 20 and line.bead.name.count(" ") < 2:
        yield Told(f"A piece takes {{n}} {line.bead.name} beads.", line.piece, 1)
    if strands:
        for text in ("The fringe has {n} strands.", "All {n} strands are worked from left to right.", "There are {n} strands in the fringe.", "Hang {n} strands from the base row.",
                     "The fringe is made of {n} strands."):
            yield Told(text, strands, 1)
        strand = random.choice(piece.strands)
        yield Told(f"Strand {strand.number} has {{n}} beads.", len(strand.all), 1)
        yield Told("The longest strand has {n} beads.", max(len(strand.all) for strand in piece.strands), 1)
        yield Told("The shortest strand has {n} beads.", min(len(strand.all) for strand in piece.strands), 1)
    # Authors round lengths to five millimetres, so that only more than half of that is wrong.
    yield Told("The earring is {n} mm wide.", round(measured.width), 4)
    yield Told("The finished piece is {n} mm long.", round(measured.length), 4)
    yield Told("The body is {n} mm wide.", round(measured.width), 4)
    yield Told("The finished piece is {n} inches long.", round(measured.length / 25.4, 1), 0.2, 1)
    yield Told("An earring weighs {n} g.", round(mass(piece), 1), 0.5, 1)


def said_right(drawn: Drawn, random: Random, told: Told) -> str:
    """The file with a true sentence at the head of its notes."""
    return _noted(drawn, told.said(told.value, random.random() < 0.4))


def said_wrong(drawn: Drawn, random: Random) -> str:
    """The file with a sentence that is one off."""
    told = random.choice(list(sentences(drawn.pattern, random)))
    return _noted(drawn, told.said(told.value + random.choice((-1, 1)) * told.step, random.random() < 0.4))


def _noted(drawn: Drawn, sentence: str) -> str:
    return drawn.text.replace("notes: |\n", f"notes: |\n  {sentence}\n\n", 1)
