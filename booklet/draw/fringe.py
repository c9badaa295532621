"""The fringe chart: every strand under its base stitch, spread so far apart that the letters can be read."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import groupby
from math import pi

from ..craft.beads import BeadKind
from ..craft.piece import Piece, Strand
from ..craft.stitches import stitch_of
from . import alphabet, tone
from .beads import OUTLINED, Track, corner, lay, outline
from .chart import FIVE, MARGIN, Box, gap_of, letter_cap, put_letter
from .colour import WHITE
from .fit import LEAST_BEAD, Fit, largest
from .labels import LEAST_CAP, MOST_CAP, pen
from .picture import Picture, Style, polyline
from .said import beads_named, counted, span
from .strands import end_offsets

LAYERS = ("guides", "thread", "ground", "beads", "fives", "letters", "strand-numbers", "strand-totals", "bead-numbers")


@dataclass(frozen=True)
class Placed:
    """One bead of the fringe chart, centred on (x, y), mm."""

    key: str
    x: float
    y: float
    end: bool = False


@dataclass(frozen=True)
class Plan:
    """Where the fringe chart draws things, mm. Base row and strands hang from y = 0 down."""

    piece: Piece
    bead: float     # mm that the body's bead diameter takes
    scale: float
    pitch: float    # mm from strand to strand
    cap: float      # height of figures

    @property
    def gap(self) -> float:
        return gap_of(self.bead)

    @property
    def columns(self) -> int:
        return max(len(self.piece.base.stitches) if self.piece.rows else 0, len(self.piece.strands))

    @property
    def top(self) -> float:
        """y of the lower edge of the base row."""
        if self.lying:
            return max((self.kind(key).diameter * self.scale for stitch in self.base for key in stitch.beads), default=0.0)
        return max((sum(self.length(key) for key in stitch.beads) for stitch in self.base), default=0.0)

    @property
    def lying(self) -> bool:
        """Whether the beads of the base row lie along it."""
        return stitch_of(self.piece).LYING

    @property
    def start(self) -> float:
        """y at which strands begin, below the base row and the strand numbers."""
        return self.top + 2.4 * self.cap

    @property
    def base(self):
        return self.piece.base.stitches if self.piece.rows else ()

    def kind(self, key: str) -> BeadKind:
        return self.piece.legend[key].kind

    def length(self, key: str) -> float:
        return self.kind(key).length * self.scale

    def x(self, column: int) -> float:
        """Middle of a column, 0 first."""
        return (column + 0.5) * self.pitch

    def beads(self, strand: Strand) -> list[Placed]:
        """The strand's beads, then its end beads, in the order of picking up."""
        x, y, placed = self.x(strand.number - 1), self.start, []
        for key in strand.beads:
            placed.append(Placed(key, x, y + self.length(key) / 2))
            y += self.length(key)
        offsets = end_offsets([self.kind(key) for key in strand.end], 2.2 * self.gap, self.scale)
        return placed + [Placed(key, x + dx, y + dy, end=True) for key, (dx, dy) in zip(strand.end, offsets)]

    def foot(self, strand: Strand) -> float:
        """y of the lowest edge of a strand."""
        return max((bead.y + self.length(bead.key) / 2 for bead in self.beads(strand)), default=self.start)


def fringe_svg(piece: Piece, *, bead: float = LEAST_BEAD, grey: bool = False, blank: bool = False,
               prefix: str = "fringe") -> str:
    """Fringe chart at the scale of `chart_svg`: `bead` mm for the diameter of a body bead."""
    plan, shade, picture = fringe_plan(piece, bead), tone.tone_of(grey, blank), Picture(LAYERS)
    for column in range(plan.columns):
        _base_stitch(picture, plan, column, shade)
    for strand in piece.strands:
        _strand(picture, plan, strand, shade)
    _marks_at_side(picture, plan)
    box = _box(plan)
    return picture.svg(box.left, box.top, *box.size, alt=fringe_alt(piece), prefix=prefix)


def fringe_size(piece: Piece, bead: float) -> tuple[float, float]:
    """Width and height in mm of the fringe chart."""
    return _box(fringe_plan(piece, bead)).size


def fit_fringe(piece: Piece, width: float, height: float, most: float = 6.0) -> Fit:
    """The largest scale at which the fringe chart fits width x height mm, and whether its beads are wide enough to print."""
    return largest(lambda bead: fringe_size(piece, bead), width, height, most)


def fringe_alt(piece: Piece) -> str:
    """What the fringe chart shows, in words."""
    if not piece.strands:
        return "Fringe chart, without strands."
    ends = {len(strand.end) for strand in piece.strands}
    last = f", the last {ends.pop()} of each being end beads" if len(ends) == 1 and ends != {0} else ""
    keys = [key for strand in piece.strands for key in strand.all]
    return (f"Fringe chart: {counted(len(piece.strands), 'strand')}, numbered from the left, under the base row. "
            f"{'It has' if len(piece.strands) == 1 else 'Each has'} "
            f"{span((len(strand.all) for strand in piece.strands), 'bead')}{last}. Beads: {beads_named(piece, keys)}.")


def fringe_plan(piece: Piece, bead: float) -> Plan:
    """Lay out the fringe chart."""
    stitches = [key for row in piece.rows for stitch in row.stitches for key in stitch.beads]
    across = max((piece.legend[key].kind.diameter for key in stitches), default=1.6)
    cap = min(MOST_CAP, max(LEAST_CAP, 0.5 * bead))
    narrow = Plan(piece, bead, bead / across, 0.0, cap)
    widest = max((alphabet.width(str(len(strand.all)), 0.8 * cap) for strand in piece.strands), default=0.0)
    sets = [sum(map(narrow.length, stitch.beads)) + narrow.gap for stitch in narrow.base] if narrow.lying else []
    pitch = max([bead + narrow.gap, widest + cap, *sets, *_spreads(narrow)])
    return Plan(piece, bead, bead / across, pitch, cap)


def _spreads(plan: Plan) -> list[float]:
    """For each two neighbours, how far apart they must hang so that no beads of theirs touch."""
    rims = [_rims(plan, strand) for strand in plan.piece.strands]
    return [max((one[3] - two[2] for one in left for two in right if one[0] < two[1] and two[0] < one[1]), default=0.0)
            + 0.22 * plan.bead for left, right in zip(rims, rims[1:])]


def _rims(plan: Plan, strand: Strand) -> list[tuple[float, float, float, float]]:
    """Top, bottom, left and right of runs of beads, seen from the strand's line."""
    cells, middle = [], plan.x(strand.number - 1)
    for bead in plan.beads(strand):
        half, tall, x = plan.kind(bead.key).diameter * plan.scale / 2, plan.length(bead.key) / 2, bead.x - middle
        cells.append((bead.y - tall, bead.y + tall, x - half, x + half))
    return [(run[0][0], run[-1][1], sides[0], sides[1])
            for sides, same in groupby(cells, lambda cell: cell[2:]) for run in [list(same)]]


def _box(plan: Plan) -> Box:
    small = 0.8 * plan.cap
    feet = [plan.foot(strand) for strand in plan.piece.strands]
    lefts, rights = [0.0], [plan.columns * plan.pitch]
    for strand in plan.piece.strands:
        for bead in plan.beads(strand):
            half = plan.kind(bead.key).diameter * plan.scale / 2
            lefts.append(bead.x - half)
            rights.append(bead.x + half)
    if _side_marks(plan):
        lefts.append(-alphabet.width("00", small) - 1.2 * plan.cap)
    edge = MARGIN + 1.6 * plan.gap
    return Box(min(lefts) - edge, -edge, max(rights) + edge, max(feet, default=plan.start) + 0.7 * plan.cap + small + edge)


def _base_stitch(picture: Picture, plan: Plan, column: int, shade: str) -> None:
    """The base stitch, far back, and the number of its strand."""
    x, y = plan.x(column), plan.top
    if column < len(plan.base):
        beads = plan.base[column].beads
        x -= sum(map(plan.length, beads)) / 2 if plan.lying else 0.0
        for key in beads:
            fill, length = tone.pale(tone.shown(plan.piece.legend[key].colour, shade)), plan.length(key)
            if plan.lying:
                _lying(picture, plan, fill, Placed(key, x + length / 2, y - plan.kind(key).diameter * plan.scale / 2))
                x += length
            else:
                y -= length
                _run(picture, plan, tone.pale(tone.GAP), fill, [Placed(key, x, y + length / 2)])
        x = plan.x(column)
    if column < len(plan.piece.strands):
        picture.add("thread", Style(stroke=tone.THREAD, width=0.25), polyline([(x, plan.top), (x, plan.top + 0.55 * plan.cap)]))
        picture.add("strand-numbers", pen(tone.TEXT, plan.cap),
                    alphabet.word(str(column + 1), x, plan.top + 1.25 * plan.cap, plan.cap, "middle"))


def _lying(picture: Picture, plan: Plan, fill: str, bead: Placed) -> None:
    """One bead of the base row that lies along it, far back."""
    kind = plan.kind(bead.key)
    width, height = plan.length(bead.key) - plan.gap, kind.diameter * plan.scale - plan.gap
    for layer, colour, spread in (("ground", tone.pale(tone.GAP), 1.6 * plan.gap), ("beads", fill, 0.0)):
        if kind.shape in OUTLINED:
            picture.add(layer, Style(fill=colour, stroke=colour, width=spread, round=True), outline(kind, bead.x, bead.y, height, width, pi / 2))
        else:
            lay(picture, layer, colour, Track.across(bead.x, bead.y, plan.length(bead.key), 1), width + spread, height + spread,
                corner(kind, width, height) + spread / 2)


def _strand(picture: Picture, plan: Plan, strand: Strand, shade: str) -> None:
    beads = plan.beads(strand)
    line = [bead for bead in beads if not bead.end]
    x, foot = plan.x(strand.number - 1), plan.start + sum(plan.length(bead.key) for bead in line)
    thread = Style(stroke=tone.THREAD, width=0.25)
    picture.add("thread", thread, polyline([(x, plan.start - 0.4 * plan.cap), (x, foot)]))
    ends = [(bead.x, bead.y) for bead in beads if bead.end]
    if ends:
        picture.add("thread", thread, polyline([(x, foot), *ends, (x, foot)]))
    for key, same in groupby(line, lambda bead: bead.key):
        _run(picture, plan, tone.GAP, tone.shown(plan.piece.legend[key].colour, shade), list(same))
    for bead in beads:
        fill = tone.shown(plan.piece.legend[bead.key].colour, shade)
        if bead.end:
            _run(picture, plan, tone.GAP, fill, [bead])
        kind = plan.kind(bead.key)
        low = 0.12 * plan.length(bead.key) if kind.shape == "drop" else 0.0
        put_letter(picture, bead.key, fill, bead.x, bead.y + low,
                   min(0.62 * plan.bead, letter_cap(kind.diameter * plan.scale, plan.length(bead.key))))
    for bead, after in list(zip(line, line[1:]))[FIVE - 1::FIVE]:
        half = max(plan.kind(key).diameter for key in (bead.key, after.key)) * plan.scale / 2 + 0.09 * plan.bead
        y = bead.y + plan.length(bead.key) / 2
        picture.add("fives", Style(stroke=tone.TEXT, width=0.85 * plan.gap), polyline([(x - half, y), (x + half, y)]))
    _total(picture, str(len(beads)), x, plan.foot(strand) + 1.1 * plan.cap, 0.8 * plan.cap)


def _total(picture: Picture, number: str, x: float, y: float, cap: float) -> None:
    """The count below a strand, on a bit of paper of its own that keeps the light lines away from it."""
    half = alphabet.width(number, cap) / 2
    picture.add("thread", Style(stroke=WHITE, width=1.5 * cap, round=True), polyline([(x - half, y), (x + half, y)]))
    picture.add("strand-totals", pen(tone.QUIET, cap), alphabet.word(number, x, y, cap, "middle"))


def _run(picture: Picture, plan: Plan, ground: str, fill: str, beads: list[Placed]) -> None:
    """Equal beads one below the other, with the ground that shows round them."""
    first, kind = beads[0], plan.kind(beads[0].key)
    pitch = plan.length(first.key)
    width, length = kind.diameter * plan.scale - plan.gap, pitch - plan.gap
    for layer, colour, spread in (("ground", ground, 1.6 * plan.gap), ("beads", fill, 0.0)):
        if kind.shape in OUTLINED:
            style = Style(fill=colour, stroke=colour, width=spread, round=True)
            for bead in beads:
                picture.add(layer, style, outline(kind, bead.x, bead.y, width, length))
        else:
            track = Track.down(first.x, first.y - pitch / 2, pitch, len(beads))
            lay(picture, layer, colour, track, length + spread, width + spread, corner(kind, width, length) + spread / 2)


def _side_marks(plan: Plan) -> list[tuple[int, float]]:
    """Every fifth bead and the y of its lower edge, where all strands' beads are equally long; else nothing."""
    lengths = {plan.length(key) for strand in plan.piece.strands for key in strand.beads}
    if len(lengths) != 1:
        return []
    longest, step = max(len(strand.beads) for strand in plan.piece.strands), lengths.pop()
    return [(count, plan.start + count * step) for count in range(FIVE, longest, FIVE)]


def _marks_at_side(picture: Picture, plan: Plan) -> None:
    """Bead counts at the left, with light lines behind the strands."""
    small = 0.8 * plan.cap
    for count, y in _side_marks(plan):
        picture.add("guides", Style(stroke=tone.GUIDE, width=0.15),
                    polyline([(-0.3 * plan.cap, y), (plan.columns * plan.pitch, y)]))
        picture.add("bead-numbers", pen(tone.QUIET, small), alphabet.word(str(count), -0.8 * plan.cap, y, small, "end"))
