"""Builds as processes of their own: two at once in one folder, one that is killed in the middle, and one with nothing to do."""

import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest
from click.testing import CliRunner

from booklet.bind.files import write_file
from booklet.bind.press.cache import Cache
from booklet.cli import main
from booklet.bind.press.cache import KEPT
from tests.lint.books import PATTERN, write_book

ROOT = Path(__file__).parents[2]
BOOK = '<html lang="en"><head><title>{{ title }}</title><style>{{ style }}</style></head><body>{% for section in sections %}{{ section }}{% endfor %}</body></html>'
SECTION = """<article id="{{ p.slug }}"><h1>{{ p.title }}</h1><figure>{{ p.chart.svg }}</figure>
{% for row in p.rows %}<p class="row-words">{{ row.line }}</p>{% endfor %}{% for strand in p.strands %}<p class="strand-words">{{ strand.line }}</p>{% endfor %}</article>"""


def small_book(root, title="Morning Cloud"):
    """A workspace whose book is nothing but charts and words, so that it is soon built."""
    write_book(root, {"a.yaml": PATTERN, "b.yaml": PATTERN.replace("Morning Cloud", "Second Cloud"), "book.yaml": "title: Clouds\nauthor: Isobar Bead Studio\norder: [a, b]\n"})
    for name, text in (("book.html.jinja", BOOK), ("parts/pattern.html.jinja", SECTION)):
        path = root / "templates" / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, "utf-8")
    return root


def start(root):
    """A build as a process, with the processes that it starts in a group of their own."""
    return subprocess.Popen([sys.executable, "-c", "from booklet.cli import main; main()", "-C", str(root), "build", "--format", "pdf"], cwd=ROOT,
                            stdout=subprocess.PIPE, stderr=subprocess.PIPE, start_new_session=True)


def outputs(root):
    return {path.relative_to(root).as_posix(): path.read_bytes() for path in sorted((root / "build").rglob("*")) if path.is_file() and ".cache" not in path.parts}


@pytest.fixture(scope="module")
def wanted(tmp_path_factory):
    """The book as one undisturbed build makes it."""
    root = small_book(tmp_path_factory.mktemp("one") / "book")
    assert run(root)[0] == "build/clouds.pdf\n"
    return root, outputs(root)


def test_two_builds_at_once_in_one_folder_are_both_right(wanted, tmp_path):
    root = small_book(tmp_path / "book")
    for build in [start(root), start(root)]:
        assert (build.communicate()[0], build.returncode) == (b"build/clouds.pdf\n", 0)
    assert outputs(root) == wanted[1]


def test_a_killed_build_leaves_what_was_there_and_the_next_one_is_right(wanted, tmp_path):
    root = small_book(tmp_path / "book")
    (root / "build").mkdir()
    (root / "build" / "clouds.pdf").write_bytes(b"an earlier book")
    build = start(root)
    while not list((root / KEPT).glob("??/*")) and build.poll() is None:   # until something has been made
        time.sleep(0.01)
    os.killpg(build.pid, signal.SIGKILL)
    build.communicate()
    assert build.returncode == -signal.SIGKILL
    assert outputs(root) == {"build/clouds.pdf": b"an earlier book"}
    assert all(Cache(root / KEPT).get(path.name) is not None for path in (root / KEPT).glob("??/[!.]*"))
    assert run(root)[0] == "build/clouds.pdf\n"
    assert outputs(root) == wanted[1]


def run(root, *words):
    result = CliRunner().invoke(main, ["-C", str(root), "build", "--format", "pdf", *words])
    assert result.exit_code == 0, result.output
    return result.stdout, result.stderr


CHANGES = (
    lambda root: (root / "patterns" / "a.yaml").write_text(PATTERN.replace("chalk white", "milk white"), "utf-8"),
    lambda root: (root / "templates" / "print.css").write_text("p { color: #123456 }", "utf-8"),
    lambda root: (root / "build" / "clouds.pdf").unlink(),
    lambda root: (root / "build" / "clouds.pdf").write_bytes(b"%PDF something else"))


def test_nothing_is_built_until_something_has_changed(wanted, monkeypatch):
    root, built = wanted[0], []

    def build(workspace, *_):
        built.append(1)
        return [write_file(workspace.root / "build" / "clouds.pdf", wanted[1]["build/clouds.pdf"])]

    said = run(root)
    monkeypatch.setattr("booklet.bind.book.build", build)
    for count, change in enumerate(CHANGES, 1):
        assert run(root) == said and len(built) == count - 1
        change(root)
        run(root)
        assert len(built) == count
        small_book(root)
        (root / "templates" / "print.css").unlink(missing_ok=True)
    assert run(root, "--fresh") == said and len(built) == len(CHANGES) + 1


def test_where_nothing_has_changed_the_typesetter_is_not_loaded(wanted):
    root = wanted[0]
    small_book(root)
    run(root)
    script = ("import sys; from click.testing import CliRunner; from booklet.cli import main; print(CliRunner().invoke(main, sys.argv[1:]).output, end='');"
              "print(sorted({'weasyprint', 'yaml', 'jinja2', 'pikepdf', 'booklet.lint.run', 'booklet.bind.book'} & set(sys.modules)))")
    told = subprocess.run([sys.executable, "-c", script, "-C", str(root), "build", "--format", "pdf"], cwd=ROOT, capture_output=True, text=True, check=True)
    assert told.stdout.splitlines()[-2:] == ["build/clouds.pdf", "[]"]


def test_error_one_pattern_that_cannot_be_bound_does_not_keep_the_others_from_it(tmp_path):
    root = small_book(tmp_path / "book")
    (root / "templates" / "single.html.jinja").write_text(BOOK, "utf-8")
    broken = PATTERN.replace("    1 | W B W", "    1 | W B X")
    coarse = PATTERN + "photo: {file: photo.png, alt: a cloud}\n"
    (root / "patterns" / "c.yaml").write_text(broken.replace("Morning", "Third"), "utf-8")
    (root / "patterns" / "b.yaml").write_text(coarse.replace("Morning", "Second"), "utf-8")
    (root / "patterns" / "photo.png").write_bytes(b"no picture")
    result = CliRunner().invoke(main, ["-C", str(root), "single", "a", "b", "c"])
    assert (result.exit_code, result.stdout) == (1, "build/single/a.pdf\n")
    assert "booklet: c: not bound, because it has errors" in result.stderr
    assert sorted(outputs(root)) == ["build/single/a.pdf"]
