"""A step picture: beads, thread, needle and numbers of one scene, cropped to where it happens."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Callable, Iterable, Iterator
from itertools import islice
from math import atan2, inf

from msgspec import Struct
from msgspec.structs import replace

from ...craft.events import Anchor, Event, PickUp, Place, WeaveIn
from ...craft.piece import Piece
from ...craft.scenes import Scene, Scenes
from ..beads import OUTLINED, corner, outline
from ..chart import Box
from ..colour import WHITE, mix
from ..numbers import num
from ..picture import Picture, Point, Style, polyline
from . import marks
from .lines import Leg, leg, legs, split
from .nodes import LOW, Node, in_lanes, mean_run, nodes
from .opened import Cell, Opened
from .said import scene_alt

INK = "#16130f"          # the thread of the step
OLD = "#9a9188"          # thread that is there already
PALE = 0.8               # how far beads placed so far are from their colour
THREAD, OLD_THREAD, HALO = 0.55, 0.3, 0.6
INSIDE = (0.75, 0.5)     # dashes of the thread in the hole of a bead
WIDEST, TALLEST = 40.0, 50.0   # mm of a picture as printed
MOST, HIGH = 1.5, 36.0   # a small one is made larger, up to so many times and so high
LEAST = 0.72             # of its own size to which a picture may be made smaller before it is cropped
OLD_RIM, BRIDGE_INK = "#a79f95", "#5f574e"
BRIDGE = 0.5
CHANNEL_RIM = 0.3         # of a bead that closes the light channel in it
LAYERS = (("old-thread", "bridge-behind", "old-beads", "new-beads", "channel", "inside", "arrow", "metal"),
          ("bridge", "bridge-line", "fold", "in-metal", "start", "needle", "number", "figure"))
AROUND = (2.6, 2.2)      # of the neighbourhood shown beside what happens


class Stage:
    """One piece, laid out once for all its step pictures. What was done before a scene is always the beginning of the path."""

    def __init__(self, piece: Piece) -> None:
        self.piece, self.scenes, self.opened = piece, Scenes(piece), Opened(piece)
        self.nodes = nodes(self.opened, self.scenes.events)    # of the whole path, in the middle of every hole
        self.legs = _each_once(legs(self.nodes))
        self._cells: dict[Place, Cell] = {}    # of the beads that are picked up, in their order
        self._taken, self._extents = [0], [Box(inf, inf, -inf, -inf)]    # how many those are before each event, and where they lie
        for event in self.scenes.events:
            box, cells = self._extents[-1], self._picked(event)
            self._cells |= cells
            self._taken.append(len(self._cells))
            self._extents.append(_grown(box, cells.values()) if cells else box)

    def _picked(self, event: Event) -> dict[Place, Cell]:
        """Beads that an event picks up and that are drawn."""
        return {place: self.opened.cells[place] for place in event.places if place in self.opened.cells} if isinstance(event, PickUp) else {}

    def extent(self, scene: Scene) -> Box:
        """Where beads are when the scene ends."""
        box = _grown(self._extents[len(scene.before)], [cell for event in scene.shown for cell in self._picked(event).values()])
        return Box(box.left - 1, box.top - 1, box.right + 1, box.bottom + 1)

    def before(self, scene: Scene) -> Node | None:
        """The node out of which the thread comes; None where it begins."""
        begun = max((index for index, event in enumerate((*scene.before, *scene.shown[:1])) if isinstance(event, Anchor)), default=0)
        last = bisect_left(self.nodes, len(scene.before), key=_event) - 1
        return self.nodes[last] if last >= 0 and self.nodes[last].event > begun else None

    def old_legs(self, scene: Scene) -> list[Leg]:
        """Ways of the thread that it has gone before the scene."""
        return self.legs[:bisect_left(self.legs, len(scene.before), key=_event)]

    def old_cells(self, scene: Scene) -> dict[Place, Cell]:
        """Beads that are there before the scene, in the order of picking up."""
        return dict(islice(self._cells.items(), self._taken[len(scene.before)]))


class Thread(Struct, frozen=True):
    """The thread of a scene: its nodes, of which the first may be where it comes from (event -1), and the legs between them."""

    nodes: list[Node]
    legs: list[Leg]
    needle: list[Point]   # its eye and its point; nothing where the thread ends
    parts: tuple[str, ...]   # by event: "3.1" is the second event of the third action

    def part(self, event: int) -> str:
        """The part of an event; none for what was there already."""
        return self.parts[event] if event >= 0 else ""

    @property
    def run(self) -> float:
        return mean_run(self.nodes)

    def points(self) -> Iterator[Point]:
        """Points all along it."""
        for line in self.legs:
            yield from line.sampled()
        for node in self.nodes:
            (x, y), (end_x, end_y) = node.start, node.end
            for k in range(4):
                yield x + (end_x - x) * k / 3, y + (end_y - y) * k / 3
            if node.bridge is not None:     # nothing may hide it
                yield from ((point[0], point[1] + node.bridge[2][1] * LOW / 2) for point in node.bridge[:2])
        if self.needle:
            (x, y), (end_x, end_y) = self.needle
            for k in range(5):
                yield x + (end_x - x) * k / 4, y + (end_y - y) * k / 4


def scene_svg(stage: Stage, scene: Scene, *, prefix: str = "step", crop: bool = True, on: Callable[[Iterable[str]], Picture] = Picture) -> str:
    """The picture of a scene. Without `crop` it shows all of it, however large. `on` makes what it is drawn on."""
    thread = _thread(stage, scene)
    box = _box(stage, scene, thread, marks.highest(stage.opened, scene) + marks.tail_end(scene, thread.nodes))
    scale = 1.0
    if crop:
        scale = max(LEAST, min(MOST, WIDEST / box.size[0], max(HIGH, min(1.0, TALLEST / box.size[1]) * box.size[1]) / box.size[1]))
        box = _cropped(box, thread, WIDEST / scale, TALLEST / scale)
    picture = on((*LAYERS[0], *(f"{name}-{k}" for k in range(len(thread.legs) + 2) for name in ("halo", "thread")), *LAYERS[1]))
    _old_thread(picture, stage, scene, box)
    _beads(picture, stage, scene, thread, box)
    _insides(picture, thread)
    _legs(picture, thread)
    _bridges(picture, thread)
    marks.folds(picture, stage.opened, scene, box)
    marks.findings(picture, stage.opened, thread.nodes, scene)
    marks.start(picture, scene, thread.nodes, THREAD)
    _heads(picture, scene, thread)
    marks.numbers(picture, scene, thread.nodes, thread.legs, list(thread.points()), box)
    return picture.svg(box.left, box.top, *box.size, alt=scene_alt(stage.piece, stage.opened.plan, scene), prefix=prefix, scale=scale)


def _thread(stage: Stage, scene: Scene) -> Thread:
    before = stage.before(scene)
    found = nodes(stage.opened, scene.shown, before.end if before else None)
    if before is not None:
        found.insert(0, replace(before, event=-1))
    run = mean_run(found)
    found = in_lanes(found, run)
    ends = bool(scene.shown) and isinstance(scene.shown[-1], WeaveIn)
    return Thread(found, legs(found), [] if ends or not found else marks.needle_points(found[-1], run), _parts(scene))


def _event(one: Node | Leg) -> int:
    return one.event


def _grown(box: Box, cells: Iterable[Cell]) -> Box:
    """A box made so large that it holds these beads."""
    lefts, tops, rights, bottoms = zip((box.left, box.top, box.right, box.bottom), *map(_rim, cells))
    return Box(min(lefts), min(tops), max(rights), max(bottoms))


def _each_once(found: Iterable[Leg]) -> list[Leg]:
    """Each way once, as it was gone first."""
    ways: dict[tuple[Point, ...], Leg] = {}
    for line in found:
        ways.setdefault(line.points, line)
    return list(ways.values())


def _rim(cell: Cell) -> tuple[float, float, float, float]:
    half = cell.half
    return cell.x - half[0], cell.y - half[1], cell.x + half[0], cell.y + half[1]


def _box(stage: Stage, scene: Scene, thread: Thread, more: list[Point]) -> Box:
    """What happens, and its neighbourhood as far as beads are placed."""
    xs, ys = zip(*thread.points(), *more)
    left, top, right, bottom = min(xs) - 1.6, min(ys) - 1.6, max(xs) + 1.6, max(ys) + 1.6
    for node in thread.nodes:
        for place in node.places:
            rim = _rim(stage.opened.cells[place])
            left, top, right, bottom = min(left, rim[0] - 1), min(top, rim[1] - 1), max(right, rim[2] + 1), max(bottom, rim[3] + 1)
    wide, (across, down) = stage.extent(scene), AROUND
    return Box(min(left, max(left - across, wide.left)), min(top, max(top - down, wide.top)),
               max(right, min(right + across, wide.right)), max(bottom, min(bottom + down, wide.bottom)))


def _cropped(box: Box, thread: Thread, width: float, height: float) -> Box:
    """At most so large, with the head of the thread in it."""
    head = thread.needle[1] if thread.needle else thread.nodes[-1].end
    left, right = _kept(box.left, box.right, width, head[0])
    top, bottom = _kept(box.top, box.bottom, height, head[1])
    return Box(left, top, right, bottom)


def _kept(low: float, high: float, most: float, head: float) -> tuple[float, float]:
    if high - low <= most:
        return low, high
    return (low, low + most) if head - low < high - head else (high - most, high)


def _shown(box: Box, x: float, y: float, reach: float) -> bool:
    return box.left - reach < x < box.right + reach and box.top - reach < y < box.bottom + reach


def _old_thread(picture: Picture, stage: Stage, scene: Scene, box: Box) -> None:
    """Thread between beads that is there already: each way once, as a light line."""
    left, top, right, bottom = box.left - 0.5, box.top - 0.5, box.right + 0.5, box.bottom + 0.5
    for line in stage.old_legs(scene):
        (x, y), (end_x, end_y) = line.points[0], line.points[-1]
        if left < x < right and top < y < bottom or left < end_x < right and top < end_y < bottom:
            picture.add("old-thread", Style(stroke=OLD, width=OLD_THREAD, round=True), line.path)


def _beads(picture: Picture, stage: Stage, scene: Scene, thread: Thread, box: Box) -> None:
    """Beads placed so far pale with a light outline, new ones in their colour with a firm one."""
    opened = stage.opened
    new = {place: index for index, event in enumerate(scene.shown) if isinstance(event, PickUp) for place in event.places}
    old = {place: cell for place, cell in stage.old_cells(scene).items() if place not in new}
    added = {place: opened.cells[place] for place in new if place in opened.cells}
    for layer, cells, rim, ink, share in (("old-beads", old, 0.16, OLD_RIM, PALE), ("new-beads", added, 0.38, INK, 0.0)):
        for place, cell in cells.items():
            if _shown(box, cell.x, cell.y, 3.0):
                picture.part(thread.part(new[place]) if place in new else "")
                fill = picture.fill(cell.key, mix(opened.piece.legend[cell.key].colour, WHITE, share), share > 0)
                _bead(picture, layer, opened, cell, fill, ink, rim)
    picture.part("")


def _bead(picture: Picture, layer: str, opened: Opened, cell: Cell, fill: str, ink: str, rim: float) -> None:
    kind = opened.piece.legend[cell.key].kind
    if kind.shape in OUTLINED:
        turn = atan2(cell.axis[0], -cell.axis[1])
        picture.add(layer, Style(fill=fill, stroke=ink, width=rim, round=True), outline(kind, cell.x, cell.y, cell.wide, cell.long, turn))
        return
    radius = corner(kind, cell.wide, cell.long)
    picture.add(layer, Style(fill=fill, stroke=ink, width=rim, round=True), _block(cell, radius))


def _block(cell: Cell, radius: float) -> str:
    """A rectangle along the hole of a bead, with round corners."""
    (ux, uy), (vx, vy) = cell.axis, (-cell.axis[1], cell.axis[0])
    long, wide = cell.long / 2, cell.wide / 2

    def at(along: float, across: float) -> str:
        return f"{num(cell.x + ux * along + vx * across)} {num(cell.y + uy * along + vy * across)}"

    parts = []
    for along, across, first in ((1, 1, 0), (1, -1, 1), (-1, -1, 0), (-1, 1, 1)):
        corners = [(along * (long - radius), across * wide), (along * long, across * (wide - radius))]
        enter, leave = corners[::-1] if first else corners
        parts.append(f"{'L' if parts else 'M'}{at(*enter)}Q{at(along * long, across * wide)} {at(*leave)}")
    return "".join(parts) + "z"


def _insides(picture: Picture, thread: Thread) -> None:
    """The thread in the holes of beads: dashes in a light channel."""
    for node in thread.nodes:
        if node.kind == "beads" and node.event >= 0:
            picture.part(thread.part(node.event))
            line = polyline([node.start, node.end])
            picture.add("channel", Style(stroke=WHITE, width=0.95), polyline(_short(node, CHANNEL_RIM)))
            picture.add("inside", Style(stroke=INK, width=0.42, dash=INSIDE), line)
            marks.arrow(picture, node)
    picture.part("")


def _short(node: Node, less: float) -> list[Point]:
    """The line of a node without `less` mm at either end."""
    (x, y), (end_x, end_y), (dx, dy) = node.start, node.end, node.out
    return [(x + dx * less, y + dy * less), (end_x - dx * less, end_y - dy * less)]


def _legs(picture: Picture, thread: Thread) -> None:
    for index, line in enumerate(thread.legs):
        picture.part(thread.part(line.event))
        picture.add(f"halo-{index}", Style(stroke=WHITE, width=THREAD + HALO), line.path)
        picture.add(f"thread-{index}", Style(stroke=INK, width=THREAD, round=True), line.path)
    picture.part("")


def _bridges(picture: Picture, thread: Thread) -> None:
    """Each bridge that the needle goes under: it lies over the thread that goes down behind it."""
    for node in thread.nodes:
        if node.bridge is None or node.event < 0:
            continue
        picture.part(thread.part(node.event))
        left, right, away = node.bridge
        line = leg(0, left, away, right, (-away[0], -away[1]))
        halves = split(line.points)
        over = [line.points] if node.into == node.out else [halves[0] if node.start[0] < node.end[0] else halves[1]]
        for points in over:
            picture.add("bridge", Style(stroke=WHITE, width=BRIDGE + HALO), replace(line, points=points).path)
        for points in halves:
            layer = "bridge-line" if points in over or node.into == node.out else "bridge-behind"
            picture.add(layer, Style(stroke=BRIDGE_INK, width=BRIDGE, round=True), replace(line, points=points).path)
    picture.part("")


def _heads(picture: Picture, scene: Scene, thread: Thread) -> None:
    """The needle where the thread ends; where the picture moves, also where it is after every action."""
    last = int(thread.parts[-1].split(".")[0])
    for number in range(1, last) if picture.moves else ():
        done = [node for node in thread.nodes if node.event < 0 or int(thread.part(node.event).split(".")[0]) <= number]
        picture.part(f"={number}")
        marks.finish(picture, scene, done, marks.needle_points(done[-1], thread.run) if done else [], THREAD)
    picture.part(f"={last}")
    marks.finish(picture, scene, thread.nodes, thread.needle, THREAD)
    picture.part("")


def _parts(scene: Scene) -> tuple[str, ...]:
    """What comes before the first action belongs to it; what follows one without a number of its own belongs to that."""
    starts, found, number, first = {action[0]: number for number, action in enumerate(scene.actions, 1)}, [], 1, 0
    for event in range(len(scene.shown)):
        if event in starts and starts[event] > 1:
            number, first = starts[event], event
        found.append(f"{number}.{event - first}")
    return tuple(found)
