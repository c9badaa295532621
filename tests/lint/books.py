"""Small books on disk for the tests of lint, made from parts of a pattern file."""

import re

from PIL import Image

from booklet.lint.run import lint
from booklet.source.workspace import load

# A pattern without a fault. A part given by a test takes the place of the part of the same name.
PATTERN = """\
title: Morning Cloud
summary: A small cloud in white and blue for a quiet morning.
version: "1.0"
level: advanced
makes: single
beads:
  W: {name: chalk white, colour: "#f4f1ea", finish: matte, kind: cylinder 11/0}
  B: {name: storm blue, colour: "#3d5a80", finish: lustre, kind: cylinder 11/0}
body:
  chart: |
    2 |  B B
    1 | W B W
"""
BOOK = """\
title: Weather for Wearing
order: [morning-cloud]
"""


def parts(text):
    """The top-level fields of a YAML text, by name."""
    found = re.split(r"^(?=[a-z]+:)", text, flags=re.MULTILINE)
    return {part.partition(":")[0]: part for part in found if ":" in part}


def completed(text, whole=PATTERN):
    """A whole file with the given fields in it, others as in `whole`."""
    return "".join((parts(whole) | parts(text)).values())


def write_book(root, files):
    """Write files (name in patterns/ to text) and give the folder."""
    for name, text in files.items():
        path = root / "patterns" / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, "utf-8")
    return root


# Charts and titles of the other patterns of a book with several, so that no two are alike.
CHARTS = ("2 |  B B\n    1 | W B W", "2 |  B W\n    1 | W B W", "2 |  B B\n    1 | W B B", "2 |  W B\n    1 | B W W", "2 |  W W\n    1 | W W B")


def several(snippet):
    """The files of a snippet with lines such as "# patterns/heat-haze.yaml", each made whole; book.yaml orders them."""
    parts = re.split(r"^# patterns/([a-z-]+)\.yaml\n", snippet, flags=re.MULTILINE)
    assert not parts[0]
    written = dict(zip(parts[1::2], parts[2::2]))
    releases = {"releases.yaml": written.pop("releases")} if "releases" in written else {}
    book = written.pop("book", f"order: [{', '.join(written) or 'morning-cloud'}]\n")
    files = releases | {"book.yaml": completed(book, BOOK)}
    for (slug, text), chart in zip((written or {"morning-cloud": ""}).items(), CHARTS):
        whole = completed(f"title: {slug.replace('-', ' ').title()}\nbody:\n  chart: |\n    {chart}\n")
        files[f"{slug}.yaml"] = completed(text, whole)
    return files


def write_photo(root, name, width, height, **how):
    """Write a plain picture of so many pixels into patterns/."""
    path = root / "patterns" / name
    path.parent.mkdir(parents=True, exist_ok=True)
    Image.new("RGB", (width, height), "#3d5a80").save(path, **how)


def found(root, text, book=None, **others):
    """What a lint run says about a pattern with these fields, one line a finding."""
    files = {"morning-cloud.yaml": completed(text)} | ({"book.yaml": book} if book else {}) | others
    return [finding.one_line() for finding in lint(load(write_book(root, files)))]
