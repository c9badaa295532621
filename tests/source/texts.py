"""A small pattern file that is right, and what reading says about it when it is changed."""

from booklet.source.book import Book, read_book
from booklet.source.nodes import compose
from booklet.source.workspace import read_text
from booklet.source.written import Written

SMALL = """\
title: Cloud Shadow
summary: One sentence for the contents page and for a shop listing.
version: "1.0"                 # text
level: beginner
makes: pair
mirror: false
hand: right

beads:
  W: {name: chalk white,  colour: "#f4f1ea", finish: matte,    kind: cylinder 11/0}
  B: {name: storm blue,   colour: "#3D5A80", finish: lustre,   kind: cylinder 11/0}
  D: {name: silver drop,  colour: "#b8c", finish: metallic, kind: drop 3.4, pack: 10 g}

body:
  stitch: brick
  drop: 2
  base: bottom
  chart: |
    3 |    B B
      |    W W
    2 |   W B W
      |   W B W
    1 |  W W B W
      |  W B B W

fringe:
  end: 3B
  mirror: false
  strands:
    - 12W 2B 1W
    - 3(2W 1B) 4W > 1D
    - 14W 2B
    - 12W 2B 1W

hanger: {kind: guard}
findings:
  - {item: thread guard, size: 4 mm, each: 1}
  - {item: lever-back ear wire, each: 1}
thread:
  body:   {kind: braided 6 lb}
  fringe: {kind: nylon D}
  length: 1.4 m
photo: {file: photos/cloud-shadow.jpg, alt: "..."}
links:
  - {label: film of the row start, url: "https://example.org/row-start"}
notes: |
  The base row has {{ base.stitches }} stitches.
steps: {}
colourways:
  dusk: {B: {name: plum, colour: "#5e3a5b", finish: matte}}
counted: {base: 4, rows: 3, strands: 4, beads: 87}
"""

BOOK = """\
title: Weather for Wearing
"""


def read(text, book=None):
    """Pattern and findings of a pattern's text."""
    return read_text(text, "a.yaml", "a", book or Book())


def good(text, book=None):
    """The pattern of a text in which nothing is wrong."""
    pattern, found = read(text, book)
    assert [finding.one_line() for finding in found] == []
    return pattern


def said(text, book=None):
    """What is said about a pattern's text, a line a finding."""
    return [finding.one_line() for finding in read(text, book)[1]]


def with_change(old, new, text=SMALL):
    """The small pattern with one thing changed."""
    assert text.count(old) >= 1, f"{old!r} is not in the text"
    return text.replace(old, new, 1)


def with_chart(chart, drop=1, more=""):
    """The small pattern with another chart (a block of text, indented by four here), and no fringe."""
    head, _, rest = SMALL.partition("  chart: |\n")
    tail = rest[rest.index("hanger:"):rest.index("counted:")]
    drawn = "".join(f"    {line}\n" for line in chart.strip("\n").split("\n"))
    return head.replace("drop: 2", f"drop: {drop}") + "  chart: |\n" + drawn + "\n" + more + tail


def book(text):
    """Book and what is said about its text."""
    made, found = read_book(text, "book.yaml")
    return made, [finding.one_line() for finding in found]


def written(yaml, *path):
    """The scalar at a path of a YAML text, as Written."""
    document = compose(yaml, "a.yaml")
    assert document.findings == ()
    node = document.root
    for step in path:
        node = node.items[step] if isinstance(step, int) else next(value for key, value in node.pairs if key.text == step)
    return Written(node.text, node, document)


def grid(chart):
    """A drawn chart as lines of letters, to compare with what was written."""
    lines = []
    for row in chart.rows:
        for line in row.lines:
            signs = {bead.at: bead.key for bead in line}
            lines.append("".join(signs.get(at, " ") for at in range(max(signs, default=-1) + 1)))
    return lines
