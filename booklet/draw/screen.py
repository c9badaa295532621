"""Pictures for web pages: the drawings of this package, written so that a page can colour, light and dim them.

A bead's colour is not written into the picture: its shapes have a class made of its key (`f-W`), and the page says which
colour that is. A bead is drawn once, as a marker, and stands at every corner of the paths that use it, one path for a run of
equal beads. All that belongs to a row or strand of a chart stands in one group with `data-part="row-3"`.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator, Sequence
from functools import partial
from html import escape
from math import hypot

from msgspec import Struct
from msgspec.structs import replace

from ..craft.beads import Bead
from ..craft.piece import Piece
from . import tone
from .alphabet import BASELINE, CAP_UNITS, ENDS
from .chart import chart_svg
from .colour import BLACK, WHITE
from .finish import LIGHTS
from .finished import PAIR_GAP, finished_svg, pair_alt
from .fringe import fringe_svg
from .legend import swatch_svg
from .picture import Picture, Point, Style
from .short import joined, short, short_number, through

CAP_HEIGHT = 0.66    # of the type size, in the sans serif of our pages
SPARE = 3            # steps between the stand-in colours, so that they differ when made pale, too
STAND_IN = "#208060"
LEVEL = 0.001        # mm: a line that rises less runs along an axis
INKS = {tone.TEXT: "ink", tone.QUIET: "quiet", tone.GAP: "gap", tone.pale(tone.GAP): "far", tone.GUIDE: "guide", tone.THREAD: "thread", WHITE: "paper"}
BEHIND = frozenset({"guides", "thread", "ground", "beads"})    # layers of a chart that lie under its rows and strands

_BOX = re.compile(r'viewBox="([^"]*)"')
_WIDTH = re.compile(r' width="[^"]*"')
_LABEL = re.compile(r'aria-label="[^"]*"')


def screen_chart(piece: Piece, bead: float, prefix: str = "body") -> str:
    """The chart of the body at `bead` mm from stitch to stitch, as SVG for a page. Its ids begin with the prefix."""
    return _drawn(chart_svg, piece, bead=bead, prefix=prefix)


def screen_fringe(piece: Piece, bead: float, prefix: str = "fringe") -> str:
    """The fringe chart as SVG for a page."""
    return _drawn(fringe_svg, piece, bead=bead, prefix=prefix)


def screen_view(piece: Piece, scale: float, prefix: str = "finished") -> str:
    """The finished piece as SVG for a page, `scale` times its real size."""
    return _drawn(finished_svg, piece, scale=scale, prefix=prefix)


def screen_file(piece: Piece, scale: float) -> str:
    """The finished piece as an SVG that can stand in a file of its own, with its colours."""
    svg = screen_view(piece, scale)
    colours = "".join(f".f-{key}{{fill:{bead.colour}}}" for key, bead in piece.legend.items())
    return svg.replace("<svg ", '<svg xmlns="http://www.w3.org/2000/svg" ', 1).replace("<style>", f"<style>{colours}", 1)


def screen_pair(piece: Piece, mirror: bool, scale: float, prefix: str = "pair") -> str:
    """Both pieces of a pair: the finished piece, and beside it the same drawing once more, turned over if `mirror` says so."""
    svg = screen_view(piece, scale, prefix)
    opening, body = svg[:svg.index(">") + 1], svg[svg.index(">") + 1:-len("</svg>")]
    left, top, width, height = map(float, _BOX.search(opening)[1].split())
    step = width + PAIR_GAP * scale
    placed = f"translate({short_number(2 * left + step + width)} 0)scale(-1 1)" if mirror else f"translate({short_number(step)} 0)"
    opening = _BOX.sub(f'viewBox="{left:g} {top:g} {width + step:.2f} {height:g}"', opening)
    opening = _WIDTH.sub(f' width="{short_number(width + step)}mm"', opening, count=1)
    opening = _LABEL.sub(lambda match: f'aria-label="{escape(pair_alt(piece, mirror=mirror))}"', opening)
    return f'{opening}<g id="{prefix}-one">{body}</g><use href="#{prefix}-one" transform="{placed}"/></svg>'


def screen_swatch(bead: Bead, prefix: str) -> str:
    """The swatch of a bead, as SVG for a page."""
    stand_in = replace(bead, colour=STAND_IN)
    return swatch_svg(stand_in, prefix=prefix, on=partial(Screen, stand_ins={STAND_IN: bead.key}))


def _drawn(draw: Callable[..., str], piece: Piece, **settings) -> str:
    """Draw with a stand-in colour for every key, from which the picture tells the key again."""
    stand_ins = {f"#{32 + SPARE * place:02x}{STAND_IN[3:]}": key for place, key in enumerate(piece.legend)}
    legend = {key: replace(piece.legend[key], colour=colour) for colour, key in stand_ins.items()}
    return draw(replace(piece, legend=legend), on=partial(Screen, stand_ins=stand_ins), **settings)


class Shape(Struct, frozen=True):
    """One paint of a bead: a rounded box of `wide` x `tall` mm, its middle at (x, y) from that of the bead."""

    paint: str
    wide: float
    tall: float
    corner: float
    x: float
    y: float

    def turned(self) -> Shape:
        """As it lies on a line that runs down the page, not to the right."""
        return Shape(self.paint, self.tall, self.wide, self.corner, -self.y, self.x)


class Letter(Struct, frozen=True):
    """The letter of a bead: how far its baseline lies below the bead's middle, and the height of capitals, mm."""

    key: str
    drop: float
    cap: float


class Beads(Struct):
    """A run of equal beads on a line, and the shapes of which each consists."""

    layer: str
    line: tuple[Point, ...]
    places: list[Point]
    shapes: list[Shape]

    @property
    def is_down(self) -> bool:
        return all(abs(x - self.line[0][0]) < LEVEL for x, _ in self.line)

    @property
    def is_level(self) -> bool:
        return all(abs(y - self.line[0][1]) < LEVEL for _, y in self.line)


class Screen(Picture):
    """A picture for a web page. `stand_ins`: the key for which each stand-in colour stands."""

    def __init__(self, layers: Iterable[str], stand_ins: dict[str, str]) -> None:
        super().__init__(layers)
        self._order, self._name = list(self._layers), ""
        self._parts: dict[str, dict[str, dict[Style, list[str]]]] = {}
        self._runs: dict[str, list[Beads]] = {}
        self._letters: dict[str, dict[tuple[float, float], Letter]] = {}
        self._markers: dict[tuple[tuple[Shape, ...], Letter | None, bool], str] = {}
        lights = {light for marks in LIGHTS.values() for light in marks}
        self._paints = {light.colour(colour): f'fill="{"#000" if light.towards == BLACK else "#fff"}" opacity="{short_number(light.share)}"'
                        for colour in stand_ins for light in lights}
        self._paints |= {tone.pale(colour): f'class="f-{key} pale"' for colour, key in stand_ins.items()}
        self._paints |= {colour: f'class="f-{key}"' for colour, key in stand_ins.items()}

    def part(self, name: str) -> None:
        self._name = name
        if name:
            self._parts.setdefault(name, {})

    def add(self, layer: str, style: Style, path: str) -> None:
        layers = self._parts[self._name] if self._name else self._layers
        layers.setdefault(layer, {}).setdefault(style, []).append(path)

    def letter(self, key: str, x: float, y: float, cap: float) -> bool:
        _left, _right, low, high = ENDS[key]
        drop = ((low + high) / 2 - BASELINE) * cap / CAP_UNITS
        self._letters.setdefault(self._name, {})[_near((x, y))] = Letter(key, round(drop, 4), round(cap, 4))
        return True

    def run(self, layer: str, colour: str, track, along: float, across: float, radius: float, shift: float, aside: float) -> bool:
        if layer.startswith("ground"):    # what shows between and round beads: one stroke, without their corners
            rest = (track.pitch - along) / 2
            dash = (along, 2 * rest) if rest > 0 else ()    # where beads of another row stand between
            self.add(layer, Style(stroke=colour, width=across, dash=dash), track.beside(0.0, rest, rest))
            return True
        runs = self._runs.setdefault(self._name, [])
        if layer.startswith("beads"):
            runs.append(Beads(layer, track.points, list(_middles(track.points, track.pitch)), []))
        sizes = (round(value, 4) for value in (along, across, radius, shift, aside))
        runs[-1].shapes.append(Shape(self._paints.get(colour, f'fill="{colour}"'), *sizes))
        return True

    def svg(self, left: float, top: float, width: float, height: float, *, alt: str, prefix: str) -> str:
        under = [name for name in self._order if not self._parts or name in BEHIND]
        over = [name for name in self._order if name not in under]
        body = [self._painted("", self._layers, under, prefix),
                *(f'<g data-part="{name}">{self._painted(name, layers, self._order, prefix)}</g>' for name, layers in self._parts.items()),
                self._painted("", self._layers, over, prefix)]
        size = f'width="{short_number(width)}mm" height="{short_number(height)}mm"'
        box = f"{left:.2f} {top:.2f} {width:.2f} {height:.2f}"
        return (f'<svg class="{prefix}" {size} viewBox="{box}" role="img" aria-label="{escape(alt)}" fill="none" stroke-linecap="round" '
                f'stroke-linejoin="round">{self._defined(prefix)}{"".join(body)}</svg>')

    def _painted(self, part: str, layers: dict[str, dict[Style, list[str]]], order: Iterable[str], prefix: str) -> str:
        """The layers of one group; letters that stand on no bead of a run come last."""
        letters, painted = dict(self._letters.get(part, {})), []
        runs = self._runs.get(part, [])
        for name in order:
            painted += [f'<path {self._look(style)} d="{short(_lines(style, parts))}"/>' for style, parts in layers.get(name, {}).items()]
            painted += [self._placed(run, letters, prefix) for run in runs if run.layer == name]
        return "".join([*painted, *(_text(place, letter) for place, letter in letters.items())])

    def _look(self, style: Style) -> str:
        filled = style.fill != "none"
        colour, parts = style.fill if filled else style.stroke, []
        if filled:
            parts.append(self._paints.get(colour) or f'fill="{colour}"')
            if style.stroke not in ("none", colour):
                parts.append(f'stroke="{style.stroke}"')
        else:
            parts.append(f'class="s-{INKS[colour]}"' if colour in INKS else f'stroke="{colour}"')
        if style.width:
            parts.append(f'stroke-width="{short_number(style.width)}"')
        if style.dash:
            parts.append(f'stroke-dasharray="{" ".join(map(short_number, style.dash))}"')
        if style.width and not style.round:
            parts.append('stroke-linecap="butt"')
        return " ".join(parts)

    def _placed(self, run: Beads, letters: dict[tuple[float, float], Letter], prefix: str) -> str:
        """The path of a run. Its marker turns with the line, but where the line runs along an axis it stands upright."""
        found = [letters.pop(_near(place), None) for place in run.places]
        upright = run.is_level or run.is_down
        shapes = tuple(shape.turned() for shape in run.shapes) if run.is_down and not run.is_level else tuple(run.shapes)
        name = self._markers.setdefault((shapes, found[0], upright), f"{prefix}-{len(self._markers)}")
        key = f' data-key="{found[0].key}"' if found[0] else ""
        places = [run.places[0], (run.line[-1])] if len(run.places) == 1 and not upright else run.places
        if len(places) > len(run.places):
            return f'<path{key} marker-start="url(#{name})" d="{through(places)}"/>'
        return f'<path{key} class="{name}" d="{through(places)}"/>'

    def _defined(self, prefix: str) -> str:
        if not self._markers:
            return ""
        rules = "".join(f".{name}{{marker:url(#{name})}}" for name in self._markers.values())
        return f"<style>{rules}</style><defs>{''.join(_marker(name, *what) for what, name in self._markers.items())}</defs>"


def _lines(style: Style, parts: Sequence[str]) -> str:
    """Path data; strokes that overlap in a line are one, which looks no different."""
    return "".join(parts) if style.dash or style.round or style.fill != "none" else joined("".join(parts))


def _near(place: Point) -> tuple[float, float]:
    return round(place[0], 3), round(place[1], 3)


def _middles(points: Sequence[Point], pitch: float) -> Iterator[Point]:
    """The middles of the beads of a run, at every `pitch` mm of its line from half of that on."""
    goal, done = pitch / 2, 0.0
    for (x, y), (next_x, next_y) in zip(points, points[1:]):
        length = hypot(next_x - x, next_y - y)
        while goal < done + length + pitch / 100:
            share = (goal - done) / length
            yield x + (next_x - x) * share, y + (next_y - y) * share
            goal += pitch
        done += length


def _marker(name: str, shapes: Sequence[Shape], letter: Letter | None, upright: bool) -> str:
    """A bead round (0, 0)."""
    turn = "" if upright else ' orient="auto"'
    body = "".join(map(_box, shapes)) + (_text((0.0, 0.0), letter) if letter else "")
    return f'<marker id="{name}" markerUnits="userSpaceOnUse" overflow="visible"{turn}>{body}</marker>'


def _box(shape: Shape) -> str:
    corner = f' rx="{short_number(min(shape.corner, shape.wide / 2, shape.tall / 2))}"' if shape.corner > LEVEL else ""
    place = f'x="{short_number(shape.x - shape.wide / 2)}" y="{short_number(shape.y - shape.tall / 2)}"'
    return f'<rect {shape.paint} {place} width="{short_number(shape.wide)}" height="{short_number(shape.tall)}"{corner}/>'


def _text(place: Point, letter: Letter) -> str:
    x, y = short_number(place[0]), short_number(place[1] + letter.drop)
    return f'<text class="i-{letter.key}" x="{x}" y="{y}" font-size="{short_number(letter.cap / CAP_HEIGHT)}">{letter.key}</text>'
