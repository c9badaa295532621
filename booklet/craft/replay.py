"""Reading the printed words back: from lines of text alone to rows and strands.

This is written apart from `craft.words` and `craft.needle` and shares no code with them, so that a slip in one is
seen by the other. It knows only what a maker knows: how a ladder, a row start, a row end and a set are worked.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from .piece import Piece

_ROW = re.compile(r"Row (\d+) ([←→]) (\d+) (stitch|stitches|set|sets)( below)?: (.+)")
_STRAND = re.compile(r"Strand (\d+), (\d+) beads?: (.*)")
_TEXT = re.compile(r"(?:(ladder|start in|start out|one stitch|one set) (.+?))(?:; then (.+?))?(?:; end (in|out))?")
_TOKEN = re.compile(r"\s*(?:(\d+) × \[|(\d*)\(([A-Za-z0-9](?: [A-Za-z0-9])*)\)|(\d+)([A-Za-z0-9])(?![A-Za-z0-9])|([\],]))")


class CannotRead(ValueError):
    """A printed line that is not in the form in which lines are written."""


@dataclass(frozen=True)
class ReadRow:
    """A row as the words tell it. Positions count half stitches from the leftmost base stitch."""

    number: int
    below: bool
    runs_right: bool
    stitches: tuple[tuple[int, tuple[str, ...]], ...]  # (position, beads low to high), left to right


@dataclass(frozen=True)
class ReadPiece:
    """All that was read."""

    rows: tuple[ReadRow, ...]
    strands: tuple[tuple[int, tuple[str, ...], tuple[str, ...]], ...]  # (number, beads, end beads), by number


def replay(row_lines: Sequence[str], strand_lines: Sequence[str]) -> ReadPiece:
    """Work the lines in their order. Raises CannotRead with the line that makes no sense."""
    rows: list[ReadRow] = []
    for line in row_lines:
        rows.append(_read_row(line, rows))
    strands = sorted(_read_strand(line) for line in strand_lines)
    return ReadPiece(tuple(rows), tuple(strands))


def differences(piece: Piece, row_lines: Sequence[str], strand_lines: Sequence[str]) -> tuple[str, ...]:
    """Where the chart that the lines rebuild differs from the piece; empty if the words are right."""
    try:
        read = replay(row_lines, strand_lines)
    except CannotRead as error:
        return (str(error),)
    return (*_row_differences(piece, read), *_strand_differences(piece, read))


def _row_differences(piece: Piece, read: ReadPiece) -> list[str]:
    found = []
    if [row.number for row in read.rows] != [row.number for row in piece.rows]:
        found.append(f"the words have rows {[row.number for row in read.rows]}, "
                     f"the chart has {[row.number for row in piece.rows]}")
    zero = piece.rows[0].stitches[0].at
    for told, row in zip(read.rows, piece.rows):
        drawn = tuple((stitch.at - zero, stitch.beads) for stitch in row.stitches)
        if told.stitches != drawn or told.below != (row.level < 0) or told.runs_right != (row.direction == "right"):
            found.append(f"row {row.number}: the words rebuild {told.stitches}, the chart has {drawn}")
    return found


def _strand_differences(piece: Piece, read: ReadPiece) -> list[str]:
    drawn = tuple((strand.number, strand.beads, strand.end) for strand in piece.strands)
    if len(drawn) != len(read.strands):
        return [f"the words have {len(read.strands)} strands, the pattern has {len(drawn)}"]
    return [f"strand {have[0]}: the words give {told[1:]}, the pattern has {have[1:]}"
            for told, have in zip(read.strands, drawn) if told != have]


def _read_row(line: str, done: list[ReadRow]) -> ReadRow:
    match = _ROW.fullmatch(line)
    parts = _TEXT.fullmatch(match[6]) if match else None
    if not parts:
        raise CannotRead(f"cannot read this line back: {line!r}")
    number, right, below = int(match[1]), match[2] == "→", bool(match[5])
    how, end = parts[1], parts[4]
    sets = _items(parts[2], line) + (_items(parts[3], line) if parts[3] else [])
    if len(sets) != int(match[3]) or len({len(beads) for beads in sets}) != 1:
        raise CannotRead(f"row {number} says {match[3]} {match[4]} but names {len(sets)}: {line!r}")
    if done and right == done[-1].runs_right:
        raise CannotRead(f"row {number} runs the same way as the row before it: {line!r}")
    under = _hangs_on(number, below, done)
    if under is None and how.startswith("start"):
        raise CannotRead(f"the first row is not a ladder: {line!r}")
    positions = _ladder(sets, right) if under is None else _hang(sets, right, how, end, under, line)
    return ReadRow(number, below, right, tuple(sorted(positions)))


def _hangs_on(number: int, below: bool, done: list[ReadRow]) -> ReadRow | None:
    if not done:
        return None
    return done[-1] if done[-1].below == below else done[0]


def _ladder(sets: list[tuple[str, ...]], right: bool) -> list[tuple[int, tuple[str, ...]]]:
    """The last stitch is passed upward, the one before it downward, and so on back to the first."""
    count, placed = len(sets), []
    for k, beads in enumerate(sets):
        low_first = (count - 1 - k) % 2 == 0
        place = 2 * k if right else 2 * (count - 1 - k)
        placed.append((place, beads if low_first else beads[::-1]))
    return placed


def _hang(sets, right, how, end, under, line) -> list[tuple[int, tuple[str, ...]]]:
    """Place a row from its start: half a stitch in or out; only the first stitch of a pair is taken low bead first."""
    places = [place for place, _ in under.stitches]
    near, step = (places[0], 2) if right else (places[-1], -2)
    far = places[-1] if right else places[0]
    if how in ("one stitch", "one set"):
        if len(sets) != 1 or end:
            raise CannotRead(f"one stitch is announced, more is told: {line!r}")
        return [(near + step // 2, sets[0][::-1])]
    if how == "ladder" or end is None or len(sets) < 2 or len(places) < 2:
        raise CannotRead(f"cannot hang this row on the one before: {line!r}")
    start = near + (step // 2 if how == "start in" else -step // 2)
    placed = [(start + k * step, beads if k == 0 else beads[::-1]) for k, beads in enumerate(sets)]
    stop = far - step // 2 if end == "in" else far + step // 2
    if placed[-1][0] != stop:
        raise CannotRead(f"the row does not end {end!r} where it should: {line!r}")
    return placed


def _read_strand(line: str) -> tuple[int, tuple[str, ...], tuple[str, ...]]:
    match = _STRAND.fullmatch(line)
    if not match:
        raise CannotRead(f"cannot read this line back: {line!r}")
    body, mark, end = match[3].rpartition("end ")
    body = body.rstrip("; ") if mark else match[3]
    beads = tuple(key for item in _items(body, line) for key in item) if body else ()
    ends = tuple(key for item in _items(end, line) for key in item) if mark else ()
    if len(beads) + len(ends) != int(match[2]):
        raise CannotRead(f"strand {match[1]} says {match[2]} beads but names {len(beads) + len(ends)}: {line!r}")
    return int(match[1]), beads, ends


def _items(text: str, line: str) -> list[tuple[str, ...]]:
    """Expand "3W, 2 × [1B, 1W], 2(W B)" to single items."""
    out: list[tuple[str, ...]] = []
    group: list[tuple[str, ...]] | None = None
    times, at = 1, 0
    while at < len(text):
        token = _TOKEN.match(text, at)
        if not token:
            raise CannotRead(f"cannot read {text[at:]!r} in this line: {line!r}")
        at = token.end()
        target = out if group is None else group
        if token[1]:
            group, times = [], int(token[1])
        elif token[3]:
            target += [tuple(token[3].split())] * int(token[2] or 1)
        elif token[4]:
            target += [(token[5],)] * int(token[4])
        elif token[6] == "]":
            out += (group or []) * times
            group = None
    return out
