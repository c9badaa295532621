"""Singles as one web page each: the same bytes whoever makes them, none twice, and none lost for the sake of another."""

import base64
import io
import re
from concurrent.futures import Executor

import pytest
from click.testing import CliRunner
from PIL import Image

from booklet.bind.pdf import working_in
from booklet.bind.press.cache import KEPT
from booklet.bind.press.workshop import HereAndNow, Workshop, pool
from booklet.bind.web import orders
from booklet.bind.web.one_file import build_each
from booklet.bind.web.screen_photos import LONGEST, for_screens
from booklet.cli import main
from booklet.errors import FindingsError
from booklet.source.workspace import load
from tests.lint.books import PATTERN, write_book

SLUGS = ["a", "b", "c"]


class Watched(HereAndNow):
    """Tells what it is asked for, and may be stopped at one of the orders."""

    def __init__(self, stops_at=None):
        self.orders, self.stops_at = [], stops_at

    def submit(self, function, /, *arguments, **named):
        if len(self.orders) == self.stops_at:
            raise KeyboardInterrupt
        self.orders += arguments
        return super().submit(function, *arguments, **named)


class Nobody(Executor):
    """Must not be asked."""

    def submit(self, function, /, *arguments, **named):
        raise AssertionError(f"{arguments} was made again")


def small_book(root):
    """Three patterns, the second with a photo that is larger than any page shows it."""
    photo = "photo: {file: cloud.png, alt: a cloud}\n"
    write_book(root, {**{f"{slug}.yaml": PATTERN.replace("Morning", name) for slug, name in zip(SLUGS, ("First", "Second", "Third"))},
                      "book.yaml": "title: Clouds\nauthor: Isobar Bead Studio\norder: [a, b, c]\neditions: {german: {language: de}}\n"})
    (root / "patterns" / "b.yaml").write_text(PATTERN.replace("Morning", "Second") + photo, "utf-8")
    Image.new("L", (LONGEST + 1, 12), 90).save(root / "patterns" / "cloud.png")
    return root


def sold(root, start, name="all", workspace=None):
    """Bind all patterns; the files by name, and what was told of each pattern."""
    told = []
    with working_in(Workshop(root / KEPT, start, typesets=False)):
        build_each(workspace or load(root), name, lambda slug, made: told.append((slug, made)))
    return {path.name: path.read_bytes() for path in (root / "build" / "single").glob("*")}, told


@pytest.fixture(scope="module")
def made(tmp_path_factory):
    """The workspace, its files, and who has made them, with nothing kept from before."""
    root, only = small_book(tmp_path_factory.mktemp("sold") / "book"), Watched()
    files, told = sold(root, lambda: only)
    assert [(slug, [path.name for path in paths]) for slug, paths in told] == [(slug, [f"{slug}.html", f"{slug}-german.html"]) for slug in SLUGS]
    return root, files, only


def test_nothing_is_made_twice_in_one_command(made):
    _, files, only = made
    assert sorted(files) == ["a-german.html", "a.html", "b-german.html", "b.html", "c-german.html", "c.html"] and len(only.orders) == len(set(map(repr, only.orders)))
    kinds = [type(order).__name__ for order in only.orders]
    assert (kinds.count("ArticlesOrder"), kinds.count("PhotoOrder")) == (6, 1)


def test_two_workers_make_the_same_bytes(made, tmp_path):
    root, files, _ = made
    assert sold(small_book(tmp_path / "book"), lambda: pool(2))[0] == files


def test_what_was_made_before_is_not_made_again(made):
    root, files, _ = made
    for path in (root / "build" / "single").glob("*"):
        path.unlink()
    assert sold(root, Nobody)[0] == files


def test_a_command_that_was_stopped_goes_on_where_it_was(made, tmp_path):
    root, first, then = small_book(tmp_path / "book"), Watched(stops_at=5), Watched()
    with pytest.raises(KeyboardInterrupt):
        sold(root, lambda: first)
    assert sold(root, lambda: then)[0] == made[1] and len(first.orders) == 5
    assert sorted(map(repr, first.orders + then.orders)) == sorted(map(repr, made[2].orders))


def test_a_photo_stands_in_its_page_as_small_as_a_page_shows_it(made):
    root, files, _ = made
    (address,) = set(re.findall(rb'<img src="data:image/png;base64,([^"]+)', files["b.html"]))
    assert base64.b64decode(address) == for_screens((root / "patterns" / "cloud.png").read_bytes())
    assert Image.open(io.BytesIO(base64.b64decode(address))).size == (LONGEST, 12)
    assert b"data:image/png" not in files["a.html"]


def test_a_page_of_an_edition_speaks_its_language(made):
    _, files, _ = made
    assert b'<html lang="de">' in files["a-german.html"] and "<b>Reihe 2</b>" in files["a-german.html"].decode() and b'<html lang="en">' in files["a.html"]


def test_error_one_pattern_that_cannot_be_bound_does_not_keep_the_others_from_it(made, tmp_path, monkeypatch):
    root = small_book(tmp_path / "book")
    workspace = load(root)
    (root / "patterns" / "cloud.png").unlink()   # after it was looked at
    fits = orders.beads_that_fit
    monkeypatch.setattr(orders, "beads_that_fit", lambda piece, room: {"body": 0.0} if piece is workspace.patterns["c"].piece else fits(piece, room))
    files, told = sold(root, HereAndNow, "", workspace)
    assert {name: content == made[1][name] for name, content in files.items()} == {"a.html": True}
    assert [(slug, [finding.one_line() for finding in found.findings]) for slug, found in told if isinstance(found, FindingsError)] == [
        ("b", ["patterns/b.yaml:13:15: error: the photo cloud.png is not there [unusable-photo]"]),
        ("c", ["patterns/c.yaml:10:10: error: the body chart fits this page with beads 0.0 mm wide; letters need 2.4 mm (choose a larger page in book.yaml, or make the piece smaller) [chart-too-large-for-page]"])]


def test_error_words_that_do_not_rebuild_the_chart_are_never_bound(tmp_path):
    root = write_book(tmp_path / "book", {"a.yaml": PATTERN, "book.yaml": "title: Clouds\n"})
    own = root / "templates" / "web" / "article.html.jinja"
    own.parent.mkdir(parents=True)
    own.write_text('<article><p class="row-words">{{ p.rows[0].line }}</p></article>', "utf-8")
    files, ((slug, error),) = sold(root, HereAndNow)
    assert files == {} and slug == "a"
    assert [finding.one_line() for finding in error.findings] == [
        "patterns/a.yaml:10:10: error: the printed words do not rebuild the chart: the words have rows 1; the chart has 1, 2 [words-do-not-replay]"]


def test_the_command_makes_all_and_names_them(tmp_path, made):
    root = small_book(tmp_path / "book")
    (root / "patterns" / "c.yaml").write_text(PATTERN.replace("    1 | W B W", "    1 | W B X"), "utf-8")
    result = CliRunner().invoke(main, ["-C", str(root), "single", "--all", "--one-file"])
    assert (result.exit_code, result.stdout) == (1, "build/single/a.html\nbuild/single/b.html\n")
    assert "booklet: c: not bound, because it has errors" in result.stderr
    assert (root / "build" / "single" / "a.html").read_bytes() == made[1]["a.html"]
    kept = sum(path.is_file() for path in (root / KEPT).rglob("*"))
    result = CliRunner().invoke(main, ["-C", str(root), "single", "a", "--one-file", "--fresh"])
    assert (result.exit_code, result.stdout) == (0, "build/single/a.html\n") and sum(path.is_file() for path in (root / KEPT).rglob("*")) == kept + 1   # the run itself
    assert (root / "build" / "single" / "a.html").read_bytes() == made[1]["a.html"]


def test_error_a_page_that_goes_with_every_pattern_is_told_of_once(tmp_path):
    root = small_book(tmp_path / "book")
    page = root / "patterns" / "pages" / "glossary.md"
    page.parent.mkdir()
    page.write_text("# Words\n\n{{ nothing }}\n", "utf-8")
    with pytest.raises(FindingsError) as caught:
        sold(root, Nobody)
    assert [finding.one_line() for finding in caught.value.findings] == [
        "patterns/pages/glossary.md:3:1: error: the placeholder 'nothing' is not known on a page (a page may name title, author and patterns) [unknown-placeholder]"]
