"""The slips that people make in a pattern file, one function a kind: a file and a random source to the text after the slip.

A slip may come out as no change at all, or be impossible in a file; it is then drawn again.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from random import Random

from tests.bench.drawn import Drawn
from tests.bench.told import said_wrong

NAMES = {"pale straw": "#f3e3a1", "leaf green": "#4f8f45", "brick red": "#a03a2c", "midnight blue": "#18224a", "smoke grey": "#85888c", "plum": "#5e3a5b",
         "soft pink": "#eab7c4", "burnt orange": "#cf6a2b", "chalk white": "#f4f1ea", "jet black": "#1c1b1c", "teal": "#2b7f88", "walnut brown": "#5a3b28"}


def bead_changed(drawn: Drawn, random: Random) -> str:
    """One letter of the chart is another one."""
    bead = random.choice(random.choice(drawn.chart_lines))
    return drawn.with_bead(bead, random.choice(list(drawn.pattern.legend)))


def bead_dropped(drawn: Drawn, random: Random) -> str:
    """One bead of the chart is blank, or deleted, so that the rest of its line moves up."""
    bead = random.choice(random.choice(drawn.chart_lines))
    mark, line = bead.mark, drawn.lines[bead.mark.line - 1]
    blank = random.random() < 0.5
    return drawn.with_lines({mark.line: (line[:mark.column - 1] + (" " if blank else "") + line[mark.column + (0 if blank else 1):]).rstrip()})


def bead_doubled(drawn: Drawn, random: Random) -> str:
    """One bead of the chart is typed twice."""
    bead = random.choice(random.choice(drawn.chart_lines))
    line, at = drawn.lines[bead.mark.line - 1], bead.mark.column - 1
    return drawn.with_lines({bead.mark.line: f"{line[:at]}{bead.key} {line[at:]}"})


def rows_swapped(drawn: Drawn, random: Random) -> str:
    """Two rows next to each other, or two with one between, change places under their numbers."""
    rows, apart = drawn.pattern.chart.rows, random.choice((1, 1, 2))
    if len(rows) <= apart:
        return drawn.text
    at = random.randrange(len(rows) - apart)
    changed = {}
    for one, other in ((rows[at], rows[at + apart]), (rows[at + apart], rows[at])):
        for mine, theirs in zip(one.lines, other.lines):
            line, taken = drawn.lines[mine[0].mark.line - 1], drawn.lines[theirs[0].mark.line - 1]
            bar = line.index("|")
            changed[mine[0].mark.line] = line[:bar] + taken[taken.index("|"):]
    return drawn.with_lines(changed)


def row_shifted(drawn: Drawn, random: Random) -> str:
    """A row stands one or two characters too far to one side."""
    row, by = random.choice(drawn.pattern.chart.rows), random.choice((-2, -1, 1, 2))
    changed = {}
    for beads in row.lines:
        line = drawn.lines[beads[0].mark.line - 1]
        bar = line.index("|") + 1
        if by < 0 and line[bar:bar - by].strip():
            return drawn.text
        changed[beads[0].mark.line] = line[:bar] + (" " * by + line[bar:] if by > 0 else line[bar - by:])
    return drawn.with_lines(changed)


def strand_bead_changed(drawn: Drawn, random: Random) -> str:
    """One run of a strand has another key; in a drawn fringe, one bead."""
    keys = list(drawn.pattern.legend)
    return _with_run(drawn, random, lambda count, key: f"{count}{random.choice(keys)}", lambda column, at: [*column[:at], random.choice(keys), *column[at + 1:]])


def strand_one_short(drawn: Drawn, random: Random) -> str:
    """A strand has a bead too few."""
    return _with_run(drawn, random, lambda count, key: f"{count - 1}{key}" if count > 1 else "", lambda column, at: [*column[:at], *column[at + 1:]])


def strand_one_long(drawn: Drawn, random: Random) -> str:
    """A strand has a bead too many."""
    return _with_run(drawn, random, lambda count, key: f"{count + 1}{key}", lambda column, at: [*column[:at], column[at], *column[at:]])


def bead_moved_between_runs(drawn: Drawn, random: Random) -> str:
    """One run of a strand has a bead more and the next one a bead less, so that the strand keeps its length."""
    if not drawn.strand_lines:
        return drawn.text
    number = random.choice(drawn.strand_lines)
    line = drawn.lines[number - 1]
    runs = list(re.finditer(r"\b([0-9]+)([A-Za-z])\b", line.split("#")[0]))
    if len(runs) < 2:
        return drawn.text
    at, more = random.randrange(len(runs) - 1), random.choice((-1, 1))
    one, other = runs[at], runs[at + 1]
    if min(int(one[1]) + more, int(other[1]) - more) < 1:
        return drawn.text
    return drawn.with_lines({number: f"{line[:one.start()]}{int(one[1]) + more}{one[2]}{line[one.end():other.start()]}{int(other[1]) - more}{other[2]}{line[other.end():]}"})


def _with_run(drawn: Drawn, random: Random, run: Callable[[int, str], str], column: Callable[[list[str], int], list[str]]) -> str:
    if drawn.columns:
        beads = random.choice(drawn.columns)
        keys = [bead.key for bead in beads]
        return drawn.with_column(beads, column(keys, random.randrange(len(keys))))
    if not drawn.strand_lines:
        return drawn.text
    number = random.choice(drawn.strand_lines)
    line = drawn.lines[number - 1]
    match = random.choice(list(re.finditer(r"\b([0-9]+)([A-Za-z])\b", line.split("#")[0])))
    return drawn.with_lines({number: line[:match.start()] + run(int(match[1]), match[2]) + line[match.end():]})


def strands_swapped(drawn: Drawn, random: Random) -> str:
    """Two strands next to each other change places."""
    if drawn.columns:
        at = random.randrange(len(drawn.columns) - 1)
        one, other = drawn.columns[at], drawn.columns[at + 1]
        half = drawn.with_text(drawn.with_column(one, [bead.key for bead in other]))
        return half.with_column(half.columns[at + 1], [bead.key for bead in one]) if half and half.columns else drawn.text
    lines = drawn.strand_lines
    if not lines:
        return drawn.text
    at = random.randrange(len(lines) - 1)
    return drawn.with_lines({lines[at]: drawn.lines[lines[at + 1] - 1], lines[at + 1]: drawn.lines[lines[at] - 1]})


def strand_lost(drawn: Drawn, random: Random) -> str:
    """A strand is left out, or written twice."""
    if not drawn.strand_lines:
        return drawn.text
    number, lines = random.choice(drawn.strand_lines), drawn.lines
    return "\n".join((*lines[:number - 1], *[lines[number - 1]] * random.choice((0, 2)), *lines[number:]))


def end_bead_lost(drawn: Drawn, random: Random) -> str:
    """The end beads are one fewer, or the own end of a strand is gone."""
    own = [number for number in drawn.strand_lines if ">" in drawn.lines[number - 1]]
    if own and random.random() < 0.5:
        number = random.choice(own)
        return drawn.with_lines({number: drawn.lines[number - 1].partition(">")[0].rstrip()})
    match = re.search(r"^  end: ([0-9])([A-Za-z])", drawn.text, re.MULTILINE)
    if not match:
        return drawn.text
    fewer = f"  end: {int(match[1]) - 1}{match[2]}" if int(match[1]) > 1 else "  # end:"
    return drawn.text[:match.start()] + fewer + drawn.text[match.end():]


def number_in_prose(drawn: Drawn, random: Random) -> str:
    """A sentence of the notes states a number that is one off."""
    return said_wrong(drawn, random)


def colour_renamed(drawn: Drawn, random: Random) -> str:
    """A bead of the legend has another name: one of our list, or that of another bead."""
    key, bead = random.choice(list(drawn.pattern.legend.items()))
    names = list(NAMES) if random.random() < 0.7 else [other.name for other in drawn.pattern.legend.values()]
    return _with_legend(drawn, key, f"name: {bead.name}", f"name: {random.choice(names)}")


def colour_value_changed(drawn: Drawn, random: Random) -> str:
    """A bead of the legend has another colour: one of our list, or that of another bead."""
    key, bead = random.choice(list(drawn.pattern.legend.items()))
    colours = list(NAMES.values()) if random.random() < 0.7 else [other.colour for other in drawn.pattern.legend.values()]
    return _with_legend(drawn, key, bead.colour, random.choice(colours))


def key_renamed(drawn: Drawn, random: Random) -> str:
    """A key of the legend is another letter, while the chart keeps the old one."""
    key = random.choice(list(drawn.pattern.legend))
    new = random.choice("ABCDEFGHKLMNPQRSTUVWXYZ")
    return drawn.text if new in drawn.pattern.legend else _with_legend(drawn, key, f"{key}:", f"{new}:")


def _with_legend(drawn: Drawn, key: str, old: str, new: str) -> str:
    number = drawn.pattern.mark("beads", key).line
    return drawn.with_lines({number: drawn.lines[number - 1].replace(old, new, 1)})


def counted_wrong(drawn: Drawn, random: Random) -> str:
    """A count made by hand is one off, or its last two figures have changed places."""
    name, value = random.choice(list(drawn.pattern.counted.items()))
    figures = str(value)
    wrong = figures[:-2] + figures[-1] + figures[-2] if len(figures) > 1 and random.random() < 0.3 else str(value + random.choice((-1, 1)))
    number = drawn.pattern.mark("counted", name).line
    return drawn.with_lines({number: re.sub(rf"\b{name}: {value}\b", f"{name}: {wrong}", drawn.lines[number - 1])})


def half_not_mirrored(drawn: Drawn, random: Random) -> str:
    """One to three beads of a chart or fringe are changed on one side and forgotten on the other."""
    cells = [bead for line in drawn.chart_lines for bead in line]
    first = random.choice(cells)
    near = [bead for bead in cells if abs(bead.mark.line - first.mark.line) <= 1 and abs(bead.at - first.at) <= 2]
    key, text = random.choice(list(drawn.pattern.legend)), drawn.text
    for bead in random.sample(near, min(len(near), random.choice((1, 2, 3)))):
        changed = drawn._replace(text=text)
        text = changed.with_bead(bead, key)
    return text


def version_not_raised(drawn: Drawn, random: Random) -> str:
    """Something that is stitched or printed is changed, and the version is left as it was, or lowered."""
    if random.random() < 0.15:
        return drawn.text.replace('version: "1.0"', 'version: "0.9"')
    return random.choice((bead_changed, strand_bead_changed, strand_one_short, strands_swapped, colour_renamed, colour_value_changed))(drawn, random)


KINDS: dict[str, Callable[[Drawn, Random], str]] = {
    "a bead of the chart changed": bead_changed, "a bead dropped": bead_dropped, "a bead doubled": bead_doubled, "two rows swapped": rows_swapped,
    "a row shifted": row_shifted, "a strand one short": strand_one_short, "a strand one long": strand_one_long, "a bead of a strand changed": strand_bead_changed,
    "a bead moved to the next run": bead_moved_between_runs,
    "two strands swapped": strands_swapped, "a strand lost or doubled": strand_lost, "an end bead lost": end_bead_lost,
    "a number in prose one off": number_in_prose, "a legend colour renamed": colour_renamed, "a legend colour changed": colour_value_changed,
    "a legend key renamed": key_renamed, "counted wrong": counted_wrong, "right half not mirrored": half_not_mirrored}
PUBLISHED: dict[str, Callable[[Drawn, Random], str]] = {"version not raised": version_not_raised}
