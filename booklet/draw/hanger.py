"""A hanger above the body: a thread guard or a loop of beads with a plain ring in it, or a closed ring."""

from __future__ import annotations

from collections.abc import Mapping
from math import asin, cos, pi, sin

from msgspec import Struct

from ..craft.beads import Bead
from ..craft.language import _
from ..craft.piece import Hanger, Piece
from .beads import ellipse
from .glass import single
from .numbers import num
from .picture import Picture, Style, polyline
from .said import beads_counted

RING = 2.3           # mm, radius of the plain ring that stands for the ear wire
WIRE = 0.45          # mm
GUARD = 0.6          # mm, thickness of a guard
CLOSED_WIRE = 0.2    # of the size of a closed ring, thickness of its wire
THREAD = "#8f867c"
METAL, SHADE, SHINE = "#b9b4ac", "#7d766e", "#f3f0eb"


class Carrier(Struct, frozen=True):
    """Where the hanger stands: x of the two stitches that carry it and y of the top row's upper edge, drawn mm."""

    left: float
    right: float
    y: float
    scale: float

    @property
    def middle(self) -> float:
        return (self.left + self.right) / 2


def hangers_said(piece: Piece) -> list[str]:
    """The hangers in words, for text alternatives."""
    return [_placed(hanger) for hanger in piece.hangers]


def _placed(hanger: Hanger) -> str:
    said = _said(hanger)
    return {"left": _("{hanger} on the left", hanger=said), "right": _("{hanger} on the right", hanger=said)}.get(hanger.at, said)


def _said(hanger: Hanger) -> str:
    if hanger.kind == "loop":
        return _("a loop of {beads}", beads=beads_counted(len(hanger.beads)))
    return _("a thread guard with a plain ring") if hanger.kind == "guard" else _("a closed ring")


def hanger_reach(legend: Mapping[str, Bead], hanger: Hanger, at: Carrier) -> float:
    """How far the hanger reaches to either side of its middle, drawn mm."""
    if hanger.kind == "ring":
        return max(hanger.size * at.scale, at.right - at.left) / 2
    around = sum(legend[key].kind.length for key in hanger.beads) * at.scale + at.right - at.left
    thick = max((legend[key].kind.diameter for key in hanger.beads), default=0.0) * at.scale
    legs = (hanger.span + GUARD) / 2 * at.scale if hanger.kind == "guard" else 0.0
    return max((RING + WIRE) * at.scale, around / (2 * pi) + thick, legs)


def draw_hanger(picture: Picture, legend: Mapping[str, Bead], hanger: Hanger, at: Carrier) -> float:
    """Draw the hanger and return the y of its upper edge."""
    if hanger.kind == "guard":
        return _guard(picture, hanger, at)
    if hanger.kind == "ring":
        return _closed_ring(picture, hanger, at)
    return _loop(picture, legend, hanger, at) if hanger.beads else at.y


def _closed_ring(picture: Picture, hanger: Hanger, at: Carrier) -> float:
    """A ring that stands on the top row, with the thread round it and into the two stitches."""
    wire = CLOSED_WIRE * hanger.size * at.scale
    across, bottom = hanger.size * at.scale - wire, at.y - wire / 2
    _wire(picture, ellipse(at.middle, bottom - across / 2, across, across), wire)
    half = min(0.35 * at.scale, (at.right - at.left) / 2)
    over = at.y - 1.35 * wire
    for shift in (-0.08, 0.08):
        ends = [(at.left + shift * at.scale, at.y + 0.3 * at.scale), (at.middle - half + shift * at.scale, over),
                (at.middle + half + shift * at.scale, over), (at.right + shift * at.scale, at.y + 0.3 * at.scale)]
        picture.add("thread", Style(stroke=THREAD, width=0.2 * at.scale, round=True), polyline(ends))
    return bottom - across - wire / 2


def _guard(picture: Picture, hanger: Hanger, at: Carrier) -> float:
    """A bent wire with both feet in the top row; the ring goes through its bow."""
    half = hanger.span / 2 * at.scale
    tall, left, right = half + 1.3 * at.scale, at.middle - half, at.middle + half
    shoulder, bend = at.y - tall + half, 0.5523 * half
    bow = (f"M{num(left)} {num(at.y + 0.3 * at.scale)}V{num(shoulder)}"
           f"C{num(left)} {num(shoulder - bend)} {num(at.middle - bend)} {num(shoulder - half)} {num(at.middle)} {num(shoulder - half)}"
           f"C{num(at.middle + bend)} {num(shoulder - half)} {num(right)} {num(shoulder - bend)} {num(right)} {num(shoulder)}"
           f"V{num(at.y + 0.3 * at.scale)}")
    top = _ring(picture, at, at.y - tall + 0.75 * at.scale)
    _wire(picture, bow, GUARD * at.scale)
    return top


def _loop(picture: Picture, legend: Mapping[str, Bead], hanger: Hanger, at: Carrier) -> float:
    """Beads round a circle that rests on the two stitches, from the left one over the top to the right one."""
    kinds = [legend[key].kind for key in hanger.beads]
    total, thick = sum(kind.length for kind in kinds) * at.scale, max(kind.diameter for kind in kinds) * at.scale
    rest = min(at.right - at.left, 0.5 * total)
    # Stiff beads touch on the inside of the loop, so the thread in their holes runs half a bead further out.
    radius = (total + rest) / (2 * pi) + thick / 2
    opening = asin(min(1.0, rest / 2 / radius))
    turns, done = [], 0.0    # clockwise from straight down
    for kind in kinds:
        turns.append(opening + (done + kind.length * at.scale / 2) / total * (2 * pi - 2 * opening))
        done += kind.length * at.scale
    lowest = (radius + thick / 2) * cos(turns[0]) + kinds[0].length * at.scale / 2 * sin(turns[0])
    centre = at.y - max(lowest, radius * cos(opening))
    places = [(at.middle - radius * sin(turn), centre + radius * cos(turn)) for turn in turns]
    top = _ring(picture, at, centre - radius + 0.7 * thick)
    picture.add("thread", Style(stroke=SHADE, width=0.15 * at.scale, round=True),
                polyline([(at.left, at.y + 0.2 * at.scale), *places, (at.right, at.y + 0.2 * at.scale)]))
    for key, turn, (x, y) in zip(hanger.beads, turns, places):
        single(picture, ("ground", "beads", "lights"), legend[key], x, y, at.scale, turn + pi / 2)
    return min(top, centre - radius - thick / 2)


def _ring(picture: Picture, at: Carrier, bottom: float) -> float:
    """The plain ring, its lower edge at `bottom`. Returns its upper edge."""
    radius = RING * at.scale
    _wire(picture, ellipse(at.middle, bottom - radius, 2 * radius, 2 * radius), WIRE * at.scale)
    return bottom - 2 * radius - WIRE * at.scale


def _wire(picture: Picture, path: str, width: float) -> None:
    for colour, share in ((SHADE, 1.0), (METAL, 0.72), (SHINE, 0.2)):
        picture.add("metal", Style(stroke=colour, width=share * width, round=True), path)
