"""A pair whose pieces mirror each other, printed: turned over, alike, or with words of its own for the second piece."""

import json
import re

import pytest
from click.testing import CliRunner

from booklet.bind.book import shared
from booklet.bind.context import shown
from booklet.bind.edition import edition
from booklet.bind.geometry import print_room, web_room
from booklet.bind.html import WEB, Medium, Setter, paper_setter
from booklet.bind.replayed import check_words, printed_lines
from booklet.bind.web.article import articles
from booklet.cli import main
from booklet.craft.replay import differences
from booklet.errors import FindingsError
from booklet.source.workspace import load
from tests.bind.copies import TINY, copy_of


def pattern_with(folder, fields):
    root = copy_of(TINY, folder / "book")
    path = root / "patterns" / "morning-cloud.yaml"
    path.write_text(path.read_text("utf-8").replace("makes: pair\n", f"makes: pair\n{fields}"), "utf-8")
    workspace = load(root)
    assert not workspace.findings
    return root, workspace, workspace.patterns["morning-cloud"]


def section(workspace, pattern):
    on = edition(workspace.book)
    setter = paper_setter(workspace.root, on, book=workspace.book)
    return setter.section(pattern, shown(pattern, print_room(on), 1.0))


@pytest.fixture(scope="module")
def fronted(tmp_path_factory):
    return pattern_with(tmp_path_factory.mktemp("fronted"), "mirror: true\nfront: true\n")


def test_the_words_of_the_second_piece_are_printed_and_rebuild_the_mirrored_chart(fronted):
    _, workspace, pattern = fronted
    html = section(workspace, pattern)
    rows, strands = printed_lines(html, second=True)
    assert (len(rows), len(strands)) == (3, 6) and differences(pattern.second, rows, strands) == ()
    assert differences(pattern.piece, rows, strands) != () and printed_lines(html) != (rows, strands)
    assert "The piece has a front" in html and html.count("Second piece: ") >= 4


def test_error_a_wrong_word_of_the_second_piece_stops_the_build(fronted):
    _, workspace, pattern = fronted
    html = section(workspace, pattern)
    before, mark, after = html.rpartition('class="strand-words second"')
    with pytest.raises(FindingsError) as caught:
        check_words(pattern, before + mark + re.sub("6W", "5W", after, count=1))
    assert "second piece: " in caught.value.findings[0].message


def test_only_steps_that_differ_are_told_again(fronted):
    _, workspace, pattern = fronted
    html = section(workspace, pattern)
    told = html.partition("Second piece: steps that differ")[2]
    first = shown(pattern, print_room(edition(workspace.book)), 1.0)
    assert {step.id for step in first.second.steps} < {step.id for step in first.steps}
    assert all(f"<h3>{step.title}</h3>" in told for step in first.second.steps)


def test_every_tick_box_of_the_web_page_has_a_name_of_its_own(fronted):
    _, workspace, pattern = fronted
    setter = Setter(workspace.root, Medium(WEB, web_room()), **shared(workspace))
    html = articles(setter, pattern, web_room(), 1.0, "Tiny")[0].html
    names = re.findall(r'<input type="checkbox"[^>]* aria-label="([^"]+)"', html)
    assert len(names) == len(set(names)) == 18 and {"Row 1 done", "Row 1 done, second piece", "Strand 6 done, second piece"} <= set(names)


def test_flat_work_is_turned_over(tmp_path):
    _, workspace, pattern = pattern_with(tmp_path, "mirror: true\n")
    html = section(workspace, pattern)
    assert "turning is enough" in html and printed_lines(html, second=True) == ([], [])


def test_the_count_tells_the_second_piece_too(fronted):
    root, _, pattern = fronted
    told = CliRunner().invoke(main, ["-C", str(root), "tally", "morning-cloud"]).output
    assert "The second piece" in told and told.count("Strand 1, ") == 2 and "needle    size 12" in told
    facts = json.loads(CliRunner().invoke(main, ["-C", str(root), "tally", "morning-cloud", "--json"]).stdout)
    assert [strand["beads"] for strand in facts["second"]["strands"]] == ["".join(strand.beads) for strand in pattern.second.strands]


def test_materials_name_thread_spools_and_needle_once(fronted):
    _, workspace, pattern = fronted
    view = shown(pattern, print_room(edition(workspace.book)), 1.0)
    assert [item.what.partition(" (")[0] for item in view.threads] == ["braided 6 lb", "nylon B"] and all("1 spool of" in item.what for item in view.threads)
    assert view.tools.what == "beading needles, size 12; scissors, and two pliers for the ear wires"


def test_parts_of_the_second_piece_are_ticked_and_read_back_apart_from_those_of_the_first(tmp_path):
    chart = "    3 |  B       W\n    2 | W B     B B\n    1 |  W B W B W\n"
    root, _, _ = pattern_with(tmp_path, "mirror: true\nfront: true\n")
    path = root / "patterns" / "morning-cloud.yaml"
    text = path.read_text("utf-8")
    kept = re.sub(r"^(fringe|counted):.*?(?=^\w|\Z)", "", re.sub(r"(  chart: \|\n)((?: {4}.*\n)+)", rf"\g<1>{chart}", text, count=1), flags=re.M | re.S)
    path.write_text(kept.replace("drop: 2", "drop: 1"), "utf-8")
    workspace = load(root)
    assert [finding.message for finding in workspace.findings] == []
    pattern = workspace.patterns["morning-cloud"]
    room = web_room()
    setter = Setter(workspace.root, Medium(WEB, room), **shared(workspace))
    html = articles(setter, pattern, room, 1.0, "A Small Sky")[0].html
    names = ["row-1", "row-2a", "row-3a", "row-2b", "row-3b"]
    assert re.findall(r'<li data-part="(row-[^"]+)"', html) == [*names, *names]
    assert 'aria-label="Row 2b done, second piece"' in html
    assert differences(pattern.second, *printed_lines(html, second=True)) == () == differences(pattern.piece, *printed_lines(html))
