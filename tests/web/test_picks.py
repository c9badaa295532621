"""The beads of a row in the order of picking up, as the page shows them big: all of them, and none twice."""

from collections import Counter

from hypothesis import given, settings
from tests.craft.pieces import workable
from tests.craft.weaves import any_weave

from booklet.bind.web.article import picks
from booklet.craft.stitches import stitch_of


@settings(max_examples=40)
@given(workable() | any_weave())
def test_every_line_of_words_has_all_its_beads(piece):
    found = picks(piece)
    for rows in stitch_of(piece).told_together(piece):
        told = Counter()
        for run in found["row", rows[0].name].split():
            told[run[-1]] += int(run[:-1])
        assert told == Counter(key for row in rows for stitch in row.stitches for key in stitch.beads)
