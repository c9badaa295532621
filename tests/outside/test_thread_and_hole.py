"""Passes of a thread against the hole of a bead, the needle that goes with a thread, and thread diameters."""

from math import pi

import pytest
from msgspec.structs import replace

from booklet.craft.events import Place
from booklet.craft.hole import comfortable, most_passes
from booklet.craft.needle import path
from booklet.craft.passes import needle_for
from booklet.craft.plan import ThreadPlan
from booklet.source.kinds import shipped_kinds
from booklet.source.threads import shipped_needles, shipped_threads
from tests.craft.pieces import LEGEND, triangle


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


def test_our_limit_is_the_published_one():
    """"Choosing Thread": nylon D goes through 11/0 not more than 3 times. "Seed Bead Sizes, Bead Count and Conversions": the needle
    for 11/0 is a 12. Diameters of thread and needle and the hole are from memory."""
    thread, hole = shipped_threads()["nylon D"].diameter, shipped_kinds()["round 11/0"].hole
    needle = next(needle for needle in shipped_needles() if needle.size == "12")
    assert [comfortable(hole, needle.diameter, [thread] * done) for done in range(5)] == [True, True, True, False, False]


@pytest.mark.parametrize(("bead", "thread", "size"), [
    ("round 8/0", "nylon F", "10"), ("cylinder 10/0", "nylon D", "10"), ("round 11/0", "nylon B", "12"), ("round 15/0", "nylon 00", "15")])
def test_the_published_needle_is_the_one_that_we_name(bead, thread, size):
    """"Seed Bead Sizes, Bead Count and Conversions": bead, needle and thread that go together. A row passed three times at most."""
    legend = {**LEGEND, "W": replace(LEGEND["W"], kind=shipped_kinds()[bead])}
    made = replace(triangle(5, last=5), legend=legend)
    assert needle_for(made, ThreadPlan(thread, kinds=shipped_threads(), needles=shipped_needles())).size == size


def test_letters_of_nylon_from_thin_to_thick():
    """"Bead, Wire and Thread Sizing": 00 < 0 < A < B < D < F."""
    sizes = [shipped_threads()[f"nylon {letter}"].diameter for letter in ("00", "0", "A", "B", "D", "F")]
    assert sizes == sorted(sizes) and len(set(sizes)) == 6


@pytest.mark.parametrize(("kind", "inches"), [("braided 4 lb", 0.006), ("braided 6 lb", 0.008)])
def test_braided_thread_that_is_sold_for_beading(kind, inches):
    """"Essential Guide to Bead Thread Sizes and Types": 0.006 in is sold as 4 lb, 0.008 in as 6 lb."""
    assert shipped_threads()[kind].diameter == pytest.approx(inches * 25.4, abs=0.001)


def test_monofilament_lies_in_the_published_band():
    """"Fishing line strength charts" and "Fish Line Strength Charts": 6 lb is 0.22 to 0.25 mm thick."""
    assert 0.22 <= shipped_threads()["monofilament 6 lb"].diameter <= 0.25


def test_nylon_by_its_mass():
    """Solid nylon 6.6 of 1.14 g/cm3 (from memory): tex 70 ("A-A-52095B") is at least 0.28 mm thick by d = sqrt(4 tex / (1000 pi rho))."""
    assert (4 * 70 / (1000 * pi * 1.14)) ** 0.5 == pytest.approx(0.28, abs=0.005)
    assert shipped_threads()["nylon D"].diameter == pytest.approx(0.28, rel=0.15)
