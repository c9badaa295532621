"""Books of any size for measurements: invented, seeded, and as free of faults as a book that is for sale.

A pattern has a body of 33 rows that widens and narrows, a fringe, 14 steps, notes, and about 770 beads. Its colours follow bands, so that charts and words
have runs of the usual length. Books with one seed have the same patterns in the same order, however many there are.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import groupby
from pathlib import Path
from random import Random
from textwrap import dedent, indent

ROWS = 33
BEADS = range(745, 796)
LEAST, WIDEST = 6, 17   # stitches of a row
END = 3                 # end beads of a strand
WEATHER = ("April", "Autumn", "Bright", "Cold", "Dawn", "Distant", "Dry", "Early", "Evening", "Falling", "First", "Grey", "Harbour", "Hill",
           "Late", "Lowland", "March", "Meadow", "Midday", "Mild", "Moor", "Night", "Northern", "October", "Open", "Passing", "Quiet", "River",
           "Sea", "Slow", "Southern", "Spring", "Still", "Summer", "Upland", "Valley", "Western", "Wide", "Winter", "Woodland")
THING = ("Air", "Breeze", "Calm", "Cirrus", "Cloud", "Dew", "Drizzle", "Dusk", "Fog", "Front", "Frost", "Gale", "Glow", "Gust", "Hail", "Haze",
         "Horizon", "Lull", "Mist", "Rain", "Rainbow", "Rime", "Shower", "Sky", "Sleet", "Snow", "Squall", "Storm", "Thaw", "Wind")
# Names and colours from dark to light; a pattern takes one of each line.
SHADES = ((("storm blue", "#1d2b45"), ("pine green", "#173a2c"), ("plum", "#3d1f3f"), ("ink blue", "#1a2140"), ("bark brown", "#3a2618")),
          (("slate blue", "#4d6f95"), ("moss green", "#56793f"), ("brick red", "#a8463a"), ("violet", "#7a58a6"), ("teal", "#2b7f86")),
          (("sky blue", "#86b9dc"), ("leaf green", "#9cc46a"), ("apricot", "#f0a35e"), ("lilac", "#b8a2dc"), ("rose", "#e08fa4")),
          (("chalk white", "#f6f3ea"), ("pale yellow", "#fbeea8"), ("cream", "#fbefd4"), ("ice blue", "#e2f2f9"), ("pale mint", "#dcf5e2")))
FINISHES = ("matte", "lustre", "opaque", "transparent")
ADVICE = ("Count every row when it is done: a lost stitch is soon taken back.",
          "The outline swells and shrinks, so read the start and the end of each row before you pick up its first stitches.",
          "Keep the tension even where the body is narrow; that is where a loose row would show.",
          "Lay each finished strand beside its neighbour before you pull it up. It should hang free and show no thread.",
          "The bands of the fringe go on where those of the body end. If they do not meet, look at the last row again.",
          "Good light helps more than good eyes; the two darker colours look alike under a yellow lamp.",
          "Rest your hands after every tenth row, and look at the piece from across the room.",
          "The ends of thread hide best in the widest rows.")
IDEAS = ("It had been there since the morning, and nobody had looked up.", "For as long as a kettle takes to boil, the whole valley had this colour.",
         "We saw it from the stairs, and again on the water, the other way up.", "It came over the hill, stood a while, and thought better of it.",
         "The forecast had promised something else, and we were glad.", "Nobody remembers how it began, only that it was quiet afterwards.")


def write_book(folder: Path, patterns: int, seed: int = 1) -> list[str]:
    """Write a workspace of so many patterns into a folder, and give their slugs in the order of the book."""
    (folder / "patterns").mkdir(parents=True, exist_ok=True)
    slugs = []
    for number in range(patterns):
        slug, text = pattern(number, seed)
        (folder / "patterns" / f"{slug}.yaml").write_text(text, "utf-8")
        slugs.append(slug)
    (folder / "patterns" / "book.yaml").write_text(_book(slugs), "utf-8")
    return slugs


def pattern(number: int, seed: int = 1) -> tuple[str, str]:
    """Slug and text of the pattern of this number, from 0."""
    random = Random(f"{seed} {number}")
    while True:   # outlines are drawn until one has the wanted size
        widths = _widths(random)
        strands = _strands(random, widths[0])
        if sum(widths) + sum(strands) + END * len(strands) in BEADS:
            return _text(number, random, widths, strands)


def edited(text: str, times: int) -> str:
    """The text with a slip of one bead mended in the notes: a change of a few words that prints anew. Each number of times gives another text."""
    return text.replace("notes: |\n", f"notes: |\n  Proof reading {times}: nothing was found.\n\n", 1)


def _widths(random: Random) -> list[int]:
    """Stitches of each row, bottom up, in waves of three rows or more. Neighbours differ by one, on both edges alike."""
    widths, move = [random.randint(13, 16)], random.choice((1, -1))
    while len(widths) < ROWS:
        for _ in range(random.randint(3, 6)):
            if LEAST <= widths[-1] + move <= WIDEST:
                widths.append(widths[-1] + move)
        move = -move
    return widths[:ROWS]


def _strands(random: Random, count: int) -> list[int]:
    """Beads of each strand without its end: all of one length, or one bead fewer from each to the next, out from the middle."""
    longest, fall = random.randint(21, 28), random.choice((0, 1))
    return [longest - fall * (abs(2 * at - count + 1) // 2) for at in range(count)]


def _text(number: int, random: Random, widths: list[int], strands: list[int]) -> tuple[str, str]:
    name = f"{WEATHER[number % len(WEATHER)]} {THING[number // len(WEATHER) % len(THING)]}"
    title = name if number < len(WEATHER) * len(THING) else f"{name} {number}"
    shades = [random.choice(line) for line in SHADES]
    finishes = [random.choice(FINISHES) for _ in SHADES]
    band, slope = random.randint(3, 5), random.choice((-1, 0, 1))
    rows = [[_key(row, abs(2 * at - width + 1) // 2, band, slope) for at in range(width)] for row, width in enumerate(widths)]
    hung = [[_key(-1 - bead, abs(2 * at - len(strands) + 1) // 2, band, slope) for bead in range(length)] for at, length in enumerate(strands)]
    beads = sum(widths) + sum(strands) + END * len(strands)
    said = random.sample(ADVICE, 4)
    notes = "\n\n".join([" ".join(said[:2]), " ".join(said[2:]), f"**The idea.** {random.choice(IDEAS)} {random.choice(IDEAS)}"])
    legend = "\n".join(f'  {key}: {{name: {shade}, colour: "{colour}", finish: {finish}, kind: cylinder 11/0}}'
                       for key, (shade, colour), finish in zip("DMLW", shades, finishes))
    half = hung[:(len(hung) + 1) // 2]
    return title.lower().replace(" ", "-"), dedent(f"""\
        title: {title}
        summary: Bands of {shades[0][0]}, {shades[1][0]}, {shades[2][0]} and {shades[3][0]} over a body that swells and shrinks, and a fringe that takes them on.
        version: "1.0"
        level: intermediate
        makes: pair
        mirror: false

        beads:
        %s

        body:
          stitch: brick
          drop: 1
          base: bottom
          chart: |
        %s

        fringe:
          end: {END}W
          mirror: true
          strands:
        %s

        hanger: {{kind: guard}}
        findings:
          - {{item: thread guard, size: 4 mm, each: 1}}
          - {{item: lever-back ear wire, each: 1}}
        notes: |
        %s
        counted: {{base: {widths[0]}, rows: {ROWS}, strands: {len(strands)}, beads: {beads}}}
        """) % (legend, "\n".join(_chart(rows)), "\n".join(f"    - {_runs(strand)}" for strand in half), indent(notes, "  "))


def _key(row: int, from_middle: int, band: int, slope: int) -> str:
    """The colour at a row (below the body: counted downward from -1) and a distance from the middle."""
    return "DMLW"[(row + slope * from_middle) // band % 4]


def _chart(rows: list[list[str]]) -> Iterator[str]:
    widest = max(map(len, rows))
    for number in range(len(rows), 0, -1):
        keys = rows[number - 1]
        yield f"    {number:>2} | {' ' * (widest - len(keys))}{' '.join(keys)}"


def _runs(keys: list[str]) -> str:
    return " ".join(f"{len(list(same))}{key}" for key, same in groupby(keys))


def _book(slugs: list[str]) -> str:
    return dedent("""\
        title: Weather by the Yard
        subtitle: Brick-stitch earrings with fringe, made up for measuring
        author: Isobar Bead Studio
        publisher: Isobar Bead Studio
        year: 2026
        edition: First edition
        language: en
        contact: corrections@example.org
        copyright: © 2026 Isobar Bead Studio
        licence: |
          You may make the pieces of this book for yourself and as gifts, and print the pages for your own use.
        order:
        %s
        page: {size: A5, bleed: 0 mm, gutter: 4 mm}
        spare: {percent: 10 %%, least: 5}
        pack: 5 g
        defaults:
          thread:
            body:   {kind: braided 6 lb}
            fringe: {kind: nylon B}
            length: 1.2 m
        """) % "\n".join(f"  - {slug}" for slug in slugs)
