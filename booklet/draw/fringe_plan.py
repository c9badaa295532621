"""Where the fringe chart draws things: the places of strands, spread so far apart that nothing of neighbours touches."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cached_property
from itertools import accumulate, groupby, pairwise

from msgspec import Struct
from msgspec.structs import replace

from ..craft.beads import BeadKind
from ..craft.kept import kept
from ..craft.piece import Piece, Row
from ..craft.places import HangingPlace, places
from ..craft.stitches import stitch_of
from ..craft.strand import LOOP, Strand
from . import alphabet
from .chart import FIVE, MARGIN, Box, gap_of
from .columns import Columnist, Columns
from .labels import LEAST_CAP, MOST_CAP

NEAR = 1e-6      # mm: what is nearer only touches
PART_GAP = 0.5   # columns between the parts of a row
Rim = tuple[float, float, float, float]   # top, bottom, left, right, mm


class Plan(Struct, frozen=True, dict=True):
    """Where the fringe chart draws things, mm. Stitches and strands hang from y = 0 down."""

    piece: Piece
    bead: float     # mm that the body's bead diameter takes
    scale: float
    cap: float      # height of figures

    @property
    def gap(self) -> float:
        return gap_of(self.bead)

    @cached_property
    def places(self) -> tuple[HangingPlace, ...]:
        return places(self.piece)

    @property
    def columns(self) -> int:
        """Places, and columns for strands that have none."""
        return max([len(self.places), *(max(strand.number, strand.number + strand.to) for strand in self.piece.strands)])

    @cached_property
    def top(self) -> float:
        """y of the lower edge of the stitches from which the strands hang."""
        hung = [[self.kind(key) for key in row.stitches[index].beads] for row, index, *_ in self._carrying()]
        if self.lying:
            return max((kind.diameter * self.scale for kinds in hung for kind in kinds), default=0.0)
        return max((sum(kind.length for kind in kinds) * self.scale for kinds in hung), default=0.0)

    @cached_property
    def pitch(self) -> float:
        """mm from place to place."""
        widest = max((alphabet.width(str(len(strand.all)), 0.8 * self.cap) for strand in self.piece.strands), default=0.0)
        labels = max((2 * label_aside(self, strand) + alphabet.width("00", self.cap) for strand in self.piece.strands if strand.kind == LOOP), default=0.0)
        sets = [sum(map(self.length, row.stitches[index].beads)) + self.gap for row, index, *_ in self._carrying()] if self.lying else []
        return max([self.bead + self.gap, widest + self.cap, labels, *sets, *_spreads(self)])

    @property
    def lying(self) -> bool:
        """Whether the beads of the base row lie along it."""
        return stitch_of(self.piece).LYING

    @property
    def start(self) -> float:
        """y at which strands begin, below the stitches and the strand numbers."""
        return self.top + 2.4 * self.cap

    def stitches(self) -> Iterator[tuple[Row, int, float]]:
        """Every stitch from which strands hang (row, index) and its x; those of bridges stand between the places."""
        for row, index, column, aside in self._carrying():
            yield row, index, self.x(column) + aside * self.pitch

    def _carrying(self) -> Iterator[tuple[Row, int, int, float]]:
        """The same stitches, with the column of a place and how many columns they stand beside it."""
        for column, place in enumerate(self.places):
            if not place.bridge:
                yield place.row, place.index, column, 0.0
                continue
            if place.index == 0:
                yield place.row, 0, column, -0.5
            yield place.row, place.index + 1, column, 0.5

    def kind(self, key: str) -> BeadKind:
        return self.piece.legend[key].kind

    def length(self, key: str) -> float:
        return self._columnist.lengths[key]

    def x(self, column: int) -> float:
        """Middle of a column, 0 first; between the parts of a row there is a gap."""
        wide = (1.0 if self.piece.hang == "bridges" else 0.0) + PART_GAP   # on bridges each part has one more stitch than places
        gaps = self._gaps[min(column, len(self._gaps) - 1)] if column > 0 else 0
        return (column + 0.5 + wide * gaps * (self.piece.hang != "edge")) * self.pitch

    @cached_property
    def _gaps(self) -> list[int]:
        """Gaps between parts up to each place."""
        return list(accumulate((one.row.part != two.row.part and one.row.number == two.row.number for one, two in pairwise(self.places)), initial=0))

    @property
    def width(self) -> float:
        """From the left of the first column to the right of the last one."""
        return self.x(self.columns - 1) + self.pitch / 2

    @cached_property
    def strands(self) -> dict[int, Columns]:
        """What every strand shows, by its number, from its own middle and start."""
        laid: dict[Strand, Columns] = {}   # many fringes have the same strand at several places
        for strand in self.piece.strands:
            alike = replace(strand, number=0)
            laid[strand] = laid[alike] = laid.get(alike) or self._columnist.columns(strand, self.piece.along)
        return {strand.number: laid[strand] for strand in self.piece.strands}

    @cached_property
    def _columnist(self) -> Columnist:
        return Columnist(self.piece.legend, self.scale, self.bead, self.gap)

    @cached_property
    def rims(self) -> dict[int, list[Rim]]:
        """The rims of every strand, by its number."""
        alike = {id(shown): shown for shown in self.strands.values()}
        found = {name: _rims(self, shown) for name, shown in alike.items()}
        return {number: found[id(shown)] for number, shown in self.strands.items()}

    def foot(self, strand: Strand) -> float:
        """y of the lowest edge of a strand."""
        return self.start + max((low for _, low, _, _ in self.rims[strand.number]), default=0.0)

    @cached_property
    def box(self) -> Box:
        """All that the chart takes."""
        return _box(self)


def fringe_plan(piece: Piece, bead: float) -> Plan:
    """Lay out the fringe chart."""
    known = _plans(piece)
    if bead not in known:
        keys = {key for row in piece.rows for stitch in row.stitches for key in stitch.beads}
        across = max((piece.legend[key].kind.diameter for key in keys), default=1.6)
        known[bead] = Plan(piece, bead, bead / across, min(MOST_CAP, max(LEAST_CAP, 0.5 * bead)))
    return known[bead]


@kept
def _plans(piece: Piece) -> dict[float, Plan]:
    """The plans of a piece by the size of their beads: the chart is drawn at a size that was tried before."""
    return {}


def _spreads(plan: Plan) -> list[float]:
    """For each two neighbours, how far apart their places must be so that nothing of theirs touches."""
    rims = sorted(plan.rims.items(), key=lambda numbered: numbered[0])
    return [max((one[3] - two[2] for one in left for two in right if one[0] < two[1] - NEAR and two[0] < one[1] - NEAR), default=0.0) / (after - number)
            + 0.22 * plan.bead for (number, left), (after, right) in zip(rims, rims[1:])]


def _rims(plan: Plan, shown: Columns) -> list[Rim]:
    """Top, bottom, left and right of runs of beads and of charms, seen from the strand's line."""
    rims = []
    for run in (*shown.runs, *([bead] for bead in shown.ends)):
        for half, same in groupby(run, lambda bead: plan.kind(bead.key).diameter * plan.scale / 2):
            beads = [(bead.y, plan.length(bead.key) / 2, bead.x) for bead in same]
            x = beads[0][2]
            rims.append((min(y - long for y, long, _ in beads), max(y + long for y, long, _ in beads), x - half, x + half))
    half = plan.bead / 2
    return rims + [(charm.y - half, charm.y + half, charm.x - half, charm.x + half) for charm in shown.charms]


def _box(plan: Plan) -> Box:
    small = 0.8 * plan.cap
    feet = [plan.foot(strand) for strand in plan.piece.strands]
    lefts, rights = [0.0], [plan.width]
    if plan.piece.hang == "bridges":
        lefts.append(-plan.bead / 2)
        rights.append(plan.width + plan.bead / 2)
    for strand in plan.piece.strands:
        x = plan.x(strand.number - 1)
        for _top, _low, left, right in plan.rims[strand.number]:
            lefts.append(x + left)
            rights.append(x + right)
    if side_marks(plan):
        lefts.append(-alphabet.width("00", small) - 1.2 * plan.cap)
    edge = MARGIN + 1.6 * plan.gap
    return Box(min(lefts) - edge, -edge, max(rights) + edge, below(plan, max(feet, default=plan.start)))


def below(plan: Plan, foot: float) -> float:
    """y under the count of a strand that ends at `foot`."""
    return foot + 1.5 * plan.cap + MARGIN + 1.6 * plan.gap


def foot_between(plan: Plan, left: float, right: float) -> float:
    """y under the longest of the strands that hang between two places."""
    return below(plan, max((plan.foot(strand) for strand in plan.piece.strands if left < plan.x(strand.number - 1) < right), default=plan.start))


def label_aside(plan: Plan, strand: Strand) -> float:
    """How far the numbers of a loop's two places stand from its middle."""
    half = max((plan.kind(key).diameter for key in strand.beads), default=0.0) * plan.scale / 2
    return max(half, 0.62 * alphabet.width("00", plan.cap))


def side_marks(plan: Plan) -> list[tuple[int, float]]:
    """Every fifth bead and the y of its lower edge, where all strands' beads are equally long and hang in one line each; else nothing."""
    lengths = {plan.length(key) for strand in plan.piece.strands for key in strand.beads}
    straight = all(len(shown.runs) == 1 for shown in plan.strands.values() if shown.runs)
    if len(lengths) != 1 or not straight:
        return []
    longest, step = max(len(strand.beads) for strand in plan.piece.strands), lengths.pop()
    return [(count, plan.start + count * step) for count in range(FIVE, longest, FIVE)]
