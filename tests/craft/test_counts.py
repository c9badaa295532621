"""Tally, size, thread, steps and the summary object."""

from collections import Counter

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.craft.pieces import piece, triangle, workable

from booklet.craft.events import Section
from booklet.craft.layout import layout
from booklet.craft.needle import path
from booklet.craft.pair import mirrored
from booklet.craft.piece import Hanger
from booklet.craft.plan import Needle, ThreadKind
from booklet.craft.size import size
from booklet.craft.steps import STEP_IDS, steps
from booklet.craft.summary import summary
from booklet.craft.tally import tally, two_figures, with_spare
from booklet.craft.thread import TAIL, WEAVE_IN, ThreadPlan, section_lengths, thread_totals, thread_use


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
    assert [after.number + 1 for after in fringe.after] == [section.number for section in fringe.changes] and fringe.too_long == ()


@settings(deadline=None)
@given(workable(), st.sampled_from([420.0, 500.0, 700.0, 1400.0]))
def test_a_length_is_never_longer_than_it_may_be(made, length):
    """Worked apart from the planner: every stretch between two changes, ends included, is one working length."""
    needle, places = path(made), layout(made)
    for use, events in zip(thread_use(made, ThreadPlan(length=length)), (needle.body, needle.fringe)):
        stretches = [0.0]
        for section, need in section_lengths(events, places, made).items():
            stretches += [0.0] if section in use.changes else []
            stretches[-1] += need
        assert use.too_long or (len(stretches) == use.lengths and all(s + TAIL + WEAVE_IN <= length + 1e-6 for s in stretches))
        assert len(use.after) == len(use.changes) and not any(section.kind == "lower" for section in use.after)
        assert use.path == pytest.approx(sum(stretches))


def test_the_way_to_the_lower_rows_is_worked_with_their_thread():
    made = piece([(1, ["W"] * 8), (0, ["W"] * 9), (1, ["W"] * 8)], base=1)
    (use,) = thread_use(made, ThreadPlan(length=TAIL + WEAVE_IN + 40))
    assert use.changes == (Section("row", 2), Section("lower", 1)) and use.after == (Section("row", 1), Section("row", 2))


def test_a_strand_that_no_length_reaches_through():
    made = triangle(3, last=3, strands=["W" * 80] * 3)
    body, fringe = thread_use(made, ThreadPlan(length=450.0))
    assert body.too_long == () and [section.number for section in fringe.too_long] == [1, 2, 3] and fringe.lengths >= 6


KINDS = {"nylon": ThreadKind("nylon", 0.2, spool=10_000.0), "braided": ThreadKind("braided", 0.2)}


def test_one_line_for_each_kind_of_thread():
    made = triangle(9, strands=["W" * 30] * 9, end="BBB")
    plan = ThreadPlan("nylon", "nylon", 600.0, KINDS)
    body, fringe = uses = thread_use(made, plan)
    (total,) = thread_totals(uses, 2, plan)
    assert (total.kind, total.parts, total.lengths) == ("nylon", ("body", "fringe"), 2 * (body.lengths + fringe.lengths))
    assert total.length == pytest.approx(2 * (body.length + fringe.length)) and total.spools == 1
    assert [t.spools for t in thread_totals(thread_use(made, ThreadPlan("braided", "unheard of")), 2, ThreadPlan("braided", "unheard of"))] == [None, None]


@pytest.mark.parametrize(("length", "pieces", "spools"), [(600.0, 4, 1), (600.0, 5, 2), (4000.0, 1, 1), (4000.0, 2, 2), (20_000.0, 2, 8)])
def test_working_lengths_are_cut_whole_from_a_spool(length, pieces, spools):
    """10 m hold 16 lengths of 0.6 m and 2 of 4 m; 20 m are two spools each."""
    made = triangle(9, strands=["W" * 30] * 9, end="BBB")
    plan = ThreadPlan("nylon", "nylon", length, KINDS)
    (total,) = thread_totals(thread_use(made, plan), pieces, plan)
    assert (total.lengths, total.spools) == (pieces * (4 if length == 600.0 else 2), spools)


def test_thread_changes_are_told_where_they_fall():
    made = triangle(9, strands=["W" * 30] * 9, end="BBB", hanger=Hanger("guard"))
    plan = ThreadPlan(length=350.0)
    told = {step.id: step.text for step in steps(made, plan, thread_use(made, plan), ear_wire=True)}
    assert "after row 1, before row 2" in told["thread-change"] and "strand" not in told["thread-change"]
    assert told["fringe-thread-change"].startswith("Change the thread after strand ")
    assert list(told).index("fringe-thread-change") == list(told).index("fringe") + 1


@pytest.mark.parametrize(("material", "stretched"), [("nylon", True), ("", True), ("gel-spun polyethylene", False)])
def test_only_nylon_is_stretched(material, stretched):
    made, plan = triangle(3, last=3, strands=["W"] * 3), ThreadPlan("any", "any", kinds={"any": ThreadKind("any", 0.2, material)})
    (text,) = [step.text for step in steps(made, plan, thread_use(made, plan)) if step.id == "fringe-start"]
    assert ("stretch nylon" in text) is stretched


def test_two_pliers_only_where_there_is_an_ear_wire():
    hung, bare = triangle(4, hanger=Hanger("guard")), triangle(4)
    plan = ThreadPlan()
    told = steps(hung, plan, thread_use(hung, plan), ear_wire=True)[-1]
    assert told.id == "ear-wire" and "sideways" in told.text and "two pliers" in told.text and "thread guard" in told.text
    assert not any("pliers" in step.text for step in steps(hung, plan, thread_use(hung, plan)))
    assert not any("pliers" in step.text for step in steps(bare, plan, thread_use(bare, plan), ear_wire=True))


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


def test_summary_of_threads_and_of_a_second_piece_comes_after_it():
    made = triangle(3, last=2, strands=["W", "WW", "B"], end="B")
    plan = ThreadPlan("nylon", "nylon", 1400.0, KINDS, (Needle("12", 0.38, 0.21, 0.3),))
    uses = thread_use(made, plan)
    found = summary("small", "1.0", "pair", made, tally(made, 2), uses, plan, mirrored(made))
    assert list(found)[10:] == ["threads", "needle", "second"] and found["needle"] == "12"
    total = round(2 * sum(use.length for use in uses))
    assert found["threads"] == [{"kind": "nylon", "parts": ["body", "fringe"], "diameter_mm": 0.2, "total_mm": total, "working_lengths": 4, "spools": 1}]
    assert found["second"]["strands"][0] == {"strand": 1, "beads": "B", "end": "B"} and len(found["second"]["rows"]) == 2
