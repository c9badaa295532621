"""Small books on disk for the tests of lint, made from parts of a pattern file."""

import re

from booklet.lint.run import lint
from booklet.source.workspace import load

# A pattern without a fault. A part given by a test takes the place of the part of the same name.
PATTERN = """\
title: Morning Cloud
summary: A cloud of three stitches.
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


def found(root, text, book=None, **others):
    """What a lint run says about a pattern with these fields, one line a finding."""
    files = {"morning-cloud.yaml": completed(text)} | ({"book.yaml": book} if book else {}) | others
    return [finding.one_line() for finding in lint(load(write_book(root, files)))]
