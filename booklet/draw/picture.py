"""A picture: layers of merged paths, written as one small SVG document.

Everything with the same style in the same layer is one <path>. Lengths are mm; y runs down.
"""

from __future__ import annotations

from collections.abc import Iterable

from msgspec import Struct

from .numbers import num

Point = tuple[float, float]
END = "</svg>"


class Style(Struct, frozen=True):
    """How a path is painted."""

    fill: str = "none"
    stroke: str = "none"
    width: float = 0.0
    dash: tuple[float, ...] = ()
    round: bool = False    # round ends and joins


class Picture:
    """Collects paths by layer and style. Layers are painted in the order given here."""

    draws = True   # False where only the room that a picture takes is asked for
    moves = False  # True where it is shown action by action, too

    def __init__(self, layers: Iterable[str] = ()) -> None:
        self._layers: dict[str, dict[Style, list[str]]] = {name: {} for name in layers}

    def add(self, layer: str, style: Style, path: str) -> None:
        """Add path data (absolute starts, `M`) to a layer."""
        self._layers[layer].setdefault(style, []).append(path)

    def part(self, name: str) -> None:
        """What comes now belongs to this row or strand, or to this action of a step; on paper that makes no difference."""

    def letter(self, key: str, x: float, y: float, cap: float) -> bool:
        """Whether the picture sets the letter of a bead itself, as type."""
        return False

    def fill(self, key: str, colour: str, is_pale: bool) -> str:
        """What a bead of this key is filled with; `colour` is its colour, made pale already where it is to be pale."""
        return colour

    def run(self, layer: str, colour: str, track, along: float, across: float, radius: float, *moved: float) -> bool:
        """Whether the picture draws a run of beads in a way of its own; the values are those of `beads.lay`."""
        return False

    def svg(self, left: float, top: float, width: float, height: float, *, alt: str, prefix: str,
            scale: float = 1.0) -> str:
        """The SVG text of the part of the plane from (left, top), `width` x `height` mm large; printed `scale` times as large."""
        from svgwrite.base import Title  # loaded late: it takes longer to load than a chart to draw
        from svgwrite.container import SVG

        root = SVG(size=(f"{num(width * scale)}mm", f"{num(height * scale)}mm"), debug=False)
        root.elements.remove(root.defs)
        root.attribs.update({"xmlns": "http://www.w3.org/2000/svg", "id": prefix, "role": "img", "aria-label": alt,
                             "viewBox": f"{num(left)} {num(top)} {num(width)} {num(height)}"})
        root.add(Title(alt))
        # The paths are written out: the library takes ten times as long for them, and there is nothing in them to be escaped.
        paths = [_path(name, style, "".join(parts)) for name, styles in self._layers.items() for style, parts in styles.items()]
        return f"{root.tostring().removesuffix(END)}{''.join(paths)}{END}"


class Blank(Picture):
    """A picture of which only the size is wanted: it keeps nothing."""

    draws = False

    def add(self, layer: str, style: Style, path: str) -> None:
        """Nothing to keep."""


def _path(name: str, style: Style, data: str) -> str:
    parts = [f'<path class="{name}" d="{data}" fill="{style.fill}"']
    if style.stroke != "none":
        parts.append(f'stroke="{style.stroke}"')
    if style.dash:
        parts.append(f'stroke-dasharray="{" ".join(map(num, style.dash))}"')
    if style.round:
        parts.append('stroke-linecap="round" stroke-linejoin="round"')
    if style.stroke != "none":
        parts.append(f'stroke-width="{num(style.width)}"')
    return f"{' '.join(parts)} />"


def line(x: float, y: float, end_x: float, end_y: float) -> str:
    """Path data of one straight line."""
    return f"M{num(x)} {num(y)}{_step(end_x - x, end_y - y)}"


def polyline(points: Iterable[Point]) -> str:
    """Path data through points, with horizontal and vertical steps written short."""
    (x, y), *rest = points
    made = f"M{num(x)} {num(y)}"
    for next_x, next_y in rest:
        made += _step(next_x - x, next_y - y)
        x, y = next_x, next_y
    return made


def _step(right: float, lower: float) -> str:
    across, down = num(right), num(lower)
    return f"h{across}" if down == "0" else f"v{down}" if across == "0" else f"l{across} {down}"
