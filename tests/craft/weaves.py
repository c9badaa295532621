"""Random and hand-made pieces of peyote, square stitch and loom work for the tests of the craft."""

from hypothesis import strategies as st
from msgspec.structs import replace
from tests.craft import fringes
from tests.craft.pieces import KEYS, LEGEND

from booklet.craft.piece import Hanger, Piece, Stitch, Strand
from booklet.craft.stitches import worked_rows


def woven(stitch, rows, hand="right", strands=(), end="W", hangers=()):
    """A piece from rows given bottom up as (position, sets), a set being a string from the left."""
    drawn = [[Stitch(at + 2 * i, tuple(beads)) for i, beads in enumerate(sets)] for at, sets in rows]
    lines = tuple(Strand(n, tuple(beads), tuple(end)) for n, beads in enumerate(strands, 1))
    return Piece(LEGEND, len(rows[0][1][0]), hand, worked_rows(stitch, drawn, 0, hand), lines, tuple(hangers), stitch)


@st.composite
def _finished(draw, stitch, rows, fringe):
    """With plain strands everywhere, or strands of any kind at some places, or none; with no hanger, one, or one at either edge."""
    width, kind = len(rows[0][1]), draw(st.sampled_from(["none", "plain", "any"] if fringe else ["none"]))
    plain = [draw(st.lists(KEYS, max_size=12)) for _ in range(width)] if kind == "plain" else []
    hangers = [[], [Hanger("guard")], [Hanger("loop", tuple("WBWBW"))]]
    if len(rows[-1][1]) > 3:
        hangers.append([Hanger("loop", tuple("WBW"), at="left"), Hanger("ring", passes=4, at="right")])
    made = woven(stitch, rows, draw(st.sampled_from(["right", "left"])), plain, draw(st.sampled_from(["W", "BBB"])), draw(st.sampled_from(hangers)))
    if kind != "any":
        return made
    taken = sorted(draw(st.sets(st.integers(1, width), min_size=1)))
    return replace(made, strands=tuple(draw(fringes.strands(number, width)) for number in taken), charms={"ring": 4.0, "star charm": 9.0})


@st.composite
def peyote(draw, drops=(1, 2, 3, 4), fringe=True):
    """Flat peyote with any number of columns, even or odd, begun at any corner that can be begun at."""
    drop, columns, count = draw(st.sampled_from(drops)), draw(st.integers(2, 10)), draw(st.integers(4, 9))
    first = 0 if columns % 2 else draw(st.integers(0, 1))   # where row 1 has its leftmost stitch
    beads = st.lists(KEYS, min_size=drop, max_size=drop).map("".join)
    rows = []
    for number in range(count):
        left = (first + number) % 2
        rows.append((left, [draw(beads) for _ in range(left, columns, 2)]))
    return draw(_finished("peyote", rows, fringe))


@st.composite
def square(draw, fringe=True):
    """Square stitch: rows may start and end further in, and end further out where the next row covers what is added."""
    width = draw(st.integers(1, 9))
    spans, runs_right = [(0, width), (0, width)], True   # first column and the one after the last; direction of the last row
    hand = "right"
    runs_right, owed = False, 0                          # row 2 runs to the left
    for _ in range(draw(st.integers(0, 7))):
        runs_right, (left, right) = not runs_right, spans[-1]
        length = right - left
        start = 0 if owed else draw(st.integers(0, max(0, length - 1)))
        new = [left + start, right] if runs_right else [left, right - start]
        room = new[1] - new[0] - max(1, owed)
        end = draw(st.integers(-max(0, room), 3))
        new[1 if runs_right else 0] += end if runs_right else -end
        owed = max(0, end)
        spans.append(tuple(new))
    if owed:                                             # what was added last is covered
        spans.append(spans[-1])
    rows = [(2 * left, [draw(KEYS) for _ in range(left, right)]) for left, right in spans]
    made = draw(_finished("square", rows, fringe))
    return made if made.hand == hand else draw(st.just(_mirrored(made)))


def _mirrored(made):
    """The same piece begun from the other side: left and right exchanged, so that it stays workable."""
    rows = [(-row.stitches[-1].at, ["".join(s.beads) for s in row.stitches[::-1]]) for row in made.rows]
    return replace(woven(made.stitch, rows, made.hand, hangers=made.hangers), strands=made.strands, charms=made.charms)


@st.composite
def loom(draw, fringe=True):
    """Loom work: any row that shares a column with the row under it."""
    spans = [(0, draw(st.integers(1, 9)))]
    for _ in range(draw(st.integers(0, 7))):
        left, right = spans[-1]
        new = draw(st.integers(left - 3, right - 1))
        spans.append((new, draw(st.integers(max(new, left) + 1, right + 3))))
    return draw(_finished("loom", [(2 * left, [draw(KEYS) for _ in range(left, right)]) for left, right in spans], fringe))


def any_weave(fringe=True):
    """A piece in one of the three."""
    return st.one_of(peyote(fringe=fringe), square(fringe=fringe), loom(fringe=fringe))
