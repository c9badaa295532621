"""What stands beside a row of the chart: number and arrow where it starts, its total where it ends."""

from __future__ import annotations

from dataclasses import dataclass

from ..craft.piece import RIGHT, Row
from . import alphabet, tone
from .grid import Grid
from .picture import Picture, Style, polyline

LEAST_CAP, MOST_CAP = 1.15, 2.6   # mm, height of row numbers
BASE = "base"


@dataclass(frozen=True)
class Measures:
    """Sizes of figures and arrows, mm; all follow the height of the figures."""

    cap: float

    @property
    def small(self) -> float:
        return self.cap * 0.8

    @property
    def gap(self) -> float:
        return self.cap * 0.6

    @property
    def arrow(self) -> float:
        return self.cap * 1.45

    @property
    def dot(self) -> float:
        """Radius of the dot at the start stitch."""
        return self.cap * 0.26

    @property
    def line(self) -> float:
        return line_width(self.cap)


def line_width(cap: float) -> float:
    """Line width of letters `cap` mm high."""
    return cap * alphabet.STROKE / alphabet.CAP_UNITS


def pen(colour: str, cap: float) -> Style:
    """The style of strokes of letters `cap` mm high."""
    return Style(stroke=colour, width=line_width(cap), round=True)


def measures(grid: Grid) -> Measures:
    """Figures as large as the lowest row allows."""
    least = min((grid.bottom(row) - grid.top(row) for row in grid.piece.rows), default=grid.bead)
    return Measures(min(MOST_CAP, max(LEAST_CAP, 0.6 * least)))


def room_at_start(row: Row, size: Measures) -> float:
    """mm that the label takes beyond the edge where the row starts."""
    extra = 0.0
    if row.level == 0:
        extra = 2 * size.dot + size.gap + alphabet.width(BASE, size.cap) + 0.8 * size.cap
    return size.gap + size.arrow + size.gap + alphabet.width(str(row.number), size.cap) + size.line + extra


def room_at_end(grid: Grid, row: Row, size: Measures) -> float:
    """mm that the total takes beyond the edge where the row ends."""
    return _to_total(grid, size) + alphabet.width(str(len(row.stitches)), size.small) + size.line


def _to_total(grid: Grid, size: Measures) -> float:
    """mm from the edge of a row to its total: beyond the numbers where the next row, half a bead higher, has its number."""
    if not grid.plan.interlocked:
        return size.gap
    return 3 * size.gap + size.arrow + max(alphabet.width(str(row.number), size.cap) for row in grid.piece.rows) + size.line


def draw_labels(picture: Picture, grid: Grid, row: Row, size: Measures) -> None:
    """Number, arrow and total of one row; the base row also gets its word and a dot at its start stitch."""
    away = -1 if row.direction == RIGHT else 1   # from the start edge outward
    start, end = grid.rim(row)[::-away]
    y, anchor = grid.label(row), {-1: "end", 1: "start"}
    x = start + away * size.gap
    if row.level == 0:
        x += away * size.dot
        picture.add("base", Style(stroke=tone.TEXT, width=2 * size.dot, round=True), polyline([(x, y), (x + 0.01, y)]))
        x += away * (size.dot + size.gap)
    _arrow(picture, x, y, away, size)
    x += away * (size.arrow + size.gap)
    number = str(row.number)
    picture.add("row-numbers", pen(tone.TEXT, size.cap), alphabet.word(number, x, y, size.cap, anchor[away]))
    if row.level == 0:
        x += away * (alphabet.width(number, size.cap) + 0.8 * size.cap)
        picture.add("base", pen(tone.TEXT, size.cap), alphabet.word(BASE, x, y, size.cap, anchor[away]))
    picture.add("row-totals", pen(tone.QUIET, size.small),
                alphabet.word(str(len(row.stitches)), end - away * _to_total(grid, size), y, size.small, anchor[-away]))


def _arrow(picture: Picture, tip: float, y: float, away: int, size: Measures) -> None:
    """An arrow whose point is next to the row and which lies outward of it."""
    head, style = size.cap * 0.34, pen(tone.TEXT, size.cap)
    picture.add("arrows", style, polyline([(tip + away * size.arrow, y), (tip, y)]))
    picture.add("arrows", style, polyline([(tip + away * head, y - head), (tip, y), (tip + away * head, y + head)]))
