"""The finished view: body, fringe and hanger as they will look, at true proportion and without letters."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from math import pi

from msgspec.structs import replace

from ..craft.hanger import carriers, top_row
from ..craft.language import _, decimal, ngettext
from ..craft.pair import mirrored, places_across
from ..craft.piece import Piece
from ..craft.places import places
from ..craft.size import size
from ..craft.strand import Strand
from .beads import OUTLINED, Track
from .chart import Box
from .glass import single, string_run, woven_run
from .grid import body_grid
from .hang import SPREAD
from .hanger import Carrier, draw_hanger, hanger_reach, hangers_said
from .hung_strands import BEFORE, BEHIND, TWIGS, StrandPainter
from .picture import Blank, Picture, Point
from .said import beads_named

MARGIN = 0.5      # mm round the picture
PAIR_GAP = 7.0    # real mm between the two pieces of a pair
BODY = ("ground", "beads", "lights")
LAYERS = ("metal", "thread", *BODY, *TWIGS, *BEHIND, *BEFORE, "charms")


def finished_svg(piece: Piece, *, scale: float = 2.0, prefix: str = "finished", on: Callable[[Iterable[str]], Picture] = Picture) -> str:
    """The piece, `scale` times its real size. Narrow beads are drawn with less light, so small pictures stay clear."""
    return _pictured([piece], scale, finished_alt(piece), prefix, on)


def pair_svg(piece: Piece, *, mirror: bool = False, scale: float = 2.0, prefix: str = "pair") -> str:
    """Two pieces side by side; the second one is the mirror image of the first if `mirror` says so."""
    return _pictured([piece, mirrored(piece) if mirror else piece], scale, pair_alt(piece, mirror=mirror), prefix)


def finished_size(piece: Piece, scale: float, pieces: int = 1) -> tuple[float, float]:
    """Width and height in mm of `finished_svg`, or of `pair_svg` with two pieces."""
    return _side_by_side(Blank(), [piece] * pieces, scale).size


def fit_finished(piece: Piece, width: float, height: float, pieces: int = 1) -> float:
    """The scale, to a hundredth, at which the finished view is as large as width x height mm allow."""
    return fitting(finished_size(piece, 1.0, pieces), width, height)


def fitting(life_size: tuple[float, float], width: float, height: float) -> float:
    """The same scale from the width and height of the view at scale 1: all but the margin grows with the scale."""
    one_wide, one_high = life_size
    scale = min((width - 2 * MARGIN) / (one_wide - 2 * MARGIN), (height - 2 * MARGIN) / (one_high - 2 * MARGIN))
    return max(int(scale * 100), 1) / 100


def finished_alt(piece: Piece) -> str:
    """What the finished view shows, in words."""
    return _("The finished piece{described}", described=_described(piece))


def pair_alt(piece: Piece, *, mirror: bool = False) -> str:
    """What the view of the pair shows, in words."""
    described = _described(piece)
    return _("The finished pair, the second the mirror image of the first; each piece{described}", described=described) if mirror else \
        _("The finished pair, both alike; each piece{described}", described=described)


def _described(piece: Piece) -> str:
    if not any(row.stitches for row in piece.rows):
        return _(", without rows.")
    measured = size(replace(piece, rows=tuple(row for row in piece.rows if row.stitches)))
    parts = [ngettext("a body of {count} row", "a body of {count} rows", len(piece.drawn))]
    if piece.strands:
        charms = sum(len(strand.charms) for strand in piece.strands)
        fringe = ngettext("a fringe of {count} strand", "a fringe of {count} strands", len(piece.strands))
        parts.append(ngettext("{fringe} with {count} charm", "{fringe} with {count} charms", charms, fringe=fringe) if charms else fringe)
    parts += hangers_said(piece)
    keys = [key for row in piece.rows for stitch in row.stitches for key in stitch.beads]
    keys += [key for strand in piece.strands for key in strand.all] + [key for hanger in piece.hangers for key in hanger.beads]
    return _(", {width} mm wide and {length} mm long without the ear wire: {parts}. Beads: {beads}.",
             width=decimal(measured.width, 0), length=decimal(measured.length, 0), parts=", ".join(parts), beads=beads_named(piece, keys))


def _pictured(pieces: list[Piece], scale: float, alt: str, prefix: str, on: Callable[[Iterable[str]], Picture] = Picture) -> str:
    picture = on(LAYERS)
    box = _side_by_side(picture, pieces, scale)
    return picture.svg(box.left, box.top, *box.size, alt=alt, prefix=prefix)


def _side_by_side(picture: Picture, pieces: list[Piece], scale: float) -> Box:
    """Draw the pieces from left to right; the part of the plane that they take."""
    boxes = [_draw(picture, pieces[0], scale, 0.0)]
    for piece in pieces[1:]:
        alone = boxes[0] if piece is pieces[0] else _draw(Blank(), piece, scale, 0.0)
        reach = alone.left   # how far it hangs out beyond its body
        boxes.append(_draw(picture, piece, scale, boxes[-1].right + PAIR_GAP * scale - reach))
    return Box(boxes[0].left - MARGIN, min(box.top for box in boxes) - MARGIN,
               boxes[-1].right + MARGIN, max(box.bottom for box in boxes) + MARGIN)


def _draw(picture: Picture, piece: Piece, scale: float, left: float) -> Box:
    """Draw one piece with the left edge of its body at x = `left` and the top of it at y = 0. Returns the room it takes."""
    view = _View(picture, piece, scale, left)
    view.body()
    view.fringe()
    return view.box(view.hangers())


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
        """The beads of the body, which reach no further than the grid."""
        if not self.picture.draws:
            return
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
        painter = StrandPainter(self.picture, self.legend, self.piece.charms, self.scale, self.reach)
        for index, strand in enumerate(sorted(self.piece.strands, key=lambda strand: strand.number)):
            # Neighbours may touch, so every second strand is painted after those beside it.
            layers = BEHIND if index % 2 else BEFORE
            start, stop = self._anchor(strand.number), self._anchor(strand.number + strand.to)
            painter.paint(strand, start, stop, self._lean(strand), layers)

    def _lean(self, strand: Strand) -> float:
        """Strands whose ends are wider than a stitch push each other outward."""
        widths = [len(other.end) > 1 or self.legend[key].kind.diameter * self.scale > self.grid.bead
                  for other in self.piece.strands for key in other.end]
        count = places_across(self.piece)
        return SPREAD * (2 * strand.number - count - 1) / (count - 1) if any(widths) and count > 1 else 0.0

    def _anchor(self, number: int) -> Point:
        """Where the strand of a place leaves the body."""
        hanging = places(self.grid.piece)
        if not hanging:
            return self.left + (number - 0.5) * self.grid.bead, 0.0
        place = hanging[min(max(number, 1), len(hanging)) - 1]
        return self.left + self.grid.at(place.at), self.grid.bottom(place.row)

    def hangers(self) -> float:
        """Draw the hangers; returns the y of their upper edge."""
        if not self.grid.piece.rows:
            return 0.0
        highest = 0.0
        for hanger in self.piece.hangers:
            top = top_row(self.grid.piece, hanger.at)
            left, right = (self.left + self.grid.at(top.stitches[index].at) for index in carriers(self.grid.piece, hanger))
            place = Carrier(left, right, self.grid.top(top), self.scale)
            reach = hanger_reach(self.legend, hanger, place)
            self.reach += [(place.middle - reach, 0.0), (place.middle + reach, 0.0)]
            highest = min(highest, draw_hanger(self.picture, self.legend, hanger, place))
        return highest
