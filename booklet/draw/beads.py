"""Beads on a line: a run of equal beads is a dashed stroke.

A bead with soft corners is three strokes: a middle one with square ends, and a thinner one with round ends along
either side. So a run of any number of beads costs three lines. Drops and bicones are drawn one by one, as outlines.
"""

from __future__ import annotations

from functools import cached_property, lru_cache
from math import cos, hypot, sin

from msgspec import Struct

from ..craft.beads import BeadKind
from .numbers import num
from .picture import Picture, Point, Style, line, polyline

OUTLINED = ("drop", "bicone")   # shapes that a dashed line cannot give
LEAST_DASH = 0.02               # mm; a dash of no length is drawn by some viewers and not by others


class Track(Struct, frozen=True, dict=True):
    """The line along which a run of equal beads lies, from the outer edge of the first cell to that of the last.

    A cell is the room of one bead, its share of the gaps included.
    """

    points: tuple[Point, ...]
    pitch: float    # mm from bead to bead

    @staticmethod
    def across(x: float, y: float, pitch: float, count: int) -> Track:
        """`count` beads to the right, the first centred on (x, y)."""
        left = x - pitch / 2
        return Track(((left, y), (left + pitch * count, y)), pitch)

    @staticmethod
    def back(x: float, y: float, pitch: float, count: int) -> Track:
        """The same beads from the right end to the left, so that the right-hand side of the line is up."""
        return Track(Track.across(x, y, pitch, count).points[::-1], pitch)

    @staticmethod
    def down(x: float, y: float, pitch: float, count: int) -> Track:
        """`count` beads downward, the first cell beginning at y."""
        return Track(((x, y), (x, y + pitch * count)), pitch)

    def beside(self, offset: float, start: float, stop: float) -> str:
        """Path data of the line moved `offset` mm to its right-hand side (y down), cut by `start` and `stop` mm."""
        if len(self.points) == 2:    # as most have
            return _beside(*self.points, offset, start, stop)
        points = [(x - across * offset, y + along * offset) for (x, y), (across, along) in zip(self.points, self._ways)]
        points[0] = _towards(points[0], points[1], start)
        points[-1] = _towards(points[-1], points[-2], stop)
        return polyline(points)

    @cached_property
    def _ways(self) -> list[tuple[float, float]]:
        """The direction of the line at each of its points, down and across."""
        points, ways = self.points, []
        for (ax, ay), (bx, by) in zip((points[0], *points[:-1]), (*points[1:], points[-1])):
            length = hypot(bx - ax, by - ay)
            ways.append(((by - ay) / length, (bx - ax) / length))
        return ways


def _towards(point: Point, goal: Point, step: float) -> Point:
    x, y = point
    across, down = goal[0] - x, goal[1] - y
    share = step / hypot(across, down)
    return x + across * share, y + down * share


def _beside(begin: Point, end: Point, offset: float, start: float, stop: float) -> str:
    """The same for a straight line; written out, because a picture has thousands of them."""
    (x, y), (end_x, end_y) = begin, end
    length = hypot(end_x - x, end_y - y)
    across, along = (end_y - y) / length * offset, (end_x - x) / length * offset
    x, y, end_x, end_y = x - across, y + along, end_x - across, end_y + along
    wide, high = end_x - x, end_y - y
    share = start / hypot(wide, high)
    x, y = x + wide * share, y + high * share
    wide, high = x - end_x, y - end_y
    share = stop / hypot(wide, high)
    return line(x, y, end_x + wide * share, end_y + high * share)


def lay(picture: Picture, layer: str, colour: str, track: Track, along: float, across: float, radius: float,
        shift: float = 0.0, aside: float = 0.0) -> None:
    """Draw the beads of a run, or a mark of the same place on each of them.

    They are `along` mm long on the line and `across` mm wide, with corners of `radius` mm. `shift` moves them on along
    the line and `aside` to its right-hand side, from the middle of their cells.
    """
    if not picture.draws or picture.run(layer, colour, track, along, across, radius, shift, aside):
        return
    for style, *place in _strokes(colour, track.pitch, along, across, radius, shift, aside):
        picture.add(layer, style, track.beside(*place))


@lru_cache(maxsize=1024)   # a picture has few kinds of beads in few colours
def _strokes(colour: str, pitch: float, along: float, across: float, radius: float, shift: float, aside: float) -> tuple[tuple[Style, float, float, float], ...]:
    """The lines that `lay` draws: their style, how far they lie beside the track, and what is cut off at its ends."""
    radius = min(radius, across / 2, (along - LEAST_DASH) / 2)
    start, stop = (pitch - along) / 2 + shift, (pitch - along) / 2 - shift
    found = []
    if across - 2 * radius > LEAST_DASH:
        found.append((Style(stroke=colour, width=across - 2 * radius, dash=(along, pitch - along)), aside, start, stop))
    if radius > 0:
        edge = Style(stroke=colour, width=2 * radius, dash=(along - 2 * radius, pitch - along + 2 * radius), round=True)
        offset = across / 2 - radius
        found += [(edge, side, start + radius, stop + radius) for side in {aside + offset: 0, aside - offset: 0}]
    return tuple(found)


def corner(kind: BeadKind, along: float, across: float) -> float:
    """Radius of a bead's corners in mm, for a bead drawn `along` x `across` mm."""
    return min(along, across) * (0.46 if kind.shape == "round" else 0.17)


def outline(kind: BeadKind, x: float, y: float, width: float, length: float, angle: float = 0.0) -> str:
    """Closed path of one drop or bicone centred on (x, y), turned by `angle` radians clockwise from upright."""
    half, turn = (width / 2, length / 2), (cos(angle), sin(angle))

    def at(u: float, v: float) -> str:
        across, down = u * half[0], v * half[1]
        return f"{num(x + across * turn[0] - down * turn[1])} {num(y + across * turn[1] + down * turn[0])}"

    if kind.shape == "bicone":
        corners = [(-0.3, -1), (0.3, -1), (1, 0), (0.3, 1), (-0.3, 1), (-1, 0)]
        return "M" + "L".join(at(u, v) for u, v in corners) + "z"
    return (f"M{at(-0.25, -1)}L{at(0.25, -1)}C{at(0.35, -0.6)} {at(1, -0.3)} {at(1, 0.2)}"
            f"C{at(1, 0.75)} {at(0.5, 1)} {at(0, 1)}C{at(-0.5, 1)} {at(-1, 0.75)} {at(-1, 0.2)}"
            f"C{at(-1, -0.3)} {at(-0.35, -0.6)} {at(-0.25, -1)}z")


def ellipse(x: float, y: float, width: float, height: float, angle: float = 0.0) -> str:
    """Closed path of an ellipse centred on (x, y), turned by `angle` radians clockwise."""
    turn, bend = (cos(angle), sin(angle)), 0.5523   # the usual share for a quarter circle as one curve

    def at(u: float, v: float) -> str:
        across, down = u * width / 2, v * height / 2
        return f"{num(x + across * turn[0] - down * turn[1])} {num(y + across * turn[1] + down * turn[0])}"

    return (f"M{at(0, -1)}C{at(bend, -1)} {at(1, -bend)} {at(1, 0)}C{at(1, bend)} {at(bend, 1)} {at(0, 1)}"
            f"C{at(-bend, 1)} {at(-1, bend)} {at(-1, 0)}C{at(-1, -bend)} {at(-bend, -1)} {at(0, -1)}z")
