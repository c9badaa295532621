"""The chart of the body, as the piece hangs: a letter in every bead, numbers where rows start, totals where they end."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from math import pi

from msgspec import Struct

from ..craft.beads import BeadKind
from ..craft.language import _, ngettext, sentences
from ..craft.piece import RIGHT, Piece, Row
from . import alphabet, tone
from .beads import OUTLINED, Track, corner, lay, outline
from .fit import LEAST_BEAD, Fit, largest
from .grid import Grid, Run, body_grid
from .labels import draw_labels, labels_of, measures, pen, reach
from .picture import Picture, Style, polyline
from .said import beads_counted, beads_named, span, stitches_counted
from .tiles import Margins, Part, Tile, map_svg, shown_part, tiles

LAYERS = ("guides", "ground", "beads", "fives", "base", "letters", "arrows", "row-numbers", "row-totals", "stitch-numbers", "cut")
MARGIN = 0.5    # mm round the picture
FIVE = 5        # guides stand after every fifth stitch and row


class Box(Struct, frozen=True):
    """The part of the plane that a picture shows, mm."""

    left: float
    top: float
    right: float
    bottom: float

    @property
    def size(self) -> tuple[float, float]:
        return self.right - self.left, self.bottom - self.top


def chart_svg(piece: Piece, *, bead: float = LEAST_BEAD, grey: bool = False, blank: bool = False,
              prefix: str = "chart", on: Callable[[Iterable[str]], Picture] = Picture) -> str:
    """Chart at `bead` mm across a bead of the body. `grey` is how a black and white print shows it; `blank` leaves letters only."""
    grid = body_grid(piece, bead)
    box = _box(grid)
    return _drawn(grid, tone.tone_of(grey, blank), on).svg(box.left, box.top, *box.size, alt=chart_alt(piece), prefix=prefix)


def chart_parts(piece: Piece, bead: float, width: float, height: float, *, prefix: str = "chart") -> tuple[Part, ...]:
    """The chart at `bead` mm across a bead, in as many parts as pages with room of width x height mm need. No part for a chart that fits one page."""
    grid = body_grid(piece, bead)
    box, size, rows = _box(grid), measures(grid), grid.piece.rows
    margins = Margins(2.2 * size.cap + alphabet.width("00", size.cap), 0.0)
    across = [box.left, *(x for x in (step * grid.pitch for step in range(round(grid.width / grid.pitch) + 1)) if box.left < x < box.right), box.right]
    down = sorted({box.top, box.bottom, *(round(grid.top(row), 4) for row in rows if grid.top(row) > 0)})
    found = tiles(across, down, width, height, margins)
    bars = [(grid.left(row), grid.top(row), grid.right(row), grid.bottom(row)) for row in rows]
    numbers = [(row.name, grid.label(row)) for row in rows]
    parts = []
    for index, tile in enumerate(found if len(found) > 1 else ()):
        inside = sorted((grid.middle(row), row.number) for row in rows if tile.top < grid.middle(row) < tile.bottom)
        numbered = tuple(number for _, number in inside)
        said = _("Part {number} of {count}, from row {first} at its top to row {last} at its foot{side}.",
                 number=index + 1, count=len(found), first=inside[0][1], last=inside[-1][1], side=_side(tile))
        svg = shown_part(_drawn(grid, "colour"), tile, margins, size.cap, numbers, (), alt=f"{chart_alt(piece)} {said}", prefix=f"{prefix}-{index + 1}")
        parts.append(Part(svg, map_svg(bars, found, index), said, numbered))
    return tuple(parts)


def _side(tile: Tile) -> str:
    return _(", middle") if tile.cut_left and tile.cut_right else _(", right side") if tile.cut_left else _(", left side") if tile.cut_right else ""


def _drawn(grid: Grid, shade: str, on: Callable[[Iterable[str]], Picture] = Picture) -> Picture:
    picture, size = on(LAYERS), measures(grid)
    labels = labels_of(grid, size)
    for row in grid.piece.rows:
        picture.part(f"row-{row.name}")
        _ground(picture, grid, row)
        _beads(picture, grid, row, shade)
        draw_labels(picture, grid, labels[row.name], size)
    picture.part("")
    if grid.piece.rows:
        _frame_base(picture, grid)
        _row_guides(picture, grid)
        _stitch_guides(picture, grid)
    return picture


def chart_size(piece: Piece, bead: float) -> tuple[float, float]:
    """Width and height in mm of the chart at `bead` mm across a bead."""
    return _box(body_grid(piece, bead)).size


def fit_chart(piece: Piece, width: float, height: float, most: float = 6.0) -> Fit:
    """The largest scale at which the chart fits width x height mm, and whether its beads are wide enough to print."""
    return largest(lambda bead: chart_size(piece, bead), width, height, most)


def chart_alt(piece: Piece) -> str:
    """What the chart shows, in words."""
    rows = [row for row in piece.rows if row.stitches]
    if not rows:
        return _("Chart of the body, without rows.")
    keys = [key for row in rows for stitch in row.stitches for key in stitch.beads]
    below = sum(row.level < 0 for row in rows)
    parts = len({row.number for row in rows if row.part})
    first = stitches_counted(len(rows[0].stitches), piece.drop)
    base = _("Row 1, the base row, has {stitches} and starts at the left", stitches=first) if rows[0].direction == RIGHT else \
        _("Row 1, the base row, has {stitches} and starts at the right", stitches=first)
    if below:
        base = ngettext("{base}; {count} row hangs below it", "{base}; {count} rows hang below it", below, base=base)
    return sentences(
        ngettext("Chart of the body: {count} row, {beads}.", "Chart of the body: {count} rows, {beads}.", len({row.number for row in rows}),
                 beads=beads_counted(len(keys))), f"{base}.",
        ngettext("{count} row stands in parts.", "{count} rows stand in parts.", parts) if parts else "",
        _("The rows have {stitches}. Beads: {beads}.", stitches=span((len(row.stitches) for row in rows), lambda count: stitches_counted(count, piece.drop)),
          beads=beads_named(piece, keys)))


def gap_of(bead: float) -> float:
    """mm between two beads of a chart, through which the ground shows."""
    return max(0.12, 0.055 * bead)


def letter_cap(width: float, length: float) -> float:
    """Height in mm of the letter in a bead of this size."""
    return min(0.62 * length, 0.66 * width)


def put_letter(picture: Picture, key: str, fill: str, x: float, y: float, cap: float) -> None:
    """A bead's letter, in black or white."""
    if not picture.letter(key, x, y, cap):
        picture.add("letters", pen(tone.ink(fill), cap), alphabet.letter(key, x, y, cap))


def _box(grid: Grid) -> Box:
    size = measures(grid)
    lefts, rights = zip((0.0, grid.width), *(reach(grid, label, size) for label in labels_of(grid, size).values()))
    edge = gap_of(grid.bead) + MARGIN
    foot = size.gap + size.small if _fifths(grid) else 0.0
    return Box(min(lefts) - MARGIN, -edge, max(rights) + MARGIN, grid.height + foot + edge)


def _ground(picture: Picture, grid: Grid, row: Row) -> None:
    """What shows between and around beads, so that white beads stand out from the paper and equal ones from each other."""
    spread = 1.6 * gap_of(grid.bead)
    for run in grid.runs(row, by_key=False):
        _draw_run(picture, "ground", tone.GAP, grid, run, spread)


def _beads(picture: Picture, grid: Grid, row: Row, shade: str) -> None:
    for run in grid.runs(row):
        kind = grid.piece.legend[run.key].kind
        fill = tone.shown(grid.piece.legend[run.key].colour, shade)
        _draw_run(picture, "beads", fill, grid, run, 0.0)
        cap = letter_cap(*_across_and_up(grid, kind))
        for index in range(run.count):
            put_letter(picture, run.key, fill, run.x + index * run.pitch, run.y, cap)


def _across_and_up(grid: Grid, kind: BeadKind) -> tuple[float, float]:
    """mm that a bead takes across and upward, as it stands or lies."""
    sides = kind.diameter * grid.scale, kind.length * grid.scale
    return sides[::-1] if grid.plan.lying else sides


def _draw_run(picture: Picture, layer: str, colour: str, grid: Grid, run: Run, spread: float) -> None:
    kind, gap = grid.piece.legend[run.key].kind, gap_of(grid.bead)
    width, height = (side - gap for side in _across_and_up(grid, kind))
    radius = corner(kind, width, height) + spread / 2
    if kind.shape in OUTLINED:
        style = Style(fill=colour, stroke=colour, width=spread, round=True)
        shape = (height, width, pi / 2) if grid.plan.lying else (width, height)
        for index in range(run.count):
            picture.add(layer, style, outline(kind, run.x + index * run.pitch, run.y, *shape))
    else:
        lay(picture, layer, colour, Track.across(run.x, run.y, run.pitch, run.count), width + spread, height + spread, radius)


def _frame_base(picture: Picture, grid: Grid) -> None:
    """A firm line round the base row, where the work begins."""
    base, reach = grid.piece.base, 0.6 * gap_of(grid.bead)
    top, bottom, style = grid.top(base), grid.bottom(base), Style(stroke=tone.TEXT, width=1.1 * gap_of(grid.bead), round=True)
    spans = [(base.first, base.last)] if not grid.plan.interlocked else [(stitch.at, stitch.at) for stitch in base.stitches]
    for first, last in spans:
        left, right = grid.at(first - grid.plan.reach) - reach, grid.at(last + grid.plan.reach) + reach
        picture.add("base", style, polyline([(left, top), (right, top), (right, bottom), (left, bottom)]) + "z")


def _row_guides(picture: Picture, grid: Grid) -> None:
    """A light line across the chart after every fifth row, firm where it runs between beads."""
    box, piece, ruled = _box(grid), grid.piece, set()
    for row in piece.rows:
        beyond = [other for other in piece.at_level(row.level + (1 if row.level >= 0 else -1)) if piece.under(other) == row]
        if row.number % FIVE or not beyond:
            continue
        y = grid.top(row) if row.level >= 0 else grid.bottom(row)
        line = [(min(map(grid.left, (row, *beyond))), y), (max(map(grid.right, (row, *beyond))), y)]
        if grid.plan.interlocked:
            line = _seam(grid, row, beyond[0])
            y = (line[0][1] + line[-1][1]) / 2
        if row.number not in ruled:   # one line for all parts
            picture.add("guides", Style(stroke=tone.GUIDE, width=0.15), polyline([(box.left, y), (box.right, y)]))
        ruled.add(row.number)
        picture.add("fives", _five(grid), polyline(line))


def _seam(grid: Grid, row: Row, beyond: Row) -> list[tuple[float, float]]:
    """The line that goes up and down between two interlocked rows, from the left."""
    heights = {stitch.at: grid.top(row) for stitch in row.stitches} | {stitch.at: grid.bottom(beyond) for stitch in beyond.stitches}
    return [(grid.at(at + side * grid.plan.reach), y) for at, y in sorted(heights.items()) for side in (-1, 1)]


def _stitch_guides(picture: Picture, grid: Grid) -> None:
    """After every fifth stitch of the base row: a figure below, and firm gaps in the rows that have a gap there."""
    size, foot, reach = measures(grid), grid.height + gap_of(grid.bead), grid.plan.reach
    for number, position, after in _fifths(grid):
        y = foot + size.gap + size.small / 2
        picture.add("stitch-numbers", pen(tone.QUIET, size.small),
                    alphabet.word(str(number), grid.at(position), y, size.small, "middle"))
        picture.add("guides", Style(stroke=tone.GUIDE, width=0.15),
                    polyline([(grid.at(after), grid.bottom(grid.piece.base)), (grid.at(after), y + size.small / 2)]))
        for row in grid.piece.rows:
            taken, beside = {stitch.at for stitch in row.stitches}, {after - reach, after + reach}
            if taken & beside if grid.plan.interlocked else beside <= taken:
                picture.add("fives", _five(grid),
                            polyline([(grid.at(after), grid.top(row)), (grid.at(after), grid.bottom(row))]))


def _fifths(grid: Grid) -> list[tuple[int, int, float]]:
    """Every fifth base stitch from the start: its number, its position, and the position of the gap after it."""
    if not grid.piece.rows:
        return []
    base = grid.piece.base
    step = grid.plan.reach if base.direction == RIGHT else -grid.plan.reach
    return [(number, stitch.at, stitch.at + step) for number, stitch in enumerate(base.worked, 1) if number % FIVE == 0]


def _five(grid: Grid) -> Style:
    return Style(stroke=tone.TEXT, width=0.85 * gap_of(grid.bead))
