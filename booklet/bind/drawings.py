"""Drawings for print: our own SVG as ready PDF operators, because the typesetter takes a third of a build to read paths.

A page keeps a small <svg> with its size and its text alternative; the paths wait here under their digest until the page is
painted. Whatever goes beyond the few commands that booklet draws with stays SVG and is left to the typesetter.

A drawing may also lie in a file beside the page, which is how a large book's thousand small pictures are held: nobody keeps their SVG.
"""

from __future__ import annotations

import re
import zlib
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass, replace
from hashlib import sha256
from types import MappingProxyType

PICTURE = re.compile(r"<svg\b([^>]*)>([^<]*(?:<(?!/svg>)[^<]*)*)</svg>")
_TITLE = re.compile(r"\s*<title>.*?</title>", re.DOTALL)
_PATH = re.compile(r"\s*<path((?:\s+[a-z-]+=\"[^\"]*\")*)\s*(?:/>|></path>)", re.DOTALL)
_ATTRIBUTE = re.compile(r"([a-zA-Z-]+)=\"([^\"]*)\"")
_LINE = re.compile(r"M(-?[0-9.]+) (-?[0-9.]+)([^M]*)")   # one line or outline of a path: where it begins, and its steps
_COMMAND = re.compile(r"([A-Za-z])([^A-Za-z]*)")
_KNOWN = {"class", "d", "fill", "stroke", "stroke-width", "stroke-dasharray", "stroke-linecap", "stroke-linejoin"}
_ENDS = {"butt": 0, "round": 1, "square": 2}
_CORNERS = {"miter": 0, "round": 1, "bevel": 2}
_FILE = re.compile(r'\bdata-src="([^"]*)"')
FOLDER = "drawings/"   # of the addresses of drawings that lie beside a page
FINE = 1000   # steps in a unit: pictures are drawn to thousandths, and whole numbers add up without error


@dataclass(frozen=True)
class Folded:
    """Compressed operators. The typesetter asks for the text of what is no bytes when it writes a page, and so unfolds one page at a time."""

    content: bytes

    def __str__(self) -> str:
        return zlib.decompress(self.content).decode("ascii")


@dataclass(frozen=True)
class Drawing:
    """A picture as the typesetter places it. Sizes are CSS pixels, the box is in units of the picture."""

    width: float
    height: float
    box: tuple[float, float, float, float]
    operators: bytes | Folded

    def get_intrinsic_size(self, resolution, font_size) -> tuple[float, float, float]:
        """Width, height and their ratio, as the typesetter asks for them."""
        return self.width, self.height, self.width / self.height

    def draw(self, stream, width: float, height: float, style) -> None:
        """Paint into a box of this size, centred, at one scale for both directions."""
        left, top, wide, high = self.box
        scale = min(width / wide, height / high)
        stream.push_state()
        stream.set_alpha(1, stroke=True)
        across, down = (width - wide * scale) / 2 - left * scale, (height - high * scale) / 2 - top * scale
        stream.transform(a=scale, d=scale, e=across, f=down)
        stream.stream.append(self.operators)
        stream.pop_state()


def beside(svg: str) -> tuple[str, str, bytes]:
    """A picture of ours for a page that does not hold its drawing: a small <svg>, the address that it names, and what lies there."""
    match = PICTURE.match(svg)
    content = zlib.compress(read(match[1], match[2]).operators)
    name = FOLDER + sha256(content).hexdigest()[:32]
    return f'<svg{match[1]} data-src="{name}">{_TITLE.match(match[2])[0]}</svg>', name, content


def set_aside(html: str, files: Mapping[str, bytes] = MappingProxyType({})) -> tuple[str, dict[str, Drawing]]:
    """The page with small <svg> elements for its pictures, and the drawings by the names that these carry. `files`: those that lie beside the page."""
    drawings: dict[str, Drawing] = {}

    def small(match: re.Match) -> str:
        if (file := _FILE.search(match[1])) and file[1] in files:
            drawings[file[1]] = replace(read(match[1], match[2]), operators=Folded(files[file[1]]))
            return f'<svg{match[1]} data-drawing="{file[1]}">{match[2]}</svg>'
        name = sha256(match[0].encode()).hexdigest()[:32]
        drawing = drawings.get(name) or read(match[1], match[2])
        if drawing is None:
            return match[0]
        drawings[name] = drawing
        return f'<svg{match[1]} data-drawing="{name}">{_TITLE.match(match[2])[0]}</svg>'

    return PICTURE.sub(small, html), drawings


def read(attributes: str, body: str) -> Drawing | None:
    """A picture as a drawing; None if it holds anything else than a title and plain paths."""
    said, title = dict(_ATTRIBUTE.findall(attributes)), _TITLE.match(body)
    sizes = [_pixels(said.get(side, "")) for side in ("width", "height")]
    box = tuple(map(float, said["viewBox"].split())) if "viewBox" in said else ()
    if title is None or len(box) != 4 or not all(sizes) or not all(box[2:]):
        return None
    paths, at = [], title.end()
    while match := _PATH.match(body, at):
        paths.append(dict(_ATTRIBUTE.findall(match[1])))
        at = match.end()
    if body[at:].strip() or not all(path.keys() <= _KNOWN for path in paths):
        return None
    try:
        return Drawing(sizes[0], sizes[1], box, "\n".join(["4 M", *map(_painted, paths)]).encode())
    except (KeyError, ValueError):
        return None


@contextmanager
def placed(drawings: Mapping[str, Drawing]) -> Iterator[None]:
    """While a document is set, an <svg> that stands for a drawing is painted as that drawing.

    The typesetter has no public way to do this for an inline <svg>; a test holds its pages against those made from SVG.
    """
    from weasyprint.html import HTML_HANDLERS, make_replaced_box

    svg = "{http://www.w3.org/2000/svg}svg"
    own = HTML_HANDLERS[svg]

    def handler(element, box, get_image, base_url):
        drawing = drawings.get(element.get("data-drawing"))
        return [make_replaced_box(element, box, drawing)] if drawing else own(element, box, get_image, base_url)

    HTML_HANDLERS[svg] = handler
    try:
        yield
    finally:
        HTML_HANDLERS[svg] = own


def _pixels(length: str) -> float:
    return float(length[:-2]) * 96 / 25.4 if re.fullmatch(r"[0-9.]+mm", length) else 0.0


def _painted(path: dict[str, str]) -> str:
    """The operators of one path."""
    fill, stroke, width = path.get("fill", "#000000"), path.get("stroke", "none"), _STEPS[path.get("stroke-width", "1")]
    stroke, parts = stroke if width else "none", []   # in PDF a line of no width would be drawn as thin as can be
    if fill != "none":
        parts.append(f"{_COLOURS[fill]} rg")
    if stroke != "none":
        parts.append(f"{_COLOURS[stroke]} RG {_SAID[width]} w [{_dashes(path)}] 0 d "
                     f"{_ENDS[path.get('stroke-linecap', 'butt')]} J {_CORNERS[path.get('stroke-linejoin', 'miter')]} j")
    parts.append(_lines(path.get("d", "")))
    parts.append({(True, True): "B", (True, False): "f", (False, True): "S", (False, False): "n"}[fill != "none", stroke != "none"])
    return "\n".join(parts)


def _dashes(path: dict[str, str]) -> str:
    """The dashes of a line; a gap below zero makes it a whole line, as in SVG."""
    lengths = [_STEPS[length] for length in path.get("stroke-dasharray", "").split()]
    return "" if any(length < 0 for length in lengths) else " ".join(_SAID[length] for length in lengths)


def _colour(text: str) -> str:
    """#rgb or #rrggbb as three shares of one. Raises ValueError for anything else."""
    digits = text[1:] if len(text) == 7 else "".join(2 * digit for digit in text[1:])
    if text[:1] != "#" or len(digits) != 6:
        raise ValueError(text)
    return " ".join(f"{int(digits[at:at + 2], 16) / 255:.6f}".rstrip("0").rstrip(".") for at in (0, 2, 4))


class _Known(dict):
    """What a function gives, worked out once: pictures have few different numbers. Forgets all when it has grown large."""

    def __init__(self, function: Callable, most: int = 100_000) -> None:
        self.function, self.most = function, most

    def __missing__(self, key):
        if len(self) > self.most:
            self.clear()
        self[key] = made = self.function(key)
        return made


_STEPS = _Known(lambda length: round(float(length) * FINE))
_SAID = _Known(lambda steps: f"{steps / FINE:.3f}".rstrip("0").rstrip("."))


_COLOURS = _Known(_colour)


def _lines(data: str) -> str:
    """Path data as operators. Raises ValueError for commands that booklet does not draw with.

    Most lines of a picture go on as others of it do, from another place: a letter, the edge of a bead. What follows the first point is read once.
    """
    said, steps_of, known = _SAID, _STEPS, _MOVES
    made, length = [], 0
    for left, top, rest in _LINE.findall(data):
        length += len(left) + len(top) + len(rest) + 2
        moves = known[rest]
        if moves is None:
            made.append(_any_lines(f"M{left} {top}{rest}"))
            continue
        x = start_x = steps_of[left]
        y = start_y = steps_of[top]
        made.append(f"{said[x]} {said[y]} m")
        for move in moves:
            if len(move) == 2:
                x, y = x + move[0], y + move[1]
                made.append(f"{said[x]} {said[y]} l")
            elif move:
                made.append(_curve(x + move[0], y + move[1], x + move[2], y + move[3], x + move[4], y + move[5]))
                x, y = x + move[4], y + move[5]
            else:
                x, y = start_x, start_y
                made.append("h")
    return "\n".join(made) if length == len(data) else _any_lines(data)


def _moves(steps: str) -> tuple[tuple[int, ...], ...] | None:
    """Steps of a line from wherever it is: across and down, those for the controls and the end of a curve, nothing for its close. None where one says a place."""
    if steps and not steps[0].isalpha():
        return None
    made = []
    for command, rest in _COMMAND.findall(steps):
        numbers = [_STEPS[number] for number in rest.split()]
        if command == "h":
            (across,) = numbers
            made.append((across, 0))
        elif command == "v":
            (down,) = numbers
            made.append((0, down))
        elif command == "l":
            across, down = numbers
            made.append((across, down))
        elif command == "q":
            across, down, to_x, to_y = numbers
            made.append((round(across * 2 / 3), round(down * 2 / 3), round((2 * across + to_x) / 3), round((2 * down + to_y) / 3), to_x, to_y))
        elif command == "z":
            made.append(())
        else:
            return None
    return tuple(made)


_MOVES = _Known(_moves, 4000)


def _any_lines(data: str) -> str:
    """Path data with any of our commands as operators."""
    said, steps_of = _SAID, _STEPS
    x = y = start_x = start_y = 0
    made = []
    for command, rest in _COMMAND.findall(data):
        numbers = [steps_of[number] for number in rest.split()]
        if command == "h":
            (across,) = numbers
            x += across
            made.append(f"{said[x]} {said[y]} l")
        elif command == "v":
            (down,) = numbers
            y += down
            made.append(f"{said[x]} {said[y]} l")
        elif command in "MmLl":
            across, down = numbers
            x, y = (across, down) if command in "ML" else (x + across, y + down)
            if command in "Mm":
                start_x, start_y = x, y
            made.append(f"{said[x]} {said[y]} {command.lower()}")
        elif command in "Qq":
            across, down, to_x, to_y = numbers if command == "q" else [number - (y if at % 2 else x) for at, number in enumerate(numbers)]
            made.append(_curve(x + round(across * 2 / 3), y + round(down * 2 / 3), x + round((2 * across + to_x) / 3),
                               y + round((2 * down + to_y) / 3), x + to_x, y + to_y))
            x, y = x + to_x, y + to_y
        elif command == "C":
            x, y = numbers[4:]
            made.append(_curve(*numbers))
        elif command == "z":
            x, y = start_x, start_y
            made.append("h")
        elif command == "V":
            (y,) = numbers
            made.append(f"{said[x]} {said[y]} l")
        else:
            raise ValueError(command)
    return "\n".join(made)


def _curve(one_x: int, one_y: int, two_x: int, two_y: int, x: int, y: int) -> str:
    said = _SAID
    return f"{said[one_x]} {said[one_y]} {said[two_x]} {said[two_y]} {said[x]} {said[y]} c"
