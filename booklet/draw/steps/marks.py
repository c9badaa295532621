"""What is drawn on the thread: the needle at its head, where it starts, arrows, numbers, and the findings it goes through."""

from __future__ import annotations

from collections.abc import Sequence
from math import cos, dist, hypot, pi, sin

from ...craft.events import Anchor, Guard, PickUp, Ring
from ...craft.scenes import Scene
from .. import alphabet
from ..beads import ellipse
from ..chart import Box
from ..colour import WHITE
from ..labels import pen
from ..numbers import num
from ..picture import Picture, Point, Style, polyline
from .lines import Leg
from .nodes import Node, guard_feet
from .opened import Opened

INK = "#16130f"
OUT, LONG, LEAN = 1.8, 6.2, 0.3    # mm from bead to needle, its length, and how far it leans (radians)
DISC, CAP = 1.22, 1.35              # radius of a number's disc and height of the figure
FAR = (1.75, 2.4)                   # of a disc from the thread that it numbers
RING = 7.0      # mm across a ring
CLEAR = DISC + 0.45                 # from its middle to the nearest thread
COMPASS = [(cos(k * pi / 6), sin(k * pi / 6)) for k in range(12)]
TAIL = 6.0      # mm of a loose tail
METAL, METAL_RIM = "#d9d5ce", "#6f685f"


def needle_points(last: Node, run: float) -> list[Point]:
    """The eye and the point of the needle that has come out of the last node."""
    (x, y), (dx, dy) = last.end, last.out
    eye = (x + dx * OUT, y + dy * OUT)
    turn = LEAN * run * (-dy if abs(dy) > abs(dx) else -1.0)
    way = (dx * cos(turn) - dy * sin(turn), dx * sin(turn) + dy * cos(turn))
    return [eye, (eye[0] + way[0] * LONG, eye[1] + way[1] * LONG)]


def finish(picture: Picture, scene: Scene, nodes: Sequence[Node], needle: Sequence[Point], width: float) -> None:
    """The needle on the thread; or its cut end, where it is woven in."""
    if not nodes:
        return
    thread = Style(stroke=INK, width=width, round=True)
    last = nodes[-1]
    if not needle:
        _cut(picture, last, thread)
        return
    eye, tip = needle
    picture.add("needle", thread, polyline([last.end, eye]))
    picture.add("needle", Style(fill=WHITE, stroke=INK, width=0.26, round=True), _needle(eye, tip))
    way = ((tip[0] - eye[0]) / LONG, (tip[1] - eye[1]) / LONG)
    picture.add("needle", Style(stroke=INK, width=0.3, round=True),
                polyline([(eye[0] + way[0] * 0.45, eye[1] + way[1] * 0.45), (eye[0] + way[0] * 1.3, eye[1] + way[1] * 1.3)]))


def _cut(picture: Picture, last: Node, thread: Style) -> None:
    """Open scissors on the thread close to the bead."""
    (x, y), out = last.end, last.out
    aside, cross = (-out[1], out[0]), (x + out[0] * 1.2, y + out[1] * 1.2)
    picture.add("needle", thread, polyline([last.end, (x + out[0] * 2.4, y + out[1] * 2.4)]))
    steel = Style(stroke=INK, width=0.35, round=True)
    for side in (-1, 1):
        def at(across: float, along: float, side: int = side) -> Point:
            return cross[0] + aside[0] * across + out[0] * along * side, cross[1] + aside[1] * across + out[1] * along * side

        picture.add("needle", steel, polyline([at(-1.9, -0.8), at(1.9, 0.9)]))
        picture.add("needle", steel, ellipse(*at(2.7, 1.25), 1.5, 1.5))


def _needle(eye: Point, tip: Point) -> str:
    """A slim needle, round at its eye."""
    way = ((tip[0] - eye[0]) / LONG, (tip[1] - eye[1]) / LONG)
    aside = (-way[1] * 0.42, way[0] * 0.42)

    def at(along: float, across: float) -> str:
        return f"{num(eye[0] + way[0] * along + aside[0] * across)} {num(eye[1] + way[1] * along + aside[1] * across)}"

    return f"M{at(0, 0)}C{at(-0.1, 0.8)} {at(0.5, 1)} {at(1.2, 1)}L{at(LONG, 0)}L{at(1.2, -1)}C{at(0.5, -1)} {at(-0.1, -0.8)} {at(0, 0)}z"


def start(picture: Picture, scene: Scene, nodes: Sequence[Node], width: float) -> None:
    """A ring where the thread comes out of earlier work; a loose tail where it begins."""
    if not nodes:
        return
    first = nodes[0]
    x, y = first.end if first.event < 0 else first.start
    if first.event < 0 or not isinstance(scene.shown[0], Anchor):
        picture.add("start", Style(fill=WHITE, stroke=INK, width=0.35), ellipse(x, y, 1.5, 1.5))
        return
    (dx, dy), wave = first.into, []
    aside = (-dy, dx)
    for k in range(13):
        far, swing = TAIL / 12 * k, 0.55 * sin(k * pi / 4) * min(1.0, k / 4)
        wave.append((x - dx * far + aside[0] * swing, y - dy * far + aside[1] * swing))
    picture.add("start", Style(stroke=INK, width=width, round=True), polyline(wave))


def tail_end(scene: Scene, nodes: Sequence[Node]) -> list[Point]:
    """Where a loose tail ends; nothing where there is none."""
    if not nodes or nodes[0].event < 0 or not isinstance(scene.shown[0], Anchor):
        return []
    first = nodes[0]
    return [(first.start[0] - first.into[0] * TAIL, first.start[1] - first.into[1] * TAIL)]


def arrow(picture: Picture, node: Node) -> None:
    """The way of the thread in a bead."""
    x, y = (node.start[0] + node.end[0]) / 2, (node.start[1] + node.end[1]) / 2
    (dx, dy), (ax, ay) = node.out, (-node.out[1], node.out[0])
    points = [(x + dx * 0.7, y + dy * 0.7), (x - dx * 0.5 + ax * 0.5, y - dy * 0.5 + ay * 0.5), (x - dx * 0.5 - ax * 0.5, y - dy * 0.5 - ay * 0.5)]
    picture.add("arrow", Style(fill=INK), polyline(points) + "z")


def numbers(picture: Picture, scene: Scene, nodes: Sequence[Node], legs: Sequence[Leg], points: Sequence[Point], box: Box) -> None:
    """A disc with its number beside the thread that leads into each event."""
    taken: list[Point] = []
    for number, (index, *_) in enumerate(scene.actions, 1):
        leading = next((leg for leg in legs if leg.event == index), None)
        own = next((node for node in nodes if node.event == index), None)
        if own is None:
            continue
        near = [leading.at(share) for share in (0.5, 0.75, 0.25)] if leading else [own.start]
        place = _free(near, points, taken, box)
        taken.append(place)
        picture.part(f"{number}.0")
        picture.add("number", Style(fill=WHITE, stroke=INK, width=0.22), ellipse(*place, 2 * DISC, 2 * DISC))
        cap = _cap(str(number))
        picture.add("figure", pen(INK, cap), alphabet.word(str(number), *place, cap, "middle"))
    picture.part("")


def _cap(figure: str) -> float:
    """Height of a number that stands within its disc."""
    return min(CAP, 2 * (DISC - 0.2) / hypot(1.0, alphabet.width(figure, 1.0)))


def _free(near: Sequence[Point], points: Sequence[Point], taken: Sequence[Point], box: Box) -> Point:
    """Where a disc hides least: near one of some points, clear of the thread and of other discs, inside the picture."""
    best, least = near[0], float("inf")
    for rank, (x, y) in enumerate(near):
        around = [point for point in points if abs(point[0] - x) < 4.2 and abs(point[1] - y) < 4.2]
        beside = [other for other in taken if dist((x, y), other) < FAR[-1] + 2 * DISC + 0.3]
        for far in FAR:
            for dx, dy in COMPASS:
                spot, cost = (x + far * dx, y + far * dy), 0.35 * far + 0.25 * rank
                if cost < least:
                    cost += 20 * _outside(spot, box)
                if cost < least:
                    cost += 8 * sum(max(0.0, 2 * DISC + 0.3 - dist(spot, other)) for other in beside)
                if cost < least:   # the rest takes longest to find out
                    cost += sum(CLEAR - away for away in (dist(spot, point) for point in around) if away < CLEAR)
                if cost < least:
                    best, least = spot, cost
    return best


def _outside(spot: Point, box: Box) -> float:
    """How far a disc reaches out of the picture."""
    reach = DISC + 0.2
    return max(0.0, box.left + reach - spot[0], spot[0] - box.right + reach, box.top + reach - spot[1], spot[1] - box.bottom + reach)


def folds(picture: Picture, opened: Opened, scene: Scene, box: Box) -> None:
    """Two short waves where beads of a long strand are left out."""
    taken = {place for event in (*scene.before, *scene.shown) if isinstance(event, PickUp) for place in event.places if place in opened.folds}
    for place in sorted(taken):
        (x, top), (_, bottom) = opened.folds[place]
        if not (box.left < x < box.right and box.top < bottom and top < box.bottom):
            continue
        for y in ((top + bottom) / 2 - 0.5, (top + bottom) / 2 + 0.5):
            picture.add("fold", Style(stroke=WHITE, width=0.9), _wave(x, y))
        for y in ((top + bottom) / 2 - 0.5, (top + bottom) / 2 + 0.5):
            picture.add("fold", Style(stroke=METAL_RIM, width=0.3, round=True), _wave(x, y))


def _wave(x: float, y: float) -> str:
    return f"M{num(x - 1.8)} {num(y + 0.3)}C{num(x - 0.6)} {num(y - 0.9)} {num(x + 0.6)} {num(y + 1.2)} {num(x + 1.8)} {num(y)}"


def findings(picture: Picture, opened: Opened, nodes: Sequence[Node], scene: Scene) -> None:
    """The guard or ring that the thread goes through, and the rings of charms."""
    for node in nodes:
        if node.kind == "charm":
            x, y = node.end
            picture.add("metal", Style(stroke=METAL_RIM, width=0.5), ellipse(x, y, 2.2, 2.2))
    for number in hung(scene):
        left, right, y = guard_feet(opened, number)
        if opened.piece.hangers[number - 1].kind == "ring":
            _wire(picture, ellipse((left + right) / 2, y + 1.5 - RING / 2, RING, RING))
            picture.add("in-metal", Style(stroke=INK, width=0.55, round=True), _bow(left, right, y, 0.9))
        else:
            _wire(picture, _bow(left, right, y + 0.5, 2.6))
            picture.add("in-metal", Style(stroke=INK, width=0.42, dash=(0.75, 0.5)), _bow(left, right, y + 0.5, 2.6))


def hung(scene: Scene) -> list[int]:
    """Numbers of the guards and rings in a scene."""
    return sorted({event.section.number for event in scene.shown if isinstance(event, (Guard, Ring))})


def highest(opened: Opened, scene: Scene) -> list[Point]:
    """Points that a picture must hold for guards and rings to be seen whole."""
    found = []
    for number in hung(scene):
        left, right, y = guard_feet(opened, number)
        ring = opened.piece.hangers[number - 1].kind == "ring"
        half = RING / 2 if ring else (right - left) / 2
        middle, top = (left + right) / 2, y + 1.5 - RING if ring else y - 2.6 - half
        found += [(middle - half, y), (middle + half, y), (middle, top)]
    return found


def _bow(left: float, right: float, y: float, high: float) -> str:
    """Up from a foot, round and down to the other one."""
    half, middle = (right - left) / 2, (left + right) / 2
    shoulder, bend = y - high, 0.5523 * half
    return (f"M{num(left)} {num(y)}V{num(shoulder)}C{num(left)} {num(shoulder - bend)} {num(middle - bend)} {num(shoulder - half)} "
            f"{num(middle)} {num(shoulder - half)}C{num(middle + bend)} {num(shoulder - half)} {num(right)} {num(shoulder - bend)} "
            f"{num(right)} {num(shoulder)}V{num(y)}")


def _wire(picture: Picture, path: str) -> None:
    picture.add("metal", Style(stroke=METAL_RIM, width=1.5, round=True), path)
    picture.add("metal", Style(stroke=METAL, width=1.1, round=True), path)
