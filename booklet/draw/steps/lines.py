"""How the thread runs from node to node: curves that leave and arrive in the direction of the holes."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cached_property
from math import hypot

from msgspec import Struct

from ..numbers import num
from ..picture import Point
from .nodes import LOW, Node

STIFF = 0.42               # of the way between two ends: how far a curve keeps its direction
HIGHER = 0.85              # more for every earlier curve between the same stitches
AROUND = 1.1               # clear of a bead that the thread goes round


class Leg(Struct, frozen=True, dict=True):
    """Thread between two nodes: cubic curves one after the other; it leads into an event."""

    event: int
    points: tuple[Point, ...]   # start, then two controls and an end for each curve

    @cached_property
    def path(self) -> str:
        (x, y), *rest = self.points
        curves = "".join("C" + " ".join(f"{num(px)} {num(py)}" for px, py in rest[at:at + 3]) for at in range(0, len(rest), 3))
        return f"M{num(x)} {num(y)}{curves}"

    def at(self, share: float) -> Point:
        """The point at a share (0 to 1) of the way."""
        count = (len(self.points) - 1) // 3
        piece = min(int(share * count), count - 1)
        return _cubic(self.points[3 * piece:3 * piece + 4], share * count - piece)

    def sampled(self, count: int = 9) -> list[Point]:
        return [self.at(k / (count - 1)) for k in range(count)]


def legs(found: Sequence[Node]) -> list[Leg]:
    """The thread between each two nodes; the turn round a bridge is a leg of its own."""
    made: list[Leg] = []
    seen: dict[tuple[frozenset, int], int] = {}
    for index, node in enumerate(found):
        if index:
            before = found[index - 1]
            pair = frozenset((before.lane, node.lane)), round(before.out[1])
            made.append(leg(node.event, before.end, before.out, node.start, node.into, seen.get(pair, 0), before.wide))
            seen[pair] = seen.get(pair, 0) + 1
        if node.kind == "bridge":
            made.append(_turn(node))
    return made


def leg(event: int, start: Point, out: Point, end: Point, into: Point, earlier: int = 0, wide: float = 0.0) -> Leg:
    """One curve; `earlier` tells how many go the same way already, and `wide` how wide the beads are that it comes out of."""
    dx, dy = end[0] - start[0], end[1] - start[1]
    away = hypot(dx, dy)
    along, arriving = dx * out[0] + dy * out[1], dx * into[0] + dy * into[1]
    turns = out[0] * into[0] + out[1] * into[1] < -0.5
    aside = abs(dx * out[1] - dy * out[0])
    if turns and along < -1.5 and aside < 0.5 * wide:
        return _round(event, start, out, end, into, wide)
    most = LOW + HIGHER * earlier if turns else 3.2
    reach = min(STIFF * away + (HIGHER * earlier if turns else 0.0), most)
    if not turns and along < 0 and arriving < 0:
        reach = max(reach, 1.6)
    far, near = (reach + max(0.0, along), reach + max(0.0, -along)) if turns else (reach, reach)
    return Leg(event, (start, (start[0] + out[0] * far, start[1] + out[1] * far),
                       (end[0] - into[0] * near, end[1] - into[1] * near), end))


def _round(event: int, start: Point, out: Point, end: Point, into: Point, wide: float) -> Leg:
    """Back past the bead that the thread has come out of, beside it."""
    side = 1.0 if end[0] - start[0] >= 0 else -1.0
    across = (abs(out[1]) * side, abs(out[0]) * side)
    reach = wide / 2 + AROUND
    middle = ((start[0] + end[0]) / 2 + across[0] * reach, (start[1] + end[1]) / 2 + across[1] * reach)
    back = (-out[0], -out[1])
    far = hypot(end[0] - start[0], end[1] - start[1]) / 2
    return Leg(event, (start, (start[0] + out[0] * 1.4, start[1] + out[1] * 1.4), (middle[0] - back[0] * far * 0.9, middle[1] - back[1] * far * 0.9), middle,
                       (middle[0] + back[0] * far * 0.5, middle[1] + back[1] * far * 0.5), (end[0] - into[0] * 1.0, end[1] - into[1] * 1.0), end))


def _turn(node: Node) -> Leg:
    """Round the bridge, or straight past it."""
    reach = 1.55 if node.into != node.out else 0.3
    (x, y), (end_x, end_y) = node.start, node.end
    return Leg(node.event, (node.start, (x + node.into[0] * reach, y + node.into[1] * reach), (end_x - node.out[0] * reach, end_y - node.out[1] * reach), node.end))


def split(points: Sequence[Point]) -> tuple[tuple[Point, ...], tuple[Point, ...]]:
    """The two halves of one curve."""
    def middle(one: Point, other: Point) -> Point:
        return (one[0] + other[0]) / 2, (one[1] + other[1]) / 2

    a, b, c, d = points
    ab, bc, cd = middle(a, b), middle(b, c), middle(c, d)
    abc, bcd = middle(ab, bc), middle(bc, cd)
    half = middle(abc, bcd)
    return (a, ab, abc, half), (half, bcd, cd, d)


def _cubic(points: Sequence[Point], t: float) -> Point:
    s = 1 - t
    shares = (s ** 3, 3 * s * s * t, 3 * s * t * t, t ** 3)
    return sum(share * point[0] for share, point in zip(shares, points)), sum(share * point[1] for share, point in zip(shares, points))
