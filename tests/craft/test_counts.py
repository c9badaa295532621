"""Tally, size, thread, steps and the summary object."""

from collections import Counter

import pytest
from hypothesis import given, settings
from tests.craft.pieces import piece, triangle, workable

from booklet.craft.events import Section
from booklet.craft.piece import Hanger
from booklet.craft.size import size
from booklet.craft.steps import STEP_IDS, steps
from booklet.craft.summary import summary
from booklet.craft.tally import tally, two_figures, with_spare
from booklet.craft.thread import TAIL, WEAVE_IN, ThreadPlan, thread_use


@given(workable())
def test_tally_is_a_plain_count_of_the_chart(made):
    plain = Counter("".join("".join(s.beads) for r in made.rows for s in r.stitches)
                    + "".join("".join(s.all) for s in made.strands) + "".join("".join(h.beads) for h in made.hangers))
    counted = tally(made, 2)
    assert {line.key: line.piece for line in counted.lines} == {key: plain[key] for key in made.legend}
    assert counted.beads == plain.total() and all(line.total == 2 * line.piece for line in counted.lines)


@pytest.mark.parametrize(("total", "bought"), [(0, 0), (1, 2), (10, 11), (11, 13), (120, 132)])
def test_spare_is_rounded_up(total, bought):
    assert with_spare(total, 10) == bought


def test_least_spare_wins_where_counts_are_small():
    assert (with_spare(4, 10, least=5), with_spare(100, 10, least=5)) == (9, 110)


def test_two_figures():
    assert [two_figures(v) for v in (0, 0.6469, 12.6, 0.098, 0.0964)] == [0.0, 0.65, 13.0, 0.098, 0.096]


def test_size_counts_the_slant_and_the_longest_strand():
    made = piece([(0, ["WW"] * 4), (1, ["WW"] * 4)], strands=["W" * 10, "W" * 5, "W", "W"], end="BBB")
    measured = size(made)
    assert measured.width == pytest.approx(4.5 * 1.6)
    assert measured.body == pytest.approx(4 * 1.3) and measured.fringe == pytest.approx(13 * 1.3)


def test_a_working_length_runs_out_at_a_row():
    made = triangle(9, strands=["W" * 30] * 9, end="BBB")
    body, fringe = thread_use(made, ThreadPlan(length=600.0))
    assert body.lengths == 1 and fringe.lengths == len(fringe.changes) + 1 == 3
    assert all(section.kind == "strand" for section in fringe.changes) and fringe.changes[0] == Section("strand", 4)
    assert fringe.length == pytest.approx(fringe.path + 3 * (TAIL + WEAVE_IN))


@settings(deadline=None)
@given(workable())
def test_every_step_is_known_and_says_where_the_thread_exits(made):
    plan = ThreadPlan()
    told = steps(made, plan, thread_use(made, plan))
    assert [s.id for s in told] == [i for i in STEP_IDS if i in {s.id for s in told}]
    assert all("exits" in step.text for step in told)


def test_summary_has_the_published_shape():
    made = triangle(3, last=2, strands=["WW"] * 3, end="B", hanger=Hanger("guard"))
    found = summary("small", "1.0", "pair", made, tally(made, 2), thread_use(made, ThreadPlan()))
    assert list(found) == ["pattern", "version", "makes", "pieces", "body", "fringe", "beads", "size_mm", "mass_g", "thread_mm"]
    assert found["body"]["rows"][1] == {"row": 2, "direction": "left", "stitches": 2, "pickup": "WW"}
    assert found["beads"]["W"] == {"piece": 11, "total": 22, "to_buy": 25, "grams": 0.12}
    assert found["size_mm"] == {"width": 4.8, "body": 2.6, "length": 6.5}
