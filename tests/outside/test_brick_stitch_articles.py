"""Sums and growth that published brick-stitch articles state, rebuilt from our rows."""

import pytest
from hypothesis import given
from tests.craft.pieces import stepped

from booklet.craft.beads import Bead, BeadKind
from booklet.craft.events import PickUp, Under, row_section
from booklet.craft.needle import path
from booklet.craft.piece import Piece, Stitch, piece_rows
from booklet.craft.stitches import faults
from booklet.craft.thread import TAIL, ThreadPlan, thread_use

KIND = BeadKind("round 11/0", "round", 2.2, 1.49, 0.8)
LEGEND = {"W": Bead("W", "white", "#ffffff", "matte", KIND)}


def shape(widths, lefts, base=0, drop=1):
    drawn = [[Stitch(left + 2 * i, ("W",) * drop) for i in range(width)] for width, left in zip(widths, lefts)]
    return Piece(LEGEND, drop, "right", piece_rows(drawn, base, "right"))


def triangle(base, last, drop=1):
    return shape(range(base, last - 1, -1), range(base - last + 1), drop=drop)


def beads(made):
    return len(path(made).passes())


@pytest.mark.parametrize(("base", "total"), [(6, 21), (7, 28), (8, 36), (9, 45), (11, 66)])
def test_triangular_numbers(base, total):
    """Base n down to 1 has n(n+1)/2 beads: arithmetic; the base-7 piece with rows 7, 6, 5, 4 ... is "Cheyenne Brick Stitch"."""
    assert beads(triangle(base, 1)) == total and beads(triangle(base, 2)) == total - 1
    assert beads(triangle(base, 1, drop=2)) == 2 * total   # "Two Drop Brick Stitch": two beads a stitch


@pytest.mark.parametrize(("widest", "total"), [(7, 49), (9, 81), (11, 121), (23, 529)])
def test_a_diamond_has_the_square_of_its_widest_row(widest, total):
    """Triangular sums both ways: n squared (arithmetic)."""
    widths = [*range(1, widest), *range(widest, 0, -1)]
    assert beads(shape(widths, [widest - w for w in widths], base=widest - 1)) == total


def test_increase_on_the_first_and_last_bridge():
    """"Brick Stitch Increases and Decreases": an increase starts on the first bridge, two stitches share the last."""
    made = shape([6, 7], [1, 0])
    bridges = [e.left for e in path(made).body if isinstance(e, Under)]
    assert not faults(made) and bridges == [4, 3, 2, 1, 0, 0]   # row 2 runs right to left


def test_decrease_skips_a_bridge():
    """The same article: a decreasing row starts over a skipped bridge; a row under n beads has n-1 bridges."""
    bridges = [e.left for e in path(shape([6, 5], [0, 1])).body if isinstance(e, Under)]
    assert bridges == [3, 2, 1, 0]


def taken(made, row):
    """Stitches in each pick-up of a row, and the bridges of the row under it that it hangs on."""
    events = [event for event in path(made).body if event.section == row_section(row)]
    own = made.under(row)
    bridges = {event.left for event in events if isinstance(event, Under) and event.row == own.number}
    return [len(event.places) // made.drop for event in events if isinstance(event, PickUp)], bridges


@given(stepped())
def test_every_row_starts_with_two_stitches_then_one_at_a_time(made):
    """"Brick Stitch Instructions", "Independence Earrings", "Cheyenne Brick Stitch"; in ladder stitch too ("How do you start
    a brick stitch"). "Two Drop Brick Stitch": two beads a stitch, so such a row starts with four."""
    for row in made.rows[1:]:
        picked, _ = taken(made, row)
        assert picked == ([2] + [1] * (len(row.stitches) - 2) if len(row.stitches) > 1 else [1])


@given(stepped())
def test_a_stitch_needs_a_bridge_or_a_ladder(made):
    """From the rules of "Brick Stitch Increases and Decreases", by arithmetic: the stitches of a row are its bridges, one more for
    a start of two, one more that shares the last bridge; one that reaches more than half a stitch past the row under it is a ladder add."""
    for row in made.rows[1:]:
        under, (_, bridges) = made.under(row), taken(made, row)
        hung = sum(under.first - 1 <= stitch.at <= under.last + 1 for stitch in row.stitches)
        ends_outside = not under.first < row.worked[-1].at < under.last
        assert hung == len(bridges) + (hung > 1) + (hung > 2 and ends_outside)


def test_a_published_piece_fits_its_published_thread():
    """"Cheyenne Brick Stitch": base 7, each row one less, 18 inches of thread with a tail of 4 in and 6 in to spare."""
    (use,) = thread_use(triangle(7, 1), ThreadPlan(length=457.2))
    assert use.lengths == 1 and use.path <= 457.2 - (4 + 6) * 25.4 and TAIL >= 4 * 25.4
