"""Pictures of a pattern as inline SVG, each with the text that stands for it."""

from __future__ import annotations

import re
from html import unescape
from dataclasses import dataclass

from markupsafe import Markup, escape

_OPEN = re.compile(r"<svg\b([^>]*)>")
_TITLE = re.compile(r"<title>(.*?)</title>", re.DOTALL)
_SIZE = re.compile(r'\b(width|height)="([0-9.]+)mm"')
NARROW = 31.0   # mm; wider step pictures have the wide box
_ID = re.compile(r'\sid="[^"]*"')
_LABEL = re.compile(r'\saria-label="[^"]*"')


@dataclass(frozen=True)
class Picture:
    """An SVG, whose <title> is its alternative text, and its size in mm as drawn."""

    svg: Markup
    width: float
    height: float

    def enlarged(self, times: float) -> Picture:
        """The same drawing, so many times as large."""
        if times == 1.0:
            return self
        svg = str(self.svg)
        opening = _OPEN.match(svg)[0]
        larger = _SIZE.sub(lambda size: f'{size[1]}="{float(size[2]) * times:.2f}mm"', opening)
        return Picture(Markup(larger + svg[len(opening):]), self.width * times, self.height * times)


def said_of(one: Picture) -> list:
    """A picture as plain values."""
    return [one.svg, one.width, one.height]


def picture_of(said: list) -> Picture:
    """The picture of these values."""
    return Picture(Markup(said[0]), said[1], said[2])


NO_PICTURE = Picture(Markup(""), 0.0, 0.0)


def step_box(drawn: Picture, times: float = 1.0) -> str:
    """The classes of the box of a step picture that is drawn so many times as large as usual."""
    return "step-picture wide" if drawn.width > NARROW * times else "step-picture"


def alt_of(svg: str) -> str:
    """The text alternative that a drawing brings along."""
    return unescape(_TITLE.search(svg)[1])


def picture(svg: str, alt: str = "") -> Picture:
    """A drawing as a picture; `alt` replaces the text alternative that it brings along."""
    svg = svg[svg.index("<svg"):]
    opening = _OPEN.match(svg)
    # A picture may stand on a page more than once, so it must bring no id.
    attributes, body = _ID.sub("", opening[1]), svg[opening.end():]
    if alt:
        attributes = f'{_LABEL.sub("", attributes)} aria-label="{escape(alt)}"'
        body = f"<title>{escape(alt)}</title>{_TITLE.sub('', body, count=1)}"
    sizes = {name: float(value) for name, value in _SIZE.findall(attributes)}
    return Picture(Markup(f"<svg{attributes}>{body}"), sizes["width"], sizes["height"])
