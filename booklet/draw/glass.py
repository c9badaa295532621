"""Beads as they look: a run of equal beads with its finish, on a line that may bend."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import lru_cache
from math import cos, sin

from ..craft.beads import Bead, BeadKind
from .beads import OUTLINED, Track, corner, ellipse, lay, outline
from .colour import BLACK
from .finish import Light, lights
from .picture import Picture, Style

Layers = tuple[str, str, str]   # names of the layers of ground, beads and lights

GROUND = "#7a7066"    # the shadow and thread that show between beads
GAP = 0.07            # of the real bead, mm
RIM = 0.05            # of ground round a bead, mm
LEAST_DETAIL = 1.25   # mm: narrower beads show one mark of light only
LEAST_ROUND = 0.5     # mm: the ends of narrower marks are left square, which costs a third


def string_run(picture: Picture, layers: Layers, bead: Bead, track: Track, scale: float) -> None:
    """Equal beads strung along a line. `layers` are those of ground, beads and lights."""
    _run(picture, layers, bead, track, scale, _marks(bead, scale), strung=True)


def woven_run(picture: Picture, layers: Layers, bead: Bead, track: Track, scale: float) -> None:
    """Equal beads side by side, their holes at right angles to the line."""
    _run(picture, layers, bead, track, scale, _marks(bead, scale), strung=False)


def single(picture: Picture, layers: Layers, bead: Bead, x: float, y: float, scale: float, angle: float = 0.0,
           keep: Callable[[str], bool] | None = None) -> None:
    """One bead centred on (x, y), its hole turned `angle` radians clockwise from upright.

    `keep` tells from its colour whether a mark of light is wanted.
    """
    if not picture.draws:
        return
    marks = [mark for mark in _marks(bead, scale) if keep is None or keep(mark.colour(bead.colour))]
    if bead.kind.shape in OUTLINED:
        _outlined(picture, layers, bead, x, y, scale, angle, marks)
    else:
        half = bead.kind.length * scale / 2
        dx, dy = -sin(angle) * half, cos(angle) * half
        _run(picture, layers, bead, Track(((x - dx, y - dy), (x + dx, y + dy)), 2 * half), scale, marks, strung=True)


def _marks(bead: Bead, scale: float) -> Sequence[Light]:
    return lights(bead.finish, (bead.kind.diameter - GAP) * scale >= LEAST_DETAIL)


def _run(picture: Picture, layers: Layers, bead: Bead, track: Track, scale: float, marks: Sequence[Light],
         strung: bool) -> None:
    if not picture.draws:
        return
    ground, body, light = layers
    (along, across, radius), rim = _size(bead.kind, scale, strung), 2 * RIM * scale
    lay(picture, ground, GROUND, track, along + rim, across + rim, radius + rim / 2)
    lay(picture, body, bead.colour, track, along, across, radius)
    for mark in marks:
        lay(picture, light, mark.colour(bead.colour), track, *_on_bead(mark, bead.kind, scale, strung))


@lru_cache(maxsize=256)
def _size(kind: BeadKind, scale: float, strung: bool) -> tuple[float, float, float]:
    """mm of a bead along the line and across it, and of its corners."""
    wide, tall = (kind.diameter - GAP) * scale, (kind.length - GAP) * scale
    return (*((tall, wide) if strung else (wide, tall)), corner(kind, wide, tall))


@lru_cache(maxsize=1024)
def _on_bead(mark: Light, kind: BeadKind, scale: float, strung: bool) -> tuple[float, float, float, float, float]:
    """mm of a mark of light along the line and across it, of its corners, and how far it lies from the middle of its bead."""
    wide, tall = (kind.diameter - GAP) * scale, (kind.length - GAP) * scale
    mark_wide, mark_tall = mark.wide * wide, mark.tall * tall
    size, moved = (mark_tall, mark_wide), (mark.v * tall, -mark.u * wide)
    if not strung:
        size, moved = (mark_wide, mark_tall), (mark.u * wide, mark.v * tall)
    return (*size, min(size) / 2 if min(size) >= LEAST_ROUND else 0.0, *moved)


def _outlined(picture: Picture, layers: Layers, bead: Bead, x: float, y: float, scale: float, angle: float,
              marks: Sequence[Light]) -> None:
    ground, body, light = layers
    wide, tall = (bead.kind.diameter - GAP) * scale, (bead.kind.length - GAP) * scale
    shape = outline(bead.kind, x, y, wide, tall, angle)
    picture.add(ground, Style(fill=GROUND, stroke=GROUND, width=2 * RIM * scale, round=True), shape)
    picture.add(body, Style(fill=bead.colour), shape)
    low = 0.14 if bead.kind.shape == "drop" else 0.0
    for mark in marks:
        if mark.towards == BLACK:   # shade along a straight edge, which these beads do not have
            continue
        # Outlined beads narrow towards their ends, so marks are drawn smaller and nearer to the middle.
        u, v = mark.u * 0.72 * wide, (mark.v * 0.7 + low) * tall
        picture.add(light, Style(fill=mark.colour(bead.colour)), ellipse(
            x + u * cos(angle) - v * sin(angle), y + u * sin(angle) + v * cos(angle),
            mark.wide * 0.8 * wide, mark.tall * 0.58 * tall, angle))
