"""Random and hand-made pieces for the tests of the craft."""

from hypothesis import strategies as st
from msgspec.structs import replace

from booklet.craft.beads import Bead, BeadKind
from booklet.craft.piece import Hanger, Piece, Stitch, Strand, piece_rows

CYLINDER = BeadKind("cylinder 11/0", "cylinder", 1.6, 1.3, 0.8)
LEGEND = {key: Bead(key, f"colour {key}", "#808080", "matte", CYLINDER) for key in "WBR7"}
KEYS = st.sampled_from("WBR7")


def piece(rows, base=0, hand="right", strands=(), end="W", hanger=None):
    """A piece from rows given bottom up as (position, sets), a set being a string from the bottom bead up; empty for a gap."""
    drawn = [[Stitch(at + 2 * i, tuple(beads)) for i, beads in enumerate(sets) if beads] for at, sets in rows]
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


@st.composite
def stepped(draw):
    """Any legal brick-stitch piece whose rows may start and end far in or out, and stand in parts."""
    drop, count = draw(st.integers(1, 4)), draw(st.integers(2, 10))
    beads = st.lists(KEYS, min_size=drop, max_size=drop).map("".join)
    base = [(40, 40 + 2 * count - 2)]
    sides = []
    for _ in range(2):
        spans, side = base, []
        for _ in range(draw(st.integers(0, 5))):
            spans = _spans_on(draw, spans)
            if not spans:
                break
            side.append(spans)
        sides.append(side)
    upper, lower = sides
    drawn = [[Stitch(at, tuple(draw(beads))) for first, last in spans for at in range(first, last + 1, 2)]
             for spans in (*lower[::-1], base, *upper)]
    hand = draw(st.sampled_from(["right", "left"]))
    return Piece(LEGEND, drop, hand, piece_rows(drawn, len(lower), hand), hangers=draw(hangers()))


@st.composite
def hangers(draw):
    """Up to three hangers of any kind, each at a place of its own."""
    ats = draw(st.lists(st.sampled_from(["left", "middle", "right"]), unique=True, max_size=3))
    one = st.builds(Hanger, st.sampled_from(["guard", "ring", "loop"]), st.lists(st.sampled_from("WBR"), min_size=1, max_size=9).map(tuple),
                    span=st.floats(0.5, 12), passes=st.integers(1, 5))
    return tuple(replace(hanger, at=at, beads=hanger.beads if hanger.kind == "loop" else ()) for at, hanger in ((at, draw(one)) for at in ats))


def _spans_on(draw, under):
    """First and last places of the parts of a row that hangs on these parts; each has a bridge of one of them, none of two."""
    spans = []
    for k, (first, last) in enumerate(under):
        least = under[k - 1][1] if k else first - 9
        most = under[k + 1][0] if k + 1 < len(under) else last + 9
        for _ in range(draw(st.integers(0, 3))):
            free = [at for at in range(max(least, spans[-1][1] + 3 if spans else least), most + 1) if (at - first) % 2]
            starts = [at for at in free if at < last]
            if first == last or not starts:
                break
            start = draw(st.sampled_from(starts))
            stop = draw(st.sampled_from([at for at in free if at >= max(start, first + 1)]))
            spans.append((start, stop))
    return spans
