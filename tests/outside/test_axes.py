"""Which way a bead is measured: across a row by its diameter, up a body and down a strand by its length."""

import pytest

from booklet.craft.beads import Bead, BeadKind
from booklet.craft.piece import Piece, Stitch, piece_rows
from booklet.craft.size import size

# Diameter from "Seed Bead Size Guide" (2.2) and "Bead Sizes" (2.3 for 10/0); length 25.4 / 17 beads an inch from
# "How many seed beads are in that tube".
ROUND_11 = BeadKind("round 11/0", "round", 2.2, 25.4 / 17, 0.8)


def body(widths, lefts):
    drawn = [[Stitch(left + 2 * i, ("W",)) for i in range(width)] for width, left in zip(widths, lefts)]
    return Piece({"W": Bead("W", "white", "#ffffff", "matte", ROUND_11)}, 1, "right", piece_rows(drawn, 0, "right"))


def test_eleven_beads_are_about_an_inch_wide():
    """"Diamond shaped earrings": a width of 11 beads is about 2.5 cm in 10/0 or 11/0."""
    assert size(body([11], [0])).width == pytest.approx(25, abs=1.5)


def test_nineteen_rows_are_no_higher_than_published():
    """"Christmas Tree Earrings": at least 19 rows of 11/0 are about 1.25 in high; by diameter they would be too high."""
    rows = size(body([20 - i % 2 for i in range(19)], [i % 2 for i in range(19)])).body
    assert rows <= 1.25 * 25.4 < 19 * ROUND_11.diameter


def test_beads_an_inch_are_counted_along_the_hole():
    """For every published size, beads an inch times diameter is more than an inch, so the count runs along the hole."""
    for diameter, an_inch in ((1.5, 23), (2.2, 17), (3.0, 11), (4.0, 8)):
        assert an_inch * diameter > 25.4
