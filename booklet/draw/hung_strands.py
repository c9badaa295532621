"""Strands in the finished view: straight ones that sway, with twigs and charms, loops and twisted pairs."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import groupby
from math import atan2, cos, sin

from ..craft import drape
from ..craft.beads import Bead
from ..craft.drape import Draped, twig_side
from ..craft.size import CHARM
from ..craft.strand import LOOP, TWIST, Charm, Strand, Twig
from .beads import OUTLINED
from .charm import draw_charm
from .glass import Layers, single, string_run
from .hang import Hung, hang, track
from .picture import Picture, Point, Style, polyline
from .strands import end_offsets

END_GAP = 0.12    # real mm round end beads
THREAD = "#8f867c"
TWIGS = ("ground-twigs", "beads-twigs", "lights-twigs")
BEHIND = ("ground-behind", "beads-behind", "lights-behind")
BEFORE = ("ground-before", "beads-before", "lights-before")


class StrandPainter:
    """Paints the strands of one piece; remembers in `reach` the points that the picture must hold."""

    def __init__(self, picture: Picture, legend: Mapping[str, Bead], charms: Mapping[str, float], scale: float, reach: list[Point]) -> None:
        self.picture, self.legend, self.charms, self.scale, self.reach = picture, legend, charms, scale, reach
        self.lengths = {key: bead.kind.length * scale for key, bead in legend.items()}

    def paint(self, strand: Strand, start: Point, stop: Point, lean: float, layers: Layers) -> None:
        """One strand, hung from the place(s) at which it goes down and comes up."""
        if strand.kind == LOOP:
            self._loop(strand, start, stop, layers)
        elif strand.kind == TWIST:
            self._twist(strand, start)
        else:
            self._straight(strand, start, lean, layers)

    def _straight(self, strand: Strand, start: Point, lean: float, layers: Layers) -> None:
        beads = hang(strand, *start, self.lengths, self.scale, lean)
        for key, same in groupby(beads, lambda hung: hung.key):
            self._string(layers, key, list(same))
        foot = beads[-1].foot if beads else start
        self._end(layers, strand, foot)
        twigs = 0
        for thing in strand.hung:
            joint = beads[thing.at - 1].foot if thing.at else start
            if isinstance(thing, Charm):
                self._charm(thing, joint)
            else:
                key = strand.beads[max(thing.at - 1, 0)] if strand.beads else strand.end[0]
                self._twig(thing, joint, twig_side(twigs), self.legend[key].kind.diameter * self.scale / 2)
                twigs += 1

    def _twig(self, twig: Twig, joint: Point, side: int, clear: float) -> None:
        beads = drape.twig(joint, side, [self.lengths[key] for key in twig.beads], clear)
        across, down = side * sin(drape.TWIG_LEAN), cos(drape.TWIG_LEAN)
        length = clear + sum(self.lengths[key] for key in twig.beads)
        foot = (joint[0] + across * length, joint[1] + down * length)
        self.picture.add("thread", Style(stroke=THREAD, width=0.12 * self.scale, round=True), polyline([joint, foot]))
        self._draped(TWIGS, twig.beads, beads)
        self._end(TWIGS, twig, foot, -side * drape.TWIG_LEAN)
        for charm in twig.hung:
            along = clear + sum(self.lengths[key] for key in twig.beads[:charm.at])
            self._charm(charm, (joint[0] + across * along, joint[1] + down * along))

    def _loop(self, strand: Strand, start: Point, stop: Point, layers: Layers) -> None:
        beads = drape.loop(start, stop, [self.lengths[key] for key in strand.beads], self.scale)
        self.picture.add("thread", Style(stroke=THREAD, width=0.12 * self.scale, round=True), polyline([start, *((bead.x, bead.y) for bead in beads), stop]))
        self._draped(layers, strand.beads, beads)
        for charm in strand.hung:
            before, after = beads[max(charm.at - 1, 0)], beads[min(charm.at, len(beads) - 1)]
            self._charm(charm, ((before.x + after.x) / 2, (before.y + after.y) / 2))

    def _twist(self, strand: Strand, start: Point) -> None:
        half = max(self.legend[key].kind.diameter for key in strand.beads + strand.second) * self.scale / 2
        feet = []
        for keys, first in ((strand.beads, True), (strand.second, False)):
            lengths = [self.lengths[key] for key in keys]
            beads = drape.twist(start, lengths, half, first, self.scale)
            for front, layers in ((False, BEHIND), (True, BEFORE)):
                chosen = [(key, bead) for key, bead in zip(keys, beads) if bead.front == front]
                self._draped(layers, [key for key, _ in chosen], [bead for _, bead in chosen])
            feet.append(start[1] + drape.TAKE_UP * sum(lengths))
        self._end(BEFORE, strand, (start[0], max(feet)))

    def _draped(self, layers: Layers, keys: Sequence[str], beads: Sequence[Draped]) -> None:
        for key, bead in zip(keys, beads):
            single(self.picture, layers, self.legend[key], bead.x, bead.y, self.scale, bead.angle)
            self._reaches(key, bead.x, bead.y)

    def _string(self, layers: Layers, key: str, beads: list[Hung]) -> None:
        bead, half = self.legend[key], self.legend[key].kind.diameter * self.scale / 2
        for hung in beads:
            self.reach += [(hung.foot[0] - half, hung.foot[1]), (hung.foot[0] + half, hung.foot[1])]
        if bead.kind.shape in OUTLINED:
            for hung in beads:
                single(self.picture, layers, bead, *hung.middle, self.scale)
        else:
            string_run(self.picture, layers, bead, track(beads, bead.kind.length * self.scale), self.scale)

    def _end(self, layers: Layers, line: Strand | Twig, foot: Point, lean: float = 0.0) -> None:
        """The end beads, each turned the way the thread runs through it, and the charms among them."""
        kinds = [self.legend[key].kind for key in line.end]
        offsets = end_offsets(kinds, END_GAP * self.scale, self.scale)
        places = [(foot[0] + dx * cos(lean) - dy * sin(lean), foot[1] + dx * sin(lean) + dy * cos(lean)) for dx, dy in offsets]
        way = [foot, *places, foot]
        if places:
            self.picture.add("thread", Style(stroke=THREAD, width=0.12 * self.scale, round=True), polyline(way))
        for key, before, (x, y), after in zip(line.end, way, places, way[2:]):
            turn = atan2(before[0] - after[0], after[1] - before[1]) if len(places) > 1 else lean
            single(self.picture, layers, self.legend[key], x, y, self.scale, turn)
            self._reaches(key, x, y)
        for charm in line.turned:
            self._charm(charm, self._among(places, foot, charm.at, kinds))

    def _among(self, places: list[Point], foot: Point, at: int, kinds: Sequence) -> Point:
        """Where a charm hangs between end beads: low, as its weight draws the thread down."""
        if not places:
            return foot
        beside = [places[index] for index in (at - 1, at) if 0 <= index < len(places)]
        low = max(beside, key=lambda point: point[1])
        x = sum(point[0] for point in beside) / len(beside)
        return (x, low[1] + (kinds[min(at, len(kinds) - 1)].length * self.scale / 2 if len(places) == 1 else 0.0))

    def _charm(self, charm: Charm, at: Point) -> None:
        length = self.charms.get(charm.name, CHARM) * self.scale
        half = draw_charm(self.picture, charm.name, at, length, self.scale)
        self.reach += [(at[0] - half, at[1] + length), (at[0] + half, at[1] + length)]

    def _reaches(self, key: str, x: float, y: float) -> None:
        reach = max(self.legend[key].kind.diameter, self.legend[key].kind.length) * self.scale / 2
        self.reach += [(x - reach, y), (x + reach, y + reach)]
