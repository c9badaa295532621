"""Charts in parts: every bead is on some part, neighbours share rows, and no part is larger than its page."""

import re

from hypothesis import given
from hypothesis import strategies as st

from booklet.draw.tiles import Margins, spans, tiles


@given(st.integers(4, 80), st.floats(3, 60))
def test_spans_cover_all_steps_and_overlap(steps, room):
    edges = list(range(steps + 1))
    parts = spans(edges, room)
    assert parts[0][0] == 0 and parts[-1][1] == steps
    assert all(start < stop <= start + room + 1e-6 for start, stop in parts)
    if room >= 4:
        assert all(after[0] <= before[1] - 2 for before, after in zip(parts, parts[1:]))


def test_a_part_with_its_repeated_numbers_fits_the_page():
    margins = Margins(6, 5)
    for tile in tiles(range(0, 100, 4), range(0, 200, 5), 50, 70, margins):
        assert tile.right - tile.left + margins.side * (tile.cut_left + tile.cut_right) <= 50
        assert tile.bottom - tile.top + margins.top * tile.cut_top <= 70


def test_parts_of_a_chart_name_all_rows():
    from booklet.draw.chart import chart_parts
    from booklet.source.workspace import load
    from tests.bind.copies import TINY

    piece = load(TINY).patterns["morning-cloud"].piece
    assert chart_parts(piece, 2.4, 200, 200) == ()
    parts = chart_parts(piece, 12.0, 70, 90)
    assert len(parts) > 1 and {number for part in parts for number in part.numbers} == {row.number for row in piece.rows}
    for part in parts:
        width, height = (float(re.search(rf'{side}="([0-9.]+)mm"', part.svg)[1]) for side in ("width", "height"))
        assert width <= 70.1 and height <= 90.1
        assert "Where part" in part.map
