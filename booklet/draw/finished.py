"""The finished view: body, fringe and hanger as they will look, at true proportion and without letters."""

from __future__ import annotations

from dataclasses import replace
from itertools import groupby
from math import atan2, pi

from ..craft.hanger import hanger_stitches, top_row
from ..craft.piece import Piece, Stitch, Strand
from ..craft.size import size
from ..craft.stitches import stitch_of
from .beads import OUTLINED, Track
from .chart import Box
from .glass import single, string_run, woven_run
from .grid import body_grid
from .hang import SPREAD, Hung, hang, track
from .hanger import Carrier, draw_hanger, hanger_reach
from .picture import Blank, Picture, Point, Style, polyline
from .said import beads_named, counted
from .strands import end_offsets

MARGIN = 0.5      # mm round the picture
END_GAP = 0.12    # real mm round end beads
THREAD = "#8f867c"
PAIR_GAP = 7.0    # real mm between the two pieces of a pair
BODY = ("ground", "beads", "lights")
BEHIND = ("ground-behind", "beads-behind", "lights-behind")
BEFORE = ("ground-before", "beads-before", "lights-before")
LAYERS = ("metal", "thread", *BODY, *BEHIND, *BEFORE)


def finished_svg(piece: Piece, *, scale: float = 2.0, prefix: str = "finished") -> str:
    """The piece, `scale` times its real size. Narrow beads are drawn with less light, so small pictures stay clear."""
    return _pictured([piece], scale, finished_alt(piece), prefix)


def pair_svg(piece: Piece, *, mirror: bool = False, scale: float = 2.0, prefix: str = "pair") -> str:
    """Two pieces side by side; the second one is turned over if `mirror` says so."""
    return _pictured([piece, mirrored(piece) if mirror else piece], scale, pair_alt(piece, mirror=mirror), prefix)


def finished_size(piece: Piece, scale: float, pieces: int = 1) -> tuple[float, float]:
    """Width and height in mm of `finished_svg`, or of `pair_svg` with two pieces."""
    return _side_by_side(Blank(), [piece] * pieces, scale).size


def fit_finished(piece: Piece, width: float, height: float, pieces: int = 1) -> float:
    """The scale, to a hundredth, at which the finished view is as large as width x height mm allow."""
    one_wide, one_high = finished_size(piece, 1.0, pieces)   # all but the margin grows with the scale
    scale = min((width - 2 * MARGIN) / (one_wide - 2 * MARGIN), (height - 2 * MARGIN) / (one_high - 2 * MARGIN))
    return max(int(scale * 100), 1) / 100


def finished_alt(piece: Piece) -> str:
    """What the finished view shows, in words."""
    return f"The finished piece{_described(piece)}"


def pair_alt(piece: Piece, *, mirror: bool = False) -> str:
    """What the view of the pair shows, in words."""
    second = "the second turned over" if mirror else "both alike"
    return f"The finished pair, {second}; each piece{_described(piece)}"


def _described(piece: Piece) -> str:
    if not any(row.stitches for row in piece.rows):
        return ", without rows."
    measured = size(replace(piece, rows=tuple(row for row in piece.rows if row.stitches)))
    parts = [f"a body of {counted(len(piece.rows), 'row')}"]
    if piece.strands:
        parts.append(f"a fringe of {counted(len(piece.strands), 'strand')}")
    if piece.hanger.kind == "guard":
        parts.append("a thread guard with a plain ring")
    elif piece.hanger.beads:
        parts.append(f"a loop of {counted(len(piece.hanger.beads), 'bead')}")
    keys = [key for row in piece.rows for stitch in row.stitches for key in stitch.beads]
    keys += [key for strand in piece.strands for key in strand.all] + list(piece.hanger.beads)
    return (f", {measured.width:.0f} mm wide and {measured.length:.0f} mm long without the ear wire: "
            f"{', '.join(parts)}. Beads: {beads_named(piece, keys)}.")


def mirrored(piece: Piece) -> Piece:
    """The piece turned over, for drawing: left and right of body and fringe exchanged."""
    lying = stitch_of(piece).LYING   # a set that lies is turned over too
    rows = tuple(replace(row, stitches=tuple(Stitch(-s.at, s.beads[::-1] if lying else s.beads) for s in reversed(row.stitches))) for row in piece.rows)
    strands = tuple(replace(strand, number=number) for number, strand in enumerate(reversed(piece.strands), 1))
    return replace(piece, rows=rows, strands=strands, hanger=replace(piece.hanger, beads=piece.hanger.beads[::-1]))


def _pictured(pieces: list[Piece], scale: float, alt: str, prefix: str) -> str:
    picture = Picture(LAYERS)
    box = _side_by_side(picture, pieces, scale)
    return picture.svg(box.left, box.top, *box.size, alt=alt, prefix=prefix)


def _side_by_side(picture: Picture, pieces: list[Piece], scale: float) -> Box:
    """Draw the pieces from left to right; the part of the plane that they take."""
    boxes = [_draw(picture, pieces[0], scale, 0.0)]
    for piece in pieces[1:]:
        reach = _draw(Blank(), piece, scale, 0.0).left   # how far it hangs out beyond its body
        boxes.append(_draw(picture, piece, scale, boxes[-1].right + PAIR_GAP * scale - reach))
    return Box(boxes[0].left - MARGIN, min(box.top for box in boxes) - MARGIN,
               boxes[-1].right + MARGIN, max(box.bottom for box in boxes) + MARGIN)


def _draw(picture: Picture, piece: Piece, scale: float, left: float) -> Box:
    """Draw one piece with the left edge of its body at x = `left` and the top of it at y = 0. Returns the room it takes."""
    view = _View(picture, piece, scale, left)
    view.body()
    view.fringe()
    return view.box(view.hanger())


class _View:
    """One piece on its way into a picture; remembers how far beads reach."""

    def __init__(self, picture: Picture, piece: Piece, scale: float, left: float) -> None:
        plan = body_grid(piece, scale).plan
        self.picture, self.scale, self.left = picture, scale, left
        self.grid = body_grid(piece, plan.pitch * scale)
        self.piece, self.legend = piece, piece.legend
        self.reach = [(left, 0.0), (left + self.grid.width, self.grid.height)]   # points that the picture must hold

    def box(self, top: float) -> Box:
        xs, ys = zip(*self.reach)
        return Box(min(xs), min(top, *ys), max(xs), max(ys))

    def body(self) -> None:
        for row in self.grid.piece.rows:
            for run in self.grid.runs(row):
                bead, x = self.legend[run.key], run.x + self.left
                if bead.kind.shape in OUTLINED:
                    for index in range(run.count):
                        single(self.picture, BODY, bead, x + index * run.pitch, run.y, self.scale, pi / 2 if self.grid.plan.lying else 0.0)
                elif self.grid.plan.lying:
                    string_run(self.picture, BODY, bead, Track.back(x, run.y, run.pitch, run.count), self.scale)
                else:
                    woven_run(self.picture, BODY, bead, Track.across(x, run.y, run.pitch, run.count), self.scale)

    def fringe(self) -> None:
        lengths = {key: bead.kind.length * self.scale for key, bead in self.legend.items()}
        for strand in self.piece.strands:
            # Neighbours may touch, so every second strand is painted after those beside it.
            layers = BEFORE if strand.number % 2 else BEHIND
            x, y = self._anchor(strand)
            beads = hang(strand, x, y, lengths, self.scale, self._lean(strand))
            for key, same in groupby(beads, lambda hung: hung.key):
                self._string(layers, key, list(same))
            self._end(layers, strand, beads[-1].foot if beads else (x, y))

    def _lean(self, strand: Strand) -> float:
        """Strands whose ends are wider than a stitch push each other outward."""
        widths = [len(other.end) > 1 or self.legend[key].kind.diameter * self.scale > self.grid.bead
                  for other in self.piece.strands for key in other.end]
        count = len(self.piece.strands)
        return SPREAD * (2 * strand.number - count - 1) / (count - 1) if any(widths) and count > 1 else 0.0

    def _anchor(self, strand: Strand) -> Point:
        """Where a strand leaves the base row."""
        stitches = self.grid.piece.base.stitches if self.grid.piece.rows else ()
        if not stitches:
            return self.left + (strand.number - 0.5) * self.grid.bead, 0.0
        at = stitches[min(strand.number, len(stitches)) - 1].at
        return self.left + self.grid.at(at), self.grid.bottom(self.grid.piece.base)

    def _string(self, layers: tuple[str, str, str], key: str, beads: list[Hung]) -> None:
        bead, half = self.legend[key], self.legend[key].kind.diameter * self.scale / 2
        for hung in beads:
            self.reach += [(hung.foot[0] - half, hung.foot[1]), (hung.foot[0] + half, hung.foot[1])]
        if bead.kind.shape in OUTLINED:
            for hung in beads:
                single(self.picture, layers, bead, *hung.middle, self.scale)
        else:
            string_run(self.picture, layers, bead, track(beads, bead.kind.length * self.scale), self.scale)

    def _end(self, layers: tuple[str, str, str], strand: Strand, foot: Point) -> None:
        """The end beads, each turned the way the thread runs through it."""
        kinds = [self.legend[key].kind for key in strand.end]
        places = [(foot[0] + dx, foot[1] + dy) for dx, dy in end_offsets(kinds, END_GAP * self.scale, self.scale)]
        line = [foot, *places, foot]
        if places:
            self.picture.add("thread", Style(stroke=THREAD, width=0.12 * self.scale, round=True), polyline(line))
        for key, before, (x, y), after in zip(strand.end, line, places, line[2:]):
            turn = atan2(before[0] - after[0], after[1] - before[1]) if len(places) > 1 else 0.0
            single(self.picture, layers, self.legend[key], x, y, self.scale, turn)
            reach = max(self.legend[key].kind.diameter, self.legend[key].kind.length) * self.scale / 2
            self.reach += [(x - reach, y), (x + reach, y + reach)]

    def hanger(self) -> float:
        """Draw the hanger; returns the y of its upper edge."""
        if not self.grid.piece.rows or self.piece.hanger.kind == "none":
            return 0.0
        top = top_row(self.grid.piece)
        left, right = (self.left + self.grid.at(top.stitches[index].at) for index in hanger_stitches(self.grid.piece))
        place = Carrier(left, right, self.grid.top(top), self.scale)
        reach = hanger_reach(self.piece, place)
        self.reach += [(place.middle - reach, 0.0), (place.middle + reach, 0.0)]
        return draw_hanger(self.picture, self.piece, place)
