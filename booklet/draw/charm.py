"""Charms and rings of a fringe: what a finding looks like is not known, so plain shapes stand for them."""

from __future__ import annotations

from math import cos, pi, sin

from .beads import ellipse
from .hanger import METAL, SHADE, SHINE
from .numbers import num
from .picture import Picture, Point, Style

EYE = 1.1        # mm, radius of the small ring of a charm
WIRE = 0.35      # mm
LAYER = "charms"


def draw_charm(picture: Picture, name: str, at: Point, length: float, scale: float) -> float:
    """A charm that hangs `length` drawn mm down from the thread at a point: a ring, a star or a disc, as its name says.

    Returns how far it reaches to either side.
    """
    x, y = at
    words = name.casefold().split()
    if "ring" in words or length < 4 * EYE * scale:
        _wire(picture, x, y + length / 2, length - WIRE * scale, scale)
        return length / 2
    eye = 2 * EYE * scale
    _wire(picture, x, y + eye / 2, eye - WIRE * scale, scale)
    radius = (length - 0.8 * eye) / 2
    middle = (x, y + length - radius)
    shape, shine = (_star(middle, radius), _star(middle, 0.62 * radius)) if "star" in words else \
        (ellipse(*middle, 2 * radius, 2 * radius), ellipse(middle[0], middle[1], 1.36 * radius, 1.36 * radius))
    picture.add(LAYER, Style(fill=METAL, stroke=SHADE, width=0.12 * scale, round=True), shape)
    picture.add(LAYER, Style(stroke=SHINE, width=0.16 * scale, round=True), shine)
    return radius


def _star(middle: Point, radius: float) -> str:
    points = [(middle[0] + size * sin(pi * k / 5), middle[1] - size * cos(pi * k / 5)) for k in range(10) for size in [radius if k % 2 == 0 else 0.45 * radius]]
    return "M" + "L".join(f"{num(x)} {num(y)}" for x, y in points) + "z"


def _wire(picture: Picture, x: float, y: float, across: float, scale: float) -> None:
    for colour, share in ((SHADE, 1.0), (METAL, 0.68), (SHINE, 0.2)):
        picture.add(LAYER, Style(stroke=colour, width=share * WIRE * scale, round=True), ellipse(x, y, across, across))
