"""What stands beside a row of the chart: number and arrow where it starts, its total where it ends."""

from __future__ import annotations

from msgspec import Struct
from msgspec.structs import replace

from ..craft.language import pgettext
from ..craft.piece import RIGHT, Row
from . import alphabet, tone
from .grid import Grid
from .picture import Picture, Style, polyline

LEAST_CAP, MOST_CAP = 1.15, 2.6   # mm, height of row numbers


class Measures(Struct, frozen=True):
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


def base_word() -> str:
    """What stands at the base row, in letters of the alphabet of charts."""
    return pgettext("chart", "base")


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


class Label(Struct, frozen=True):
    """Where the number, the arrow and the total of a row stand."""

    row: Row
    edge: float    # x in mm from which arrow and number are laid out
    side: int      # -1: leftward from there, 1: rightward
    total: bool = True    # whether there is room for the total
    arrow: bool = True    # whether there is room for the arrow; the other parts of the row show it too

    @property
    def at_start(self) -> bool:
        """Whether the number stands where the row starts, so that the arrow points to the row."""
        return self.side == start_side(self.row)


def start_side(row: Row) -> int:
    """The side on which a row starts: -1 left, 1 right."""
    return -1 if row.direction == RIGHT else 1


def labels_of(grid: Grid, size: Measures) -> dict[str, Label]:
    """The labels of all rows, by row name."""
    labels: list[Label] = []
    for level in {row.level: None for row in grid.piece.rows}:
        labels += _side_by_side(grid, grid.piece.at_level(level), size)
    return {label.row.name: label for label in labels}


def _side_by_side(grid: Grid, parts: tuple[Row, ...], size: Measures) -> list[Label]:
    """The labels of one chart row. Where a gap between parts is too narrow for a number, it moves out beyond the row."""
    side = start_side(parts[0])
    parts = sorted(parts, key=lambda part: -side * part.first)   # the first has its start outside, the last its end
    labels = [Label(parts[0], _edge(grid, parts[0], side), side)]
    outside = labels[0].edge + side * room_at_start(parts[0], size)
    for before, part in zip(parts, parts[1:]):
        gap, end = _gap(grid, before, part), room_at_end(grid, before, size)
        label = Label(part, _edge(grid, part, side), side)
        if gap < room_at_start(part, size):
            if part is parts[-1]:
                label = Label(part, _edge(grid, part, -side) - side * room_at_end(grid, part, size), -side)
            elif gap >= room_at_start(part, size, arrow=False):
                label = replace(label, arrow=False)
            else:
                label = replace(label, edge=outside)
                outside += side * room_at_start(part, size)
        taken = room_at_start(part, size, label.arrow) + 2 * size.gap if label.edge == _edge(grid, part, side) else 0.0
        labels[-1] = replace(labels[-1], total=gap >= end + taken)
        labels.append(label)
    return labels


def _edge(grid: Grid, row: Row, side: int) -> float:
    left, right = grid.rim(row)
    return left if side < 0 else right


def _gap(grid: Grid, one: Row, other: Row) -> float:
    """mm between two parts."""
    left, right = sorted((one, other), key=lambda part: part.first)
    return grid.left(right) - grid.right(left)


def room_at_start(row: Row, size: Measures, arrow: bool = True) -> float:
    """mm that number and arrow take."""
    extra = 0.0 if arrow else -size.gap - size.arrow
    if row.level == 0:
        extra += 2 * size.dot + size.gap + alphabet.width(base_word(), size.cap) + 0.8 * size.cap
    return size.gap + size.arrow + size.gap + alphabet.width(row.name, size.cap) + size.line + extra


def room_at_end(grid: Grid, row: Row, size: Measures) -> float:
    """mm that the total takes beyond the edge where the row ends."""
    return _to_total(grid, size) + alphabet.width(str(len(row.stitches)), size.small) + size.line


def _to_total(grid: Grid, size: Measures) -> float:
    """mm from the edge of a row to its total: beyond the numbers where the next row, half a bead higher, has its number."""
    if not grid.plan.interlocked:
        return size.gap
    return 3 * size.gap + size.arrow + max(alphabet.width(row.name, size.cap) for row in grid.piece.rows) + size.line


def reach(grid: Grid, label: Label, size: Measures) -> tuple[float, float]:
    """From where to where a row reaches with what stands beside it."""
    row = label.row
    xs = [grid.left(row), grid.right(row), label.edge + label.side * room_at_start(row, size, label.arrow)]
    if label.total:
        xs.append(_edge(grid, row, -start_side(row)) - start_side(row) * room_at_end(grid, row, size))
    return min(xs), max(xs)


def draw_labels(picture: Picture, grid: Grid, label: Label, size: Measures) -> None:
    """Number, arrow and total of one row; the base row also gets its word and a dot at its start stitch."""
    row, away = label.row, label.side   # outward
    y, anchor = grid.label(row), {-1: "end", 1: "start"}
    x = label.edge + away * size.gap
    if row.level == 0:
        x += away * size.dot
        picture.add("base", Style(stroke=tone.TEXT, width=2 * size.dot, round=True), polyline([(x, y), (x + 0.01, y)]))
        x += away * (size.dot + size.gap)
    if label.arrow:
        tip = x if label.at_start else x + away * size.arrow
        _arrow(picture, tip, y, away if label.at_start else -away, size)
        x += away * (size.arrow + size.gap)
    picture.add("row-numbers", pen(tone.TEXT, size.cap), alphabet.word(row.name, x, y, size.cap, anchor[away]))
    if row.level == 0:
        x += away * (alphabet.width(row.name, size.cap) + 0.8 * size.cap)
        picture.add("base", pen(tone.TEXT, size.cap), alphabet.word(base_word(), x, y, size.cap, anchor[away]))
    if label.total:
        on = -start_side(row)
        picture.add("row-totals", pen(tone.QUIET, size.small),
                    alphabet.word(str(len(row.stitches)), _edge(grid, row, on) + on * _to_total(grid, size), y, size.small, anchor[on]))


def _arrow(picture: Picture, tip: float, y: float, away: int, size: Measures) -> None:
    """An arrow whose shaft lies to the side `away` of its tip."""
    head, style = size.cap * 0.34, pen(tone.TEXT, size.cap)
    picture.add("arrows", style, polyline([(tip + away * size.arrow, y), (tip, y)]))
    picture.add("arrows", style, polyline([(tip + away * head, y - head), (tip, y), (tip + away * head, y + head)]))
