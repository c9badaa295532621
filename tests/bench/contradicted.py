"""What in a file, or in the record of releases, contradicts a slip: whether any tool could see it.

This knows the file as it was before the slip, and asks whether something that was true or regular then no longer is. Where the answer is
nothing, the file is a consistent pattern of its own, and only its author knows that she meant another one: a letter of a free drawing, say.
None of the rules of lint is asked.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from coloraide import Color

from booklet.craft.piece import Piece
from booklet.craft.places import places, strands_fit
from booklet.craft.stitches import faults
from booklet.craft.tally import hand_counts, tally
from booklet.source.content import printed, stitched
from booklet.source.pattern import Pattern
from booklet.source.releases import Releases
from tests.bench.drawn import Drawn
from tests.bench.slip_kinds import NAMES
from tests.bench.told import words

FAR = 25.0   # CIEDE2000 from which a name of our list is plainly that of another colour


def reasons(before: Drawn, text: str, releases: Releases | None = None) -> list[str]:
    """Everything that contradicts the text after a slip; none where nothing does."""
    after = before.with_text(text)
    if after is None or after.pattern.piece is None:
        return ["it cannot be read"]
    return list(_reasons(before.pattern, after.pattern, text, releases))


def _reasons(before: Pattern, after: Pattern, text: str, releases: Releases | None) -> Iterator[str]:
    piece, was = after.piece, before.piece
    if faults(piece) or after.fringe_places not in (0, len(places(piece))) or not strands_fit(piece) or not all(strand.end for strand in piece.strands):
        yield "it cannot be worked"
    numbers = zip(after.chart.numbers(after.base), after.chart.rows)
    if any(row.written not in (None, number) for number, row in numbers):
        yield "a row number is wrong"
    if any(count != hand_counts(piece)[name] for name, count in after.counted.items()):
        yield "the count by hand differs"
    if {line.key for line in tally(piece).lines if not line.piece} - {line.key for line in tally(was).lines if not line.piece}:
        yield "a bead of the legend is not used"
    yield from _shape(was, piece)
    yield from _legend(before, after)
    if after.notes != before.notes and len(after.notes) != len(before.notes) and not _counts_without_ends(after):
        yield "the notes say otherwise"
    if releases is not None:
        released = releases.at(after.slug, after.version)
        if released and (released.stitched, released.printed) != (stitched(after), printed(after)) or releases.last(after.slug).is_newer_than(after.version):
            yield "it was released otherwise"


def _counts_without_ends(pattern: Pattern) -> bool:
    """Whether the sentence at the head of the notes gives a strand the beads that it has without its end beads: authors count both ways."""
    match = re.match(r"(?:Strand ([0-9]+)|The (longest|shortest) strand) has (\S+) beads\.", pattern.notes)
    if not match:
        return False
    strands = [strand for strand in pattern.piece.strands if not match[1] or strand.number == int(match[1])]
    length = (min if match[2] == "shortest" else max)(len(strand.all) for strand in strands)
    return any(match[3] in (str(len(strand.beads)), words(len(strand.beads))) for strand in strands if len(strand.all) == length)


def _shape(was: Piece, now: Piece) -> Iterator[str]:
    """What was regular and is no longer."""
    for name, test in (("the body was alike left and right", _sideways), ("the body was alike up and down", _upright), ("the fringe was alike left and right", _fringe),
                       ("the strands stepped evenly", _steps), ("the widths of the rows stepped evenly", _widths)):
        if test(was) and not test(now):
            yield name


def _cells(piece: Piece) -> dict[tuple[int, int, int], str]:
    return {(row.level, stitch.at, height if row.level >= 0 else -1 - height): key for row in piece.rows for stitch in row.stitches
            for height, key in enumerate(stitch.beads)}


def _sideways(piece: Piece) -> bool:
    cells = _cells(piece)
    ends = {row.first + row.last for row in piece.rows}
    return len(ends) == 1 and all(cells.get((level, min(ends) - at, height)) == key for (level, at, height), key in cells.items())


def _upright(piece: Piece) -> bool:
    cells, least = _cells(piece), min(len(piece.upper), len(piece.lower))
    return least > 2 and piece.drop == 1 and all(cells.get((-level, at, 0 if level <= 0 else -1)) == key for (level, at, _), key in cells.items() if abs(level) <= least)


def _fringe(piece: Piece) -> bool:
    strands = [strand.all for strand in piece.strands]
    return len(strands) > 2 and strands == strands[::-1] and len(set(strands)) > 1


def _steps(piece: Piece) -> bool:
    return _is_even([len(strand.all) for strand in piece.strands])


def _widths(piece: Piece) -> bool:
    return _is_even([len(row.stitches) for row in sorted(piece.rows, key=lambda row: row.level)])


def _is_even(numbers: Sequence[int]) -> bool:
    return len(numbers) > 5 and len({after - before for before, after in zip(numbers, numbers[1:])}) == 1


def _legend(before: Pattern, after: Pattern) -> Iterator[str]:
    beads = list(after.legend.values())
    if len({bead.name for bead in beads}) < len(beads):
        yield "a name stands twice in the legend"
    if len({(bead.colour, bead.finish, bead.kind) for bead in beads}) < len(beads):
        yield "two beads of the legend are the same bead"
    for key, bead in after.legend.items():
        old = before.legend.get(key)
        if old is None:
            continue
        if bead.name != old.name and _is_named(old.name, after) and not any(_is_named(old.name, after, other.name) for other in beads):
            yield "the prose uses the old name"
        if bead.name != old.name and bead.name in NAMES and _apart(NAMES[bead.name], bead.colour) > FAR:
            yield "the name is that of another colour"
        if bead.colour != old.colour and old.name.split()[-1] in ("blue", "green", "white", "black", "red", "gold", "grey", "silver", "brown", "violet") \
                and _apart(old.colour, bead.colour) > 2 * FAR and not _of_one_hue(old.colour, bead.colour):
            yield "the name is that of another colour"


def _is_named(name: str, pattern: Pattern, where: str | None = None) -> bool:
    text = where if where is not None else f"{pattern.summary} {pattern.notes}"
    return re.search(rf"\b{re.escape(name)}\b", re.sub(r"\s+", " ", text), re.IGNORECASE) is not None


def _of_one_hue(one: str, other: str) -> bool:
    """Whether both are colours of one hue, of which one name is good for light and dark: a dark blue is a blue."""
    (_, chroma, hue), (_, other_chroma, other_hue) = (Color(colour).convert("lch-d65").coords() for colour in (one, other))
    return min(chroma, other_chroma) > 8 and abs((hue - other_hue + 180) % 360 - 180) < 50


def _apart(one: str, other: str) -> float:
    return Color(one).convert("lab-d65").delta_e(Color(other).convert("lab-d65"), method="2000")
