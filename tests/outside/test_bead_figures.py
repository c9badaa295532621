"""Mass, size and holes of beads against published figures and handbook density."""

from math import pi

import pytest

from booklet.craft.beads import GLASS_DENSITY, BeadKind
from booklet.craft.size import MM_PER_INCH, inches


@pytest.mark.parametrize(("kind", "per_gram"), [
    # Diameters and strung lengths inside the ranges of "Seed Bead Size Guide" and "How many seed beads are in that tube";
    # counts per gram from the latter. The holes of 11/0 and 6/0 are from memory, so this is a band of 30 %.
    (BeadKind("round 11/0", "round", 2.2, 1.49, 0.8), 105),
    (BeadKind("round 8/0", "round", 3.0, 2.31, 1.0), 34.7),
    (BeadKind("round 6/0", "round", 4.0, 3.18, 1.4), 15),
    (BeadKind("round 15/0", "round", 1.5, 1.10, 0.7), 271.5),
])
def test_mass_from_glass_density_is_near_the_published_count(kind, per_gram):
    assert 1000 / kind.mass == pytest.approx(per_gram, rel=0.30)


def test_density_lies_in_the_handbook_band():
    """Handbook table "Density of various solids", glass 2.4-2.8 g/cm3 (abridged CRC Handbook, section 15-39)."""
    assert 2.4 <= GLASS_DENSITY <= 2.8


def test_cylinder_by_the_hollow_cylinder_formula():
    """1.6 x 1.3 mm ("Seed Bead Size Guide"); the hole of 0.8 mm is from memory; 204 a gram by arithmetic."""
    kind = BeadKind("cylinder 11/0", "cylinder", 1.6, 1.3, 0.8)
    assert kind.volume == pytest.approx(pi / 4 * (1.6**2 - 0.8**2) * 1.3)
    assert 1000 / kind.mass == pytest.approx(204, abs=0.5)


@pytest.mark.parametrize("claimed", [1700, 2000])
def test_an_impossible_published_count_is_not_ours(claimed):
    """"Beads per Gram: Seed Beads" prints 1,700-2,000 a gram for 15/0, which leaves too little glass for a bead."""
    assert 1000 / BeadKind("round 15/0", "round", 1.5, 1.10, 0.7).mass < claimed / 4


def test_the_inch():
    assert MM_PER_INCH == 25.4 and inches(203.2) == pytest.approx(8)
