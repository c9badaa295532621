"""How far a chart or a fringe is from being its own mirror picture."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping

from msgspec import Struct
from msgspec.structs import replace

from ..craft.kept import kept
from ..craft.piece import Piece, Row, Strand
from ..craft.stitches import stitch_of

# Row by level, bead in the stitch from the bottom as it hangs (from the left where a set lies along its row), position in half stitches.
Cell = tuple[int, int, int]
MOST_SLIPS = 3                # more differences than these are meant
PROOF = 4                     # pairs of beads of the drawing that agree, for each one that does not


class Slip(Struct, frozen=True):
    """Two places that would hold the same bead in a mirror picture, and what they hold; None for no bead."""

    one: Cell
    other: Cell
    keys: tuple[str | None, str | None]
    accent: bool = False   # several beads of a colour that nowhere in the body has its like opposite it: they may be meant


@kept
def cells(piece: Piece) -> Mapping[Cell, str]:
    """Every bead of the body by its place."""
    return {(row.level, height, stitch.at): key for row in piece.rows for stitch in row.stitches
            for height, key in enumerate(stitch.beads if row.level >= 0 else stitch.beads[::-1])}


def middle_of(piece: Piece) -> int:
    """Twice the position of the line about which most rows lie evenly."""
    return Counter(row.first + row.last for row in piece.drawn).most_common(1)[0][0]


def body_slips(piece: Piece) -> tuple[Slip, ...]:
    """Places that keep the body from being mirrored left to right; none where it is, or where too much differs to be a slip."""
    placed, stitch, middle = cells(piece), stitch_of(piece), middle_of(piece)
    if stitch.INTERLOCKED and len({row.first + row.last for row in piece.rows}) > 1:   # an even number of columns has no mirror picture in its own rows
        return ()
    turned = piece.drop - 1
    return _slips(piece, placed, {cell: (cell[0], turned - cell[1] if stitch.LYING else cell[1], middle - cell[2]) for cell in placed})


def upright_slips(piece: Piece) -> tuple[Slip, ...]:
    """The same, top to bottom about the base row, over the rows that have a partner."""
    upper, lower = piece.drawn[-1].level, -piece.drawn[0].level
    if min(upper, lower) < 3:
        return ()
    placed = {cell: key for cell, key in cells(piece).items() if abs(cell[0]) <= min(upper, lower)}
    return _slips(piece, placed, {cell: (-cell[0], piece.drop - 1 - cell[1], cell[2]) for cell in placed})


def exchanged_rows(piece: Piece) -> tuple[Row, Row] | None:
    """Two rows above the base row that would be like the rows below it if they changed places, where all others are."""
    drawn = {row.level: row for row in piece.drawn}
    told = {level: [(stitch.at, stitch.beads) for stitch in row.stitches] for level, row in drawn.items()}
    shared = [level for level in drawn if level > 0 and -level in drawn]
    wrong = [level for level in shared if told[level] != told[-level]]
    if len(wrong) != 2 or len(shared) < 2 * len(wrong) + 1:
        return None
    one, other = wrong
    return (drawn[one], drawn[other]) if told[one] == told[-other] and told[other] == told[-one] else None


def _slips(piece: Piece, placed: Mapping[Cell, str], partner: Mapping[Cell, Cell]) -> tuple[Slip, ...]:
    """The pairs that differ, if they are few against the pairs of the drawing that agree.

    The commonest bead of a line is its ground: that ground lies opposite ground proves nothing. A bead that never has its
    like opposite it, such as a single star, is meant to stand alone, unless the fringe has its colour too.
    """
    slips: dict[tuple[Cell, Cell], Slip] = {}
    matched: Counter[str] = Counter()
    ground = _grounds(placed)
    agree = 0
    for cell, key in placed.items():
        other = partner[cell]
        if placed.get(other) != key:
            one, two = sorted((cell, other))
            slips[one, two] = Slip(one, two, (placed.get(one), placed.get(two)))
            if len(slips) > MOST_SLIPS:
                return ()
        elif other >= cell:
            matched[key] += 1
            agree += other > cell and key != ground[cell[:2]]
    elsewhere = {key for strand in piece.strands for key in strand.all}
    found = tuple(replace(slip, accent=len(slips) > 1 and not all(key is None or matched[key] for key in slip.keys))
                  for slip in slips.values() if all(key is None or matched[key] or key in elsewhere for key in slip.keys))
    return found if agree >= PROOF * len(found) else ()


def _grounds(placed: Mapping[Cell, str]) -> dict[tuple[int, int], str]:
    """The commonest key of each line of beads."""
    lines: dict[tuple[int, int], list[str]] = {}
    for cell, key in placed.items():
        lines.setdefault(cell[:2], []).append(key)
    return {line: max(keys, key=keys.count) for line, keys in lines.items()}


class Unlike(Struct, frozen=True):
    """Two strands that stand opposite each other and differ."""

    one: Strand
    other: Strand
    beads: int   # that differ


def unlike_strands(strands: tuple[Strand, ...]) -> tuple[Unlike, ...]:
    """Strands that keep the fringe from being mirrored; none where it is, or where too much differs to be a slip."""
    half = len(strands) // 2
    pairs = list(zip(strands[:half], reversed(strands[-half:]))) if half else []
    found = [Unlike(one, other, differing(one.all, other.all)) for one, other in pairs if one.all != other.all]
    few = sum(pair.beads for pair in found) <= MOST_SLIPS
    varied = len({strand.all for strand in strands}) > len(found) + 1
    return tuple(found) if few and len(pairs) - len(found) > len(found) and varied else ()


def differing(one: tuple[str, ...], other: tuple[str, ...]) -> int:
    """Beads between the part that two strands share at the top and the part that they share at the bottom."""
    most = min(len(one), len(other))
    top = next((index for index in range(most) if one[index] != other[index]), most)
    bottom = next((index for index in range(most - top) if one[-1 - index] != other[-1 - index]), most - top)
    return max(len(one), len(other)) - top - bottom
