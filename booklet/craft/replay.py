"""Rebuilding the chart from the printed words, and holding it against the piece.

The reading itself is in `craft.reading`; the stitch is told by the piece, everything else by the words alone.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from msgspec import Struct

from .piece import Piece
from .reading import grammar_of, reader_of
from .reading.items import CannotRead
from .reading.strands import ReadLine, ReadStrand, read_strand
from .reading.told import ReadRow
from .strand import TWIST, Charm, Strand, Twig


class ReadPiece(Struct, frozen=True):
    """All that was read."""

    rows: tuple[ReadRow, ...]
    strands: tuple[ReadStrand, ...]   # by number


def replay(row_lines: Sequence[str], strand_lines: Sequence[str], stitch: str = "brick", language: str = "en") -> ReadPiece:
    """Work the lines of a language in their order. Raises CannotRead with the line that makes no sense."""
    grammar = grammar_of(language)
    return ReadPiece(reader_of(stitch).read_rows(row_lines, grammar), tuple(sorted(read_strand(line, grammar) for line in strand_lines)))


def differences(piece: Piece, row_lines: Sequence[str], strand_lines: Sequence[str], language: str = "en") -> tuple[str, ...]:
    """Where the chart that the lines rebuild differs from the piece; empty if the words are right."""
    try:
        read = replay(row_lines, strand_lines, piece.stitch, language)
    except CannotRead as error:
        return (str(error),)
    return (*_row_differences(piece, read), *_strand_differences(piece, read))


def _row_differences(piece: Piece, read: ReadPiece) -> list[str]:
    found = []
    told, drawn = ([row.name for row in rows] for rows in (read.rows, piece.rows))
    if told != drawn:
        found.append(f"the words have rows {', '.join(told)}; the chart has {', '.join(drawn)}")
    zero = piece.rows[0].stitches[0].at
    for told, row in zip(read.rows, piece.rows):
        drawn = tuple((stitch.at - zero, stitch.beads) for stitch in row.stitches)
        if told.stitches != drawn or told.below != (row.level < 0) or told.runs_right != (row.direction == "right"):
            found.append(f"row {row.name}: the words rebuild {told.stitches}, the chart has {drawn}")
    return found


def _strand_differences(piece: Piece, read: ReadPiece) -> list[str]:
    drawn = [_as_read(strand, piece.along) for strand in piece.strands]
    if len(drawn) != len(read.strands):
        return [f"the words have {len(read.strands)} strands, the pattern has {len(drawn)}"]
    return [f"strand {have.number}: the words give {_plainly(told)}, the pattern has {_plainly(have)}"
            for told, have in zip(read.strands, drawn) if told != have]


def _as_read(strand: Strand, hand: str) -> ReadStrand:
    """A strand of the pattern in the form in which strands are read back."""
    down, up = strand.span(hand)
    line = _line_as_read(strand)
    if down != strand.number:
        line = ReadLine(line.items[::-1])
    return ReadStrand(strand.number, down, up, line, strand.second if strand.kind == TWIST else None)


def _line_as_read(line: Strand | Twig) -> ReadLine:
    return ReadLine(tuple(_merged(line.beads, line.hung)), tuple(_merged(line.end, line.turned)))


def _merged(beads: tuple[str, ...], hung: tuple[Twig | Charm, ...]) -> Iterator[str | ReadLine]:
    done = 0
    for thing in hung:
        yield from beads[done:thing.at]
        yield f"the {thing.name}" if isinstance(thing, Charm) else _line_as_read(thing)
        done = thing.at
    yield from beads[done:]


def _plainly(strand: ReadStrand) -> tuple:
    """What differs, as short as it can be said."""
    places = () if strand.down == strand.up else (strand.down, strand.up)
    return (*places, _parts(strand.line), *(() if strand.second is None else (strand.second,)))


def _parts(line: ReadLine) -> tuple:
    return tuple(_parts(item) if isinstance(item, ReadLine) else item for item in line.items), line.end
