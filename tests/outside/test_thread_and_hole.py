"""Passes of a thread against the hole of a bead."""

import pytest

from booklet.craft.events import Place
from booklet.craft.hole import most_passes
from booklet.craft.needle import path
from tests.craft.pieces import triangle


@pytest.mark.parametrize(("hole", "thread", "passes"), [
    (0.6, 0.20, 7), (0.6, 0.25, 3), (0.6, 0.30, 2), (0.7, 0.20, 8), (0.7, 0.25, 5), (0.7, 0.30, 3),
    (0.8, 0.20, 11), (0.8, 0.25, 7), (0.8, 0.30, 4), (1.0, 0.25, 11), (1.0, 0.30, 8),
])
def test_passes_by_circle_packing(hole, thread, passes):
    """Arithmetic on the published ratios of "Circle packing in a circle"."""
    assert most_passes(hole, thread) == passes


def test_the_bound_is_not_below_published_practice():
    """"Choosing Thread": not more than 3 passes of nylon D through 11/0. Nylon D 0.30 mm and the hole 0.8 mm are from memory."""
    assert most_passes(0.8, 0.30) >= 3


def test_passes_in_a_strand():
    """Twice through all but the end beads, once through those: 2(n - t) + t ("Creating Beaded Fringe through Stringing Techniques")."""
    passes = path(triangle(2, last=2, strands=["W" * 12] * 2, end="BBB")).passes()
    strand = [count for place, count in passes.items() if place[:2] == ("strand", 1)]
    assert sum(strand) == 2 * (15 - 3) + 3 and passes[Place("strand", 1, 14)] == 1
