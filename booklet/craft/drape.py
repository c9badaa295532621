"""How the strands that do not hang straight lie: loops, twisted pairs and twigs.

Points are in mm or drawn mm, x to the right and y down; angles are radians clockwise from upright.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from math import acos, atan2, cos, hypot, pi, sin, sqrt, tau

from msgspec import Struct

from .strand import middles

Point = tuple[float, float]

TWIG_LEAN = 0.66       # radians from upright
WIDEST_BOW = 1.9       # mm: the radius to which stiff beads bend at the foot of a long loop
BOW_SHARE = 9.0        # shorter loops bend to this part of their length
TURN = 11.0            # mm of a twisted pair for a whole turn
TAKE_UP = 0.97         # what a line keeps of its length when it is twisted


class Draped(Struct, frozen=True):
    """One bead: its middle, how its hole is turned, and whether it lies in front."""

    x: float
    y: float
    angle: float
    front: bool = True


def twig_side(number: int) -> int:
    """Twigs of a strand, counted from 0, stand to the right and to the left by turns."""
    return -1 if number % 2 else 1


def twig(joint: Point, side: int, lengths: Sequence[float], clear: float) -> list[Draped]:
    """Beads of a twig, downward and to a side (1 right, -1 left); the first one begins `clear` from the joint."""
    across, down = side * sin(TWIG_LEAN), cos(TWIG_LEAN)
    return [Draped(joint[0] + across * (clear + middle), joint[1] + down * (clear + middle), -side * TWIG_LEAN)
            for middle in middles(lengths)]


def twist(top: Point, lengths: Sequence[float], half: float, first: bool, scale: float = 1.0) -> list[Draped]:
    """One line of a twisted pair, from the top down, `half` to either side of the middle."""
    start, beads = (pi / 2 if first else 3 * pi / 2), []
    for middle in middles(lengths):
        phase = start + tau * middle / (TURN * scale)
        slope = -half * tau / (TURN * scale) * sin(phase)
        beads.append(Draped(top[0] + half * cos(phase), top[1] + TAKE_UP * middle, -atan2(slope, TAKE_UP), sin(phase) >= 0))
    return beads


def loop(start: Point, stop: Point, lengths: Sequence[float], scale: float = 1.0) -> list[Draped]:
    """Beads of a loop from one place to another: straight to a round foot, and straight up again."""
    if start[0] > stop[0]:
        return loop(stop, start, lengths[::-1], scale)[::-1]
    total = sum(lengths)
    curve = _teardrop(start, stop, total, scale) or _sagging(start, stop, total)
    return [Draped(*curve(middle)) for middle in middles(lengths)]


def _teardrop(start: Point, stop: Point, total: float, scale: float) -> Callable[[float], tuple[float, float, float]] | None:
    """Two tangents to a circle below the middle; None where the beads are too few to go round it."""
    half = (stop[0] - start[0]) / 2
    radius = max(half, min(WIDEST_BOW * scale, total / BOW_SHARE)) + 1e-9
    x, high = start[0] + half, max(start[1], stop[1])
    near, far = high + sqrt(max(radius ** 2 - half ** 2, 0.0)) + 1e-9, high + total + radius
    if sum(_lengths(start, stop, (x, near), radius)[:3]) > total:
        return None
    for _ in range(60):
        y = (near + far) / 2
        near, far = (y, far) if sum(_lengths(start, stop, (x, y), radius)[:3]) < total else (near, y)
    down, arc, up, left, right = _lengths(start, stop, (x, near), radius)

    def at(done: float) -> tuple[float, float, float]:
        if done < down:
            foot = (x + radius * cos(left), near + radius * sin(left))
            return (*_between(start, foot, done / down), -atan2(foot[0] - start[0], foot[1] - start[1]))
        if done > down + arc:
            foot = (x + radius * cos(right), near + radius * sin(right))
            return (*_between(foot, stop, (done - down - arc) / up), -atan2(stop[0] - foot[0], stop[1] - foot[1]))
        turn = left - (done - down) / radius
        return x + radius * cos(turn), near + radius * sin(turn), turn - pi

    return at


def _lengths(start: Point, stop: Point, middle: Point, radius: float) -> tuple[float, float, float, float, float]:
    """Lengths of the left tangent, the arc and the right tangent, and the angles of the points where they touch."""
    tangents, angles = [], []
    for (x, y), side in ((start, -1), (stop, 1)):
        away = max(hypot(x - middle[0], y - middle[1]), radius)
        angles.append(atan2(y - middle[1], x - middle[0]) + side * acos(min(1.0, radius / away)))
        tangents.append(sqrt(away ** 2 - radius ** 2))
    left = angles[0] % tau
    arc = (left - angles[1]) % tau
    return tangents[0], radius * arc, tangents[1], left, angles[1]


def _sagging(start: Point, stop: Point, total: float) -> Callable[[float], tuple[float, float, float]]:
    """A shallow bow for a loop that hardly reaches from one place to the other."""
    sag = total / 3

    def at(done: float) -> tuple[float, float, float]:
        share = done / total
        x, y = _between(start, stop, share)
        slope = (stop[1] - start[1]) + 4 * sag * (1 - 2 * share)
        return x, y + 4 * sag * share * (1 - share), -atan2(stop[0] - start[0], slope)

    return at


def _between(one: Point, other: Point, share: float) -> Point:
    return one[0] + (other[0] - one[0]) * share, one[1] + (other[1] - one[1]) * share
