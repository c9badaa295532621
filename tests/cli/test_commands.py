"""The commands on the demo patterns and on broken ones."""

import json
from pathlib import Path

import pytest
from click.testing import CliRunner

from booklet.cli import main

ROOT = Path(__file__).parents[2]


def run(*words):
    return CliRunner().invoke(main, [str(word) for word in words])


def test_the_demo_is_clean():
    result = run("-C", ROOT, "lint")
    assert (result.exit_code, result.output) == (0, "")


def test_tally_json_of_the_demo():
    result = run("-C", ROOT, "tally", "cloud-shadow", "--json")
    facts = json.loads(result.output)
    assert result.exit_code == 0 and sum(bead["piece"] for bead in facts["beads"].values()) == 501
    assert facts["pieces"] == 2 and len(facts["body"]["rows"]) == 11


@pytest.mark.parametrize(("old", "new", "said"), [
    ("base: 13", "base: 14", "patterns/a.yaml:86:17: error: counted.base is 14, but the pattern has 13 [counted-differs]"),
    (" 11 |           B B B", " 12 |           B B B", "this row is numbered 12, but it is row 11 [wrong-row-number]"),
    ("    - 3G 9F 2D 5F 5G\n", "", "the fringe has 12 strands, but the base row has 13 stitches [strand-count]"),
    ("title:", "titel:", "the field 'titel' is not known (did you mean title?) [unknown-field]"),
    ("1Y   ", "1Q   ", "the bead key Q stands in the fringe, but not in the legend"),
])
def test_error_messages(tmp_path, old, new, said):
    text = (ROOT / "patterns" / "cloud-shadow.yaml").read_text("utf-8")
    assert old in text
    (tmp_path / "patterns").mkdir()
    (tmp_path / "patterns" / "a.yaml").write_text(text.replace(old, new), "utf-8")
    result = run("-C", tmp_path, "lint")
    assert result.exit_code == 1 and said.split(": error: ")[-1] in result.output


def test_error_unknown_pattern():
    result = run("-C", ROOT, "tally", "cloud-shadw")
    assert result.exit_code == 2 and "did you mean cloud-shadow?" in result.output


def test_a_missing_photo_stops_the_single_but_not_the_count(tmp_path):
    (tmp_path / "patterns").mkdir()
    text = (ROOT / "patterns" / "cloud-shadow.yaml").read_text("utf-8")
    (tmp_path / "patterns" / "a.yaml").write_text(text + "photo: {file: photos/a.jpg, alt: Two earrings.}\n", "utf-8")
    counted = run("-C", tmp_path, "tally", "a", "--json")
    assert counted.exit_code == 0 and json.loads(counted.stdout)["pattern"] == "a" and "missing-photo" in counted.stderr
    assert run("-C", tmp_path, "single", "a").exit_code == 1


def one_pattern(tmp_path):
    (tmp_path / "patterns").mkdir()
    (tmp_path / "patterns" / "a.yaml").write_text((ROOT / "patterns" / "cloud-shadow.yaml").read_text("utf-8"), "utf-8")
    return tmp_path


def test_draw_shows_the_way_through_one_row_or_strand(tmp_path):
    result = run("-C", one_pattern(tmp_path), "draw", "a", "--row", 2, "--strand", 1)
    assert result.exit_code == 0
    assert result.stdout.split() == ["build/draw/a/row-2.svg", "build/draw/a/strand-1.svg"]
    assert "The way of the thread in row 2" in (tmp_path / "build" / "draw" / "a" / "row-2.svg").read_text("utf-8")


def test_error_draw_a_row_that_is_not_there(tmp_path):
    result = run("-C", one_pattern(tmp_path), "draw", "a", "--row", 99)
    assert result.exit_code == 2
    assert "there is no row 99 (a has 11 rows)" in result.stderr
