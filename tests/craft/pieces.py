"""Random and hand-made pieces for the tests of the craft."""

from hypothesis import strategies as st

from booklet.craft.beads import Bead, BeadKind
from booklet.craft.piece import Hanger, Piece, Stitch, Strand, piece_rows

CYLINDER = BeadKind("cylinder 11/0", "cylinder", 1.6, 1.3, 0.8)
LEGEND = {key: Bead(key, f"colour {key}", "#808080", "matte", CYLINDER) for key in "WBR7"}
KEYS = st.sampled_from("WBR7")


def piece(rows, base=0, hand="right", strands=(), end="W", hanger=None):
    """A piece from rows given bottom up as (position, sets), a set being a string from the bottom bead up."""
    drawn = [[Stitch(at + 2 * i, tuple(beads)) for i, beads in enumerate(sets)] for at, sets in rows]
    lines = tuple(Strand(n, tuple(beads), tuple(end)) for n, beads in enumerate(strands, 1))
    return Piece(LEGEND, len(rows[0][1][0]), hand, piece_rows(drawn, base, hand), lines, (hanger,) if hanger else ())


def triangle(base, last=1, drop=1, **more):
    """Rows from `base` stitches down to `last`, all of bead W."""
    return piece([(i, ["W" * drop] * (base - i)) for i in range(base - last + 1)], **more)


@st.composite
def workable(draw, fringe=True):
    """Any legal brick-stitch piece: every edge moves half a stitch a row, away from a base row that may be anywhere."""
    drop, count = draw(st.integers(1, 4)), draw(st.integers(2, 9))
    beads = st.lists(KEYS, min_size=drop, max_size=drop).map("".join)
    base = (20, [draw(beads) for _ in range(count)])
    sides = []
    for _ in range(2):
        side, (at, width) = [], (20, count)
        for _ in range(draw(st.integers(0, 6))):
            left, right = draw(st.sampled_from([-1, 1])), draw(st.sampled_from([-1, 1]))
            new = width + (right - left) // 2
            if width < 2 or new < 1:
                break
            at, width = at + left, new
            side.append((at, [draw(beads) for _ in range(width)]))
        sides.append(side)
    upper, lower = sides
    strands = [draw(st.lists(KEYS, max_size=30)) for _ in range(count)] if fringe and draw(st.booleans()) else []
    hanger = draw(st.sampled_from([None, Hanger("guard"), Hanger("loop", tuple("WBWBW")), Hanger("ring", passes=4)]))
    return piece([*lower[::-1], base, *upper], len(lower), draw(st.sampled_from(["right", "left"])), strands,
                 draw(st.sampled_from(["W", "BBB", "WRW"])), hanger)
