"""The thread kinds and needles that are shipped."""

import re

from booklet.craft.plan import ThreadPlan
from booklet.source.threads import shipped_needles, shipped_threads


def test_every_kind_is_whole_and_says_where_its_figures_come_from():
    for name, kind in shipped_threads().items():
        assert kind.name == name and 0.05 < kind.diameter < 0.5 and kind.material and kind.spool > 10_000
        assert kind.source == "all from memory" or re.fullmatch(r"diameter.* published: .+; spool from memory", kind.source)


def test_the_threads_of_a_maker_who_says_nothing_are_known():
    plan = ThreadPlan(kinds=shipped_threads())
    assert plan.kind("body") and plan.kind("fringe")


def test_a_strength_in_pounds_does_not_tell_a_diameter():
    kinds = shipped_threads()
    assert kinds["braided 6 lb"].diameter != kinds["monofilament 6 lb"].diameter


def test_needles_get_thinner_and_each_takes_its_thread():
    needles = shipped_needles()
    assert [needle.size for needle in needles] == ["10", "12", "13", "15"]
    assert all(thick.diameter > thin.diameter and thick.eye > thin.eye for thick, thin in zip(needles, needles[1:]))
    assert all(needle.thread <= needle.eye < needle.diameter and "from memory" in needle.source for needle in needles)
