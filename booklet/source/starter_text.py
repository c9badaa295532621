"""The text of a pattern file to start from, with comments for the one who will change it."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import groupby
from textwrap import dedent, indent

from ..craft.shapes import FRINGES, SHAPES
from ..craft.techniques import BEGINNER, needed_level
from .book import Book
from .resolve import read_pattern
from .starter import DARK, END, LIGHT, LOOP, MIDDLE, Start

# Key: what it is called, its colour and finish, and where it stands in the piece.
BEADS = {
    DARK: ("deep blue", "#27496b", "matte", "the outline, and a band above the hem"),
    MIDDLE: ("haze blue", "#7fa8c2", "lustre", "the ground"),
    LIGHT: ("lamp cream", "#f4e3b5", "matte", "the fine lines, and all ends"),
}
COMMENTS_AT = 26   # column of the comments beside short lines


def pattern_text(planned: Start, book: Book) -> str:
    """The whole file, with the level that the book asks for such a piece."""
    draft, _ = read_pattern(_file(planned, BEGINNER), f"{planned.slug}.yaml", planned.slug, book)
    return _file(planned, needed_level(draft.piece, book.placed))


def _file(planned: Start, level: str) -> str:
    parts = [_opening(planned), _facts(planned, level), _legend(planned), _body(planned),
             *([_fringe(planned)] if planned.strands else []), _hanger(planned), _notes(planned), _colourway(planned), _counted(planned)]
    return "\n".join(parts)


def _opening(planned: Start) -> str:
    slug = planned.slug
    return dedent(f"""\
        # {planned.title}: a start for a pattern of your own. Change what you like, and keep what you need of these remarks.
        #
        #   booklet lint {slug}              finds what does not add up
        #   booklet draw {slug} --as png     shows the charts and the finished piece, in build/draw/{slug}/
        #   booklet tally {slug}             counts beads, size, mass and thread
        #   booklet single {slug}            binds the pattern for sale
        """)


def _facts(planned: Start, level: str) -> str:
    mirror = ("true", "the second piece of the pair is the first turned over") if _leans(planned) else (
        "false", "true: the second piece of the pair is the first turned over")
    return "\n".join([
        f"title: {_quoted(planned.title)}",
        f"summary: {_summary(planned)}",
        "# The summary is the one sentence for the contents page and for a shop listing: say what the piece shows.",
        _line('version: "1.0"', "raise it whenever the printed pattern changes"),
        _line(f"level: {level}", "beginner, intermediate or advanced"),
        _line("makes: pair", "pair or single"),
        _line(f"mirror: {mirror[0]}", mirror[1]), ""])


def _leans(planned: Start) -> bool:
    return planned.fringe == "slant" and not planned.mirrored


def _summary(planned: Start) -> str:
    fringe = {"none": "", "straight": ", and a straight fringe", "v": ", and a fringe that falls to a point",
              "slant": ", and a fringe that slants from the left", "curve": ", and a fringe with a round hem"}[planned.fringe]
    return f"A {planned.shape} in brick stitch with fine lines that follow its edge{fringe}."


def _legend(planned: Start) -> str:
    lines = ["# The legend, in the order in which it prints. To recolour the piece, change names and colours here and leave",
             "# the letters as they are: chart and strands follow.", "beads:"]
    names = {key: f"{BEADS[key][0]}," for key in planned.keys}
    for key in planned.keys:
        _, colour, finish, use = BEADS[key]
        lines.append(f'  {key}: {{name: {names[key]:<11} colour: "{colour}", finish: {finish + ",":<7} kind: cylinder 11/0}}   # {use}')
    return "\n".join([*lines, ""])


def _body(planned: Start) -> str:
    lines = ["# The woven part as it hangs, top row first: a number, a bar, and one letter for a bead. Neighbours stand two",
             "# characters apart, and every row sits half a stitch (one character) to the side of the row under it.",
             f"# This {planned.shape} {_about(planned)}."]
    if planned.drop > 1:
        lines.append(f"# Here a stitch is a set of {planned.drop} beads, so a row has {planned.drop} lines, upper beads first.")
    base = ("base: widest", "the widest row is row 1, in ladder stitch; upper rows follow, then lower ones") if planned.outline.base else (
        "base: bottom", "the bottom row is row 1, in ladder stitch; all others hang on its thread bridges")
    lines += ["body:", _line("  stitch: brick", ""), _line(f"  drop: {planned.drop}", "beads in a stitch"), _line(f"  {base[0]}", base[1]), "  chart: |"]
    return "\n".join([*lines, *_chart(planned), ""])


def _about(planned: Start) -> str:
    last = len(planned.body[-1])
    at_top = f"with {last} stitches" if last > 1 else "with one stitch"
    return f"{SHAPES[planned.shape].about}, and ends at the top {at_top}"


def _chart(planned: Start) -> Iterator[str]:
    """The lines of the chart, top row first."""
    height, base = len(planned.body), planned.outline.base
    # YAML takes the indent of the first line for that of all: where the top row has a short number, numbers begin in one column.
    digits, side = len(str(height)), ">" if len(str(height - base)) == len(str(height)) else "<"
    for index in reversed(range(height)):
        number = index - base + 1 if index >= base else height - index
        drawn = " " * planned.outline.rows[index][0] + " ".join(planned.body[index])
        for line in range(planned.drop):
            yield f"    {number if line == 0 else '':{side}{digits}} | {drawn}"


def _fringe(planned: Start) -> str:
    lines = ["# One strand under each stitch of row 1, from left to right as the piece hangs. 12M 2L is read from the body down:",
             "# 12 beads M, then 2 beads L. A strand with other end beads has them after a >, such as 12M > 1L.",
             f"# This fringe: {FRINGES[planned.fringe]}."]
    lines += ["fringe:", _line(f"  end: {_runs(END)}", "end beads: the needle skips them and goes back up; three sit as a small triangle")]
    strands = planned.strands
    if planned.mirrored:
        middle = "to the middle one" if len(strands) % 2 else "to the middle"
        lines.append(_line("  mirror: true", f"written {middle}; the other half is its mirror image"))
        strands = strands[:(len(strands) + 1) // 2]
    else:
        lines.append(_line("  mirror: false", "true: written to the middle one, and the other half mirrored"))
    return "\n".join([*lines, "  strands:", *(f"    - {_runs(strand)}" for strand in strands), ""])


def _hanger(planned: Start) -> str:
    return "\n".join([
        "# What the ear wire holds: a loop of beads on the middle of the top row. {kind: guard} would be a thread guard, which",
        "# the findings must have too; {kind: none} is nothing at all.",
        f"hanger: {{kind: loop, beads: {_runs(LOOP)}}}" if len(planned.body[-1]) > 1 else
        _line(f"hanger: {{kind: loop, beads: {_runs(LOOP)}, passes: 2}}", "one stitch holds it, and the thread passes it often"),
        "findings:",
        _line("  - {item: ear wire, each: 1}", "each: for one piece"),
        "thread:",
        _line("  body:   {kind: braided 6 lb}", ""),
        *([_line("  fringe: {kind: nylon B}", "soft enough to swing")] if planned.strands else []),
        _line("  length: 1.4 m", "a comfortable working length; more is put on where it runs out"), ""])


def _notes(planned: Start) -> str:
    notes = ["The base row has {{ base.stitches }} stitches. Count every row when it is done: a lost stitch is soon taken back."]
    if planned.strands:
        notes.append("Lay each finished strand beside its neighbour before you pull it up. It should hang free and show no thread.")
    return "\n".join(["# What you want to tell the maker, as Markdown. {{ base.stitches }} is filled in from the piece.", "notes: |",
                      indent("\n\n".join(notes), "  "), ""])


def _colourway(planned: Start) -> str:
    shades = {DARK: ("wine", "#6b2740"), MIDDLE: ("old rose", "#c98a92"), LIGHT: ("pale peach", "#f7dfc8")}
    lines = ["# The same piece in other colours, printed after the steps. Take away the # to have it.", "# colourways:", "#   dusk:"]
    return "\n".join([*lines, *(f'#     {key}: {{name: {shades[key][0]}, colour: "{shades[key][1]}"}}' for key in planned.keys), ""])


def _counted(planned: Start) -> str:
    counts = {"base": planned.base, "rows": len(planned.body), "strands": len(planned.strands), "beads": planned.beads}
    return "\n".join(["# Counts of one piece, made apart from the chart. When you change the piece on purpose, count again by hand and",
                      "# write it here: a bead added or lost by a slip of the finger then shows in lint.",
                      f"counted: {{{', '.join(f'{name}: {count}' for name, count in counts.items() if count)}}}", ""])


def _line(text: str, remark: str) -> str:
    return f"{text + '  ':<{COMMENTS_AT}}# {remark}" if remark else text


def _runs(keys: str) -> str:
    """Keys as run text: 12M 2L."""
    return " ".join(f"{len(list(same))}{key}" for key, same in groupby(keys))


def _quoted(title: str) -> str:
    """In quotes where an editor would take a bare title for a number or a truth value."""
    bare = title[0].isalpha() and title.lower() not in ("null", "true", "false", "yes", "no", "on", "off", "y", "n")
    return title if bare else f'"{title}"'
