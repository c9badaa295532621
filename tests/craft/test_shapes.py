"""Outlines and fringe lengths to start a design from."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from booklet.craft.shapes import FRINGES, LEAST_STRAND, SHAPES, ImpossibleShape, outline, strand_lengths


def counts(name, base, rows=None):
    """Stitches of each row, bottom up."""
    return [count for _, count in outline(name, base, rows).rows]


@pytest.mark.parametrize(("name", "base", "rows", "expected"), [
    ("triangle", 5, None, [5, 4, 3, 2]),
    ("triangle", 5, 5, [5, 4, 3, 2, 1]),
    ("trapezoid", 7, 3, [7, 6, 5]),
    ("diamond", 4, None, [1, 2, 3, 4, 3, 2]),
    ("diamond", 4, 7, [1, 2, 3, 4, 3, 2, 1]),
    ("diamond", 4, 3, [3, 4, 3]),
    ("hexagon", 3, None, [3, 4, 5, 4, 3]),
    ("hexagon", 3, 3, [3, 4, 3]),
    ("rectangle", 4, 4, [4, 3, 4, 3]),
    ("teardrop", 4, 7, [4, 5, 6, 5, 4, 3, 2]),
    ("teardrop", 3, 12, [3, 4, 5, 6, 7, 6, 7, 6, 5, 4, 3, 2]),
    ("teardrop", 3, 5, [3, 4, 5, 4, 3]),
])
def test_rows(name, base, rows, expected):
    assert counts(name, base, rows) == expected


@pytest.mark.parametrize("name", SHAPES)
def test_what_is_taken_when_nothing_is_asked_for(name):
    shape = SHAPES[name]
    for base in range(shape.least, 30):
        assert counts(name, base) and outline(name, base).rows[outline(name, base).base][1] == base
    assert 2 <= counts(name, shape.base)[-1]


@given(st.sampled_from(list(SHAPES)), st.integers(2, 40), st.integers(2, 90))
def test_every_edge_moves_by_half_a_stitch_a_row(name, base, rows):
    try:
        drawn = outline(name, base, rows)
    except ImpossibleShape:
        return
    assert len(drawn.rows) == rows and drawn.rows[drawn.base][1] == base
    assert min(at for at, _ in drawn.rows) == 0 and min(count for _, count in drawn.rows) >= 1
    for (at, count), (next_at, next_count) in zip(drawn.rows, drawn.rows[1:]):
        assert abs(next_at - at) == 1 and next_count - count == at - next_at
    assert (drawn.widest == base) == (name not in ("hexagon", "teardrop"))


def test_a_diamond_that_comes_to_two_points_has_as_many_beads_as_its_width_squared():
    for width in range(2, 20):
        assert sum(counts("diamond", width, 2 * width - 1)) == width ** 2


@pytest.mark.parametrize(("name", "base", "rows", "what", "cure"), [
    ("triangle", 1, None, "a triangle needs a base row of 2 stitches or more; found 1", "take --base 2"),
    ("triangle", 7, 9, "a triangle on 7 stitches has 7 rows at most, the last of one stitch; found 9", "take --rows 7, or --base 9"),
    ("triangle", 7, 4, "a triangle on 7 stitches has 5 to 7 rows; found 4", "take --rows 5, or --shape trapezoid for a broad top"),
    ("trapezoid", 7, 7, "a trapezoid on 7 stitches has 2 to 6 rows, so that two stitches or more are left at the top; found 7", "take --rows 6"),
    ("diamond", 5, 10, "a diamond of 5 stitches across has 3 to 9 rows; found 10", "take --rows 9"),
    ("hexagon", 5, 4, "a hexagon has an odd number of rows, 3 or more, so that it closes as it opens; found 4", "take --rows 5"),
    ("rectangle", 5, 1, "a rectangle has 2 rows or more; found 1", "take --rows 2"),
    ("teardrop", 5, 5, "a teardrop on 5 stitches has 6 rows or more, to widen and to narrow again; found 5", "take --rows 6"),
])
def test_error_no_such_shape(name, base, rows, what, cure):
    with pytest.raises(ImpossibleShape) as error:
        outline(name, base, rows)
    assert (error.value.what, error.value.cure) == (what, cure)


@pytest.mark.parametrize(("fringe", "strands", "longest", "expected"), [
    ("straight", 3, 20, (20, 20, 20)),
    ("v", 5, 20, (12, 16, 20, 16, 12)),
    ("v", 4, 20, (16, 20, 20, 16)),
    ("slant", 4, 20, (20, 16, 12, 8)),
    ("curve", 5, 20, (8, 16, 20, 16, 8)),
    ("v", 2, 20, (20, 20)),
    ("curve", 1, 20, (20,)),
])
def test_strand_lengths(fringe, strands, longest, expected):
    assert strand_lengths(fringe, strands, longest) == expected


@given(st.sampled_from([name for name in FRINGES if name != "none"]), st.integers(1, 60), st.integers(LEAST_STRAND, 200))
def test_a_fringe_has_its_longest_strand_and_none_that_is_too_short(fringe, strands, longest):
    try:
        lengths = strand_lengths(fringe, strands, longest)
    except ImpossibleShape as error:
        assert fringe in ("v", "slant") and f"needs {longest + 1}" not in error.what and longest - strands < LEAST_STRAND
        return
    assert len(lengths) == strands and max(lengths) == longest and min(lengths) >= LEAST_STRAND
    assert lengths == (tuple(sorted(lengths, reverse=True)) if fringe == "slant" else lengths[::-1])


def test_error_strands_too_short():
    with pytest.raises(ImpossibleShape) as error:
        strand_lengths("v", 15, 12)
    assert (error.value.what, error.value.cure) == (
        "a v fringe of 15 strands needs 13 beads or more in the longest; found 12", "take --longest 13, or --fringe curve")
    with pytest.raises(ImpossibleShape, match="the longest strand needs 6 beads or more; found 5"):
        strand_lengths("straight", 3, 5)
