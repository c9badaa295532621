"""The size that fits a box is the one that trying every size finds, whatever way a picture grows."""

import pytest

from booklet.draw.fit import STEP, largest

GROWTHS = {   # width and height at a size
    "evenly": lambda bead: (12 * bead, 20 * bead), "with a margin": lambda bead: (14 + 9 * bead, 3 + 11 * bead),
    "in jumps": lambda bead: (10 * (bead // 0.7) + bead, 25 * bead), "hardly, then fast": lambda bead: (1 + bead ** 4, 20.0), "not at all": lambda bead: (30.0, 30.0)}


@pytest.mark.parametrize("size_at", GROWTHS.values(), ids=GROWTHS)
def test_the_size_found_is_the_largest_that_fits(size_at):
    for width, height, most in ((110, 170, 8.0), (60, 47, 6.0), (31, 31, 3.0), (29, 60, 6.0), (2, 2, 6.0)):
        sizes = [round(step * STEP, 2) for step in range(1, round(most / STEP) + 1)]
        fitting = [bead for bead in sizes if size_at(bead)[0] <= width and size_at(bead)[1] <= height]
        fit = largest(size_at, width, height, most)
        assert fit.bead == max(fitting, default=0.0)
        assert (fit.width, fit.height) == (size_at(fit.bead) if fitting else (0.0, 0.0))


def test_a_picture_that_grows_evenly_is_measured_a_few_times():
    asked = []
    largest(lambda bead: asked.append(bead) or (14 + 9 * bead, 3 + 11 * bead), 60, 90, 8.0)
    assert len(asked) <= 5
