"""booklet new: the file that it writes, what it never does, and what it says."""

import json
from pathlib import Path

import pytest
from click.testing import CliRunner

from booklet.cli import main

ROOT = Path(__file__).parents[2]
BOOK = "title: Weather for Wearing\norder:\n  - frost-star\n"


def run(folder, *words):
    return CliRunner().invoke(main, ["-C", str(folder), *words])


def write(folder, name, text):
    path = folder / "patterns" / name
    path.parent.mkdir(exist_ok=True)
    path.write_text(text, "utf-8")
    return path


def test_a_file_in_an_empty_folder(tmp_path):
    made = run(tmp_path, "new", "breeze", "--shape", "triangle", "--base", "7")
    assert (made.exit_code, made.stdout) == (0, "patterns/breeze.yaml\n")
    assert made.stderr == ("booklet: to bind a book, make patterns/book.yaml with a title: and an order:, "
                           "and put the line  - breeze  under order:\n")
    assert [path.name for path in tmp_path.rglob("*")] == ["patterns", "breeze.yaml"]
    checked = run(tmp_path, "lint")
    assert (checked.exit_code, checked.output) == (0, "")
    counted = run(tmp_path, "tally", "breeze", "--json")
    assert [row["stitches"] for row in json.loads(counted.stdout)["body"]["rows"]] == [7, 6, 5, 4, 3, 2]


def test_the_book_is_told_but_not_changed(tmp_path):
    book = write(tmp_path, "book.yaml", BOOK)
    made = run(tmp_path, "new", "breeze")
    assert made.exit_code == 0 and book.read_text("utf-8") == BOOK
    assert made.stderr == "booklet: breeze is not in the book yet (to bind it there, add the line  - breeze  under order: in patterns/book.yaml)\n"
    book.write_text(BOOK + "  - squall\n", "utf-8")
    assert run(tmp_path, "new", "squall").stderr == ""
    book.write_text("title: Weather for Wearing\n", "utf-8")
    assert run(tmp_path, "new", "hail").stderr == "booklet: patterns/book.yaml has no order:, so hail comes into the book in the order of the names\n"


def test_the_line_that_it_names_puts_the_pattern_into_the_book(tmp_path):
    book = write(tmp_path, "book.yaml", "title: Weather for Wearing\norder:\n")
    book.write_text(book.read_text("utf-8") + "  - breeze\n", "utf-8")
    run(tmp_path, "new", "breeze")
    assert run(tmp_path, "lint").output == ""


def test_a_broken_book_does_not_stop_it(tmp_path):
    write(tmp_path, "book.yaml", "title: [\n")
    made = run(tmp_path, "new", "breeze")
    assert made.exit_code == 0 and (tmp_path / "patterns" / "breeze.yaml").is_file() and "patterns/book.yaml:2:1: error: " in made.stderr


def test_a_heavy_piece_is_written_and_said_to_be_heavy(tmp_path):
    made = run(tmp_path, "new", "breeze", "--base", "24", "--drop", "4")
    assert made.exit_code == 0 and made.stdout == "patterns/breeze.yaml\n" and "[heavy-piece]" in made.stderr.splitlines()[0]


def test_error_a_file_is_never_overwritten(tmp_path):
    path = write(tmp_path, "breeze.yaml", "mine\n")
    made = run(tmp_path, "new", "breeze")
    assert (made.exit_code, made.stdout, path.read_text("utf-8")) == (2, "", "mine\n")
    assert made.stderr == "booklet: patterns/breeze.yaml is there already, and is left as it is (take another name, or move that file away)\n"


@pytest.mark.parametrize(("words", "said"), [
    (["Cloud Shadow"], "the name of a pattern has small letters, digits and single hyphens, such as cloud-shadow; found 'Cloud Shadow' (take cloud-shadow)"),
    (["../x"], "the name of a pattern has small letters, digits and single hyphens, such as cloud-shadow; found '../x' (take x)"),
    (["book"], "patterns/book.yaml is no pattern, but a file of the book (take another name)"),
    (["a", "--base", "7", "--rows", "9"], "a triangle on 7 stitches has 7 rows at most, the last of one stitch; found 9 (take --rows 7, or --base 9)"),
    (["a", "--base", "0"], "a triangle needs a base row of 2 stitches or more; found 0 (take --base 2)"),
    (["a", "--longest", "0"], "the longest strand needs 6 beads or more; found 0 (take --longest 6)"),
    (["a", "--shape", "diamond", "--longest", "20"],
     "there is no fringe, so it has no longest strand (leave out --longest, or take --fringe straight)"),
])
def test_error_what_cannot_be(tmp_path, words, said):
    made = run(tmp_path, "new", *words)
    assert (made.exit_code, made.stdout, made.stderr) == (2, "", f"booklet: {said}\n")
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize("words", [["a", "--drop", "5"], ["a", "--base", "61"], ["a", "--rows", "x"], ["a", "--shape", "circle"], []])
def test_error_wrong_use(tmp_path, words):
    made = run(tmp_path, "new", *words)
    assert made.exit_code == 2 and "Error: " in made.stderr and list(tmp_path.iterdir()) == []


def test_error_no_place_for_it(tmp_path):
    assert run(tmp_path / "nowhere", "new", "breeze").stderr == f"booklet: there is no folder {tmp_path / 'nowhere'}\n"
    (tmp_path / "patterns").write_text("a file", "utf-8")
    made = run(tmp_path, "new", "breeze")
    assert (made.exit_code, made.stderr) == (2, "booklet: patterns is a file, where a folder is expected\n")


def test_error_a_folder_that_leads_away(tmp_path):
    (tmp_path / "other").mkdir()
    (tmp_path / "book").mkdir()
    (tmp_path / "book" / "patterns").symlink_to(tmp_path / "other")
    made = run(tmp_path / "book", "new", "breeze")
    assert made.exit_code == 2 and "leads outside the folder" in made.stderr and list((tmp_path / "other").iterdir()) == []


def test_the_help_names_every_shape_and_fringe():
    from booklet.craft.shapes import FRINGES, SHAPES

    told = run(ROOT, "new", "--help").stdout
    for name, about in {**FRINGES, **{name: shape.about for name, shape in SHAPES.items()}}.items():
        assert f"{name} " in told and about in told
