"""A chart that is too large for its page, cut into parts that overlap, and the little map that shows where a part lies."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence

from msgspec import Struct

from ..craft.language import _
from . import alphabet, tone
from .colour import WHITE
from .labels import pen
from .picture import Picture, Style, polyline

OVERLAP = 2        # rows or stitches that two neighbouring parts share
NEAR = 1e-6
Label = tuple[str, float]


class Tile(Struct, frozen=True):
    """One part of a chart: what it shows of the plane, mm, and where the chart goes on."""

    left: float
    top: float
    right: float
    bottom: float
    cut_left: bool = False
    cut_top: bool = False
    cut_right: bool = False
    cut_bottom: bool = False


class Part(Struct, frozen=True):
    """A part of a chart as it is printed."""

    svg: str
    map: str
    said: str     # which part it is, and what it shows
    numbers: tuple[int, ...]   # of its rows or strands


class Margins(Struct, frozen=True):
    """Room for repeated numbers where a part is cut, mm."""

    side: float
    top: float


def spans(edges: Sequence[float], room: float, overlap: int = OVERLAP) -> list[tuple[float, float]]:
    """Parts of a line, each at most `room` long (or two steps), cut only at `edges` (rising) and sharing `overlap` steps with the next; about equally long."""
    if edges[-1] - edges[0] <= room + NEAR:
        return [(edges[0], edges[-1])]
    parts = _greedy(edges, room, overlap)
    low, high = (edges[-1] - edges[0]) / len(parts), room
    for _step in range(20):
        middle = (low + high) / 2
        low, high = (low, middle) if len(_greedy(edges, middle, overlap)) == len(parts) else (middle, high)
    return _greedy(edges, high, overlap)


def _greedy(edges: Sequence[float], room: float, overlap: int) -> list[tuple[float, float]]:
    parts, start = [], 0
    while True:
        stop = max([index for index in range(start, len(edges)) if edges[index] - edges[start] <= room + NEAR] + [min(start + overlap + 1, len(edges) - 1)])
        parts.append((edges[start], edges[stop]))
        if stop == len(edges) - 1:
            return parts
        start = max(start + 1, stop - overlap)


def tiles(across: Sequence[float], down: Sequence[float], width: float, height: float, margins: Margins,
          foot: Callable[[float, float], float] | None = None) -> tuple[Tile, ...]:
    """The parts of a chart whose columns end at `across` and whose rows end at `down`, for pages with room of width x height mm. Row of parts by row of parts.

    `foot(left, right)` is where the chart ends between two columns, if not everywhere at the end of `down`.
    """
    columns = spans(across, width) if across[-1] - across[0] <= width else spans(across, width - 2 * margins.side)
    found = []
    for left, right in columns:
        end = min(foot(left, right), down[-1]) if foot else down[-1]
        own = [*(edge for edge in down if edge < end - NEAR), end]
        rows = spans(own, height) if end - own[0] <= height else spans(own, height - margins.top)
        found += [(level, Tile(left, top, right, bottom, left > across[0], top > down[0], right < across[-1], bottom < end - NEAR))
                  for level, (top, bottom) in enumerate(rows)]
    return tuple(tile for _, tile in sorted(found, key=lambda one: one[0]))


def shown_part(picture: Picture, tile: Tile, margins: Margins, cap: float, rows: Iterable[Label], columns: Iterable[Label], *, alt: str, prefix: str) -> str:
    """The SVG of one part. Where it is cut, the numbers of its rows stand at the side and those of its columns at the top."""
    left = tile.left - margins.side * tile.cut_left
    right = tile.right + margins.side * tile.cut_right
    top = tile.top - margins.top * tile.cut_top
    ink, middle = pen(tone.TEXT, cap), margins.side / 2
    for cut, x, near in ((tile.cut_left, left, tile.left), (tile.cut_right, tile.right, tile.right)):
        if cut:
            _cover(picture, x, top, margins.side, tile.bottom - top)
            _edge(picture, [(near, tile.top), (near, tile.bottom)])
            for number, y in rows:
                if tile.top < y < tile.bottom:
                    picture.add("cut", ink, alphabet.word(number, x + middle, y, cap, "middle"))
    if tile.cut_top:
        _cover(picture, left, top, right - left, margins.top)
        _edge(picture, [(tile.left, tile.top), (tile.right, tile.top)])
        for number, x in columns:
            if tile.left < x < tile.right:
                picture.add("cut", ink, alphabet.word(number, x, top + margins.top / 2, cap, "middle"))
    if tile.cut_bottom:
        _edge(picture, [(tile.left, tile.bottom), (tile.right, tile.bottom)])
    return picture.svg(left, top, right - left, tile.bottom - top, alt=alt, prefix=prefix)


def _cover(picture: Picture, x: float, y: float, width: float, height: float) -> None:
    picture.add("cut", Style(fill=WHITE), polyline([(x, y), (x + width, y), (x + width, y + height), (x, y + height)]) + "z")


def _edge(picture: Picture, line: list[tuple[float, float]]) -> None:
    picture.add("cut", Style(stroke=tone.QUIET, width=0.3), polyline(line))


def map_svg(bars: Iterable[tuple[float, float, float, float]], parts: Sequence[Tile], here: int, side: float = 22.0) -> str:
    """The whole chart in grey with its parts as numbered frames, the one of index `here` firm; at most `side` mm wide and high.

    `bars` are the rows or strands: left, top, right, bottom.
    """
    left, top = min(tile.left for tile in parts), min(tile.top for tile in parts)
    width, height = max(tile.right for tile in parts) - left, max(tile.bottom for tile in parts) - top
    scale = side / max(width, height)
    picture = Picture(("chart", "parts", "here", "numbers"))
    for x, y, right, bottom in bars:
        corners = [((a - left) * scale, (b - top) * scale) for a, b in ((x, y), (right, y), (right, bottom), (x, bottom))]
        picture.add("chart", Style(fill=tone.GUIDE), polyline(corners) + "z")
    for index, tile in enumerate(parts):
        corners = [((a - left) * scale, (b - top) * scale) for a, b in ((tile.left, tile.top), (tile.right, tile.top), (tile.right, tile.bottom), (tile.left, tile.bottom))]
        firm = index == here
        picture.add("here" if firm else "parts", Style(stroke=tone.TEXT if firm else tone.QUIET, width=0.7 if firm else 0.2), polyline(corners) + "z")
        x, y = (corners[0][0] + corners[1][0]) / 2, (corners[0][1] + corners[2][1]) / 2
        picture.add("numbers", pen(tone.TEXT, 2.2), alphabet.word(str(index + 1), x, y, 2.2, "middle"))
    return picture.svg(-0.5, -0.5, width * scale + 1, height * scale + 1, alt=_("Where part {number} of {count} lies in the whole chart.", number=here + 1, count=len(parts)), prefix="map")
