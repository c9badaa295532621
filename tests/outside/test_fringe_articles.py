"""Counts of fringe that published articles state, from our places and our needle's path."""

import pytest
from msgspec.structs import replace
from tests.craft.pieces import triangle

from booklet.craft.events import Place, Under
from booklet.craft.needle import path
from booklet.craft.places import places
from booklet.craft.strand import Strand


def test_a_base_of_six_has_a_piece_of_fringe_on_each_of_its_five_bridges():
    """"Contemporary Brick Stitch With Fringe Earrings": a base of 6 gives 5 bridges, one piece of fringe on each."""
    made = replace(triangle(6), hang="bridges", strands=tuple(Strand(number, ("W",) * 10, ("B",)) for number in range(1, 6)))
    assert len(places(made)) == 5
    assert sorted({event.left for event in path(made).fringe if isinstance(event, Under)}) == [0, 1, 2, 3, 4]


@pytest.mark.parametrize(("beads", "turn"), [(20, 1), (20, 3), (12, 3)])
def test_passes_of_a_strand(beads, turn):
    """"Creating Beaded Fringe through Stringing Techniques": back through all but the last bead or beads, so 2(n - t) + t passes."""
    made = triangle(2, strands=["W" * (beads - turn)] * 2, end="B" * turn)
    passes = path(made).passes()
    assert sum(passes[Place("strand", 1, index)] for index in range(beads)) == 2 * (beads - turn) + turn
