"""The body as a chart lays it out: craft's millimetres scaled up, y turned down, the top left corner at (0, 0)."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cached_property
from itertools import groupby

from msgspec import Struct
from msgspec.structs import replace

from ..craft.layout import Layout, layout
from ..craft.events import row_place
from ..craft.kept import kept
from ..craft.piece import Piece, Row


class Run(Struct, frozen=True):
    """Equal beads in one line of a row, `pitch` mm from one to the next, the first one centred on (x, y)."""

    key: str
    x: float
    y: float
    count: int
    pitch: float


class Grid(Struct, frozen=True, dict=True):
    """Where the chart draws the rows of a piece; `bead` is the mm across a bead of the body."""

    piece: Piece
    bead: float
    plan: Layout
    scale: float

    @cached_property
    def width(self) -> float:
        return max((self.right(row) for row in self.piece.rows), default=0.0)

    @cached_property
    def height(self) -> float:
        return max(self.plan.tops.values(), default=0.0) * self.scale

    def left(self, row: Row) -> float:
        """Outer edge of the row's leftmost stitch."""
        return self.at(row.first - self.plan.reach)

    def right(self, row: Row) -> float:
        return self.at(row.last + self.plan.reach)

    def rim(self, row: Row) -> tuple[float, float]:
        """Left and right edge of the picture at the height of a row: rows that lie half in it count too."""
        beside = [row]
        if self.plan.interlocked:
            beside += [other for other in self.piece.rows if abs(other.level - row.level) == 1]
        return min(map(self.left, beside)), max(map(self.right, beside))

    def at(self, position: float) -> float:
        """x of a chart position in half stitches."""
        return self.plan.x(position - self._zero) * self.scale

    @cached_property
    def _zero(self) -> int:
        return min(row.first for row in self.piece.rows)

    def top(self, row: Row) -> float:
        return self.height - self.plan.tops[row.number] * self.scale

    def bottom(self, row: Row) -> float:
        return self.height - self.plan.bottoms[row.number] * self.scale

    def middle(self, row: Row) -> float:
        return (self.top(row) + self.bottom(row)) / 2

    def label(self, row: Row) -> float:
        """y of what stands beside a row. Rows 1 and 2 of interlocked rows start on the same side, so their labels part a little."""
        shift = {1: 0.25, 2: -0.25}.get(row.number, 0.0) if self.plan.interlocked else 0.0
        return self.middle(row) + shift * self.bead

    def spot(self, row: Row, index: int, level: int) -> tuple[float, float]:
        """Centre of one bead."""
        spot = self.plan.spots[row_place(row, index, level)]
        return spot.x * self.scale, self.height - spot.y * self.scale

    def runs(self, row: Row, by_key: bool = True) -> Iterator[Run]:
        """The row's beads as runs; without `by_key`, beads of one size make a run whatever their colour."""
        for level in range(max(len(stitch.beads) for stitch in row.stitches)):
            cells = [(stitch.at - 2 * index, round(self.spot(row, index, level)[1], 6), stitch.beads[level], index)
                     for index, stitch in enumerate(row.stitches) if level < len(stitch.beads)]
            for _, same in groupby(cells, lambda cell: (cell[0], cell[1], self._sort(cell[2], by_key))):
                run = list(same)
                x, y = self.spot(row, run[0][3], level)
                yield Run(run[0][2], x, y, len(run), self.pitch)

    @property
    def pitch(self) -> float:
        """mm from one stitch of a row to the next."""
        return 2 * self.plan.share * self.plan.cell * self.scale if self.plan.lying else self.bead

    def _sort(self, key: str, by_key: bool) -> object:
        kind = self.piece.legend[key].kind
        return key if by_key else (kind.diameter, kind.length, kind.shape)


def body_grid(piece: Piece, bead: float) -> Grid:
    """Lay out the body of a piece, workable or not, at `bead` mm across a bead. Rows without stitches are left out."""
    body, plan = _laid_out(piece)
    return Grid(body, bead, plan, bead / plan.pitch if body.rows else 1.0)


@kept
def _laid_out(piece: Piece) -> tuple[Piece, Layout]:
    """The body alone, and its layout, which is the same at every size."""
    body = replace(piece, rows=tuple(row for row in piece.rows if row.stitches), strands=(), hangers=())
    return body, layout(body) if body.rows else Layout(1.0, {}, {}, {}, 1.0)
