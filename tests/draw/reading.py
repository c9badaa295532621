"""Reading pictures back: pixels at places, blobs, and the letters and figures that the strokes spell."""

from __future__ import annotations

import io
import re
import xml.etree.ElementTree as ET
from dataclasses import dataclass

import numpy
from PIL import Image
from skimage.measure import label, regionprops

from booklet.draw import alphabet
from booklet.draw.png import png_bytes

DPI = 300
SVG = "{http://www.w3.org/2000/svg}"


@dataclass(frozen=True)
class Spelt:
    """A letter found in a picture: its character and the middle of its extent, mm."""

    char: str
    x: float
    y: float
    ink: str


class Seen:
    """A picture of ours as a viewer sees it."""

    def __init__(self, svg: str, without: tuple[str, ...] = ()) -> None:
        self.root = ET.fromstring(svg)
        for path in list(self.paths()):
            if path.get("class") in without:
                self.root.remove(path)
        self.left, self.top, self.width, self.height = map(float, self.root.get("viewBox").split())
        image = Image.open(io.BytesIO(png_bytes(ET.tostring(self.root, "unicode"), dpi=DPI))).convert("RGB")
        self.pixels = numpy.asarray(image)

    def paths(self, layer: str = ""):
        return [path for path in self.root.iter(f"{SVG}path") if not layer or path.get("class") == layer]

    def colour(self, x: float, y: float) -> str:
        """The pixel at a place in mm, as "#rrggbb"."""
        row, column = (int((value - start) / 25.4 * DPI) for value, start in ((y, self.top), (x, self.left)))
        return "#{:02x}{:02x}{:02x}".format(*self.pixels[row, column])

    def blobs(self, colours, least: float = 0.2):
        """Areas of these colours: (x, y, width, height) in mm of each one of `least` square mm or more."""
        mask = numpy.zeros(self.pixels.shape[:2], bool)
        for colour in colours:
            wanted = numpy.array([int(colour[i:i + 2], 16) for i in (1, 3, 5)])
            mask |= (abs(self.pixels.astype(int) - wanted) <= 2).all(axis=2)
        mm, found = 25.4 / DPI, []
        for region in regionprops(label(mask, connectivity=1)):
            if region.area * mm * mm >= least:
                top, left, bottom, right = region.bbox
                found.append((self.left + (left + right) / 2 * mm, self.top + (top + bottom) / 2 * mm,
                              (right - left) * mm, (bottom - top) * mm))
        return found

    def spelt(self, layer: str) -> list[Spelt]:
        """The letters and figures of a layer, in the order in which they are drawn."""
        return [letter for path in self.paths(layer) for letter in _spelt(path)]

    def numbers(self, layer: str) -> list[tuple[int, float, float]]:
        """Numbers of a layer, as (number, x of its middle, y)."""
        return [(int(text), x, y) for text, x, y in self.names(layer)]

    def names(self, layer: str) -> list[tuple[str, float, float]]:
        """Numbers of a layer, with a letter if they have one: signs on one height that stand close together."""
        words: list[list[Spelt]] = []
        for letter in self.spelt(layer):
            last = words[-1][-1] if words else None
            # A word runs on to the right of its last letter, never far; the middle of a small letter is a little lower.
            if last and abs(last.y - letter.y) < 0.3 * _cap(self.paths(layer)[0]) and 0 < letter.x - last.x < 1.5 * _cap(self.paths(layer)[0]):
                words[-1].append(letter)
            else:
                words.append([letter])
        return [("".join(letter.char for letter in word).replace("O", "0"),
                 (word[0].x + word[-1].x) / 2, word[0].y) for word in words]


def _cap(path) -> float:
    return float(path.get("stroke-width")) / alphabet.STROKE * alphabet.CAP_UNITS


def _spelt(path) -> list[Spelt]:
    strokes = [(float(x), float(y), rest) for x, y, rest in re.findall(r"M(-?[\d.]+) (-?[\d.]+)([^M]*)", path.get("d"))]
    unit, found = float(path.get("stroke-width")) / alphabet.STROKE, []
    while strokes:
        char = max((char for char in alphabet.GLYPHS if _begins(strokes, char, unit)), key=lambda c: len(alphabet.GLYPHS[c]))
        lines = alphabet.GLYPHS[char]
        points = [point for line in lines for point in line]
        (x, y, _), (at_x, at_y) = strokes[0], lines[0][0]
        xs, ys = [p[0] for p in points], [p[1] for p in points]
        found.append(Spelt(char, x + ((min(xs) + max(xs)) / 2 - at_x) * unit, y - ((min(ys) + max(ys)) / 2 - at_y) * unit,
                           path.get("stroke")))
        strokes = strokes[len(lines):]
    return found


def _begins(strokes, char: str, unit: float) -> bool:
    lines = alphabet.GLYPHS[char]
    if len(strokes) < len(lines):
        return False
    zero = (strokes[0][0] - lines[0][0][0] * unit, strokes[0][1] + lines[0][0][1] * unit)
    return all(abs(x - zero[0] - line[0][0] * unit) < 0.02 and abs(y - zero[1] + line[0][1] * unit) < 0.02
               and _near(_steps(rest), [((b[0] - a[0]) * unit, (a[1] - b[1]) * unit) for a, b in zip(line, line[1:])])
               for (x, y, rest), line in zip(strokes, lines))


def _near(one, other) -> bool:
    return len(one) == len(other) and all(abs(a - b) < 0.01 for p, q in zip(one, other) for a, b in zip(p, q))


def _steps(rest: str) -> list[tuple[float, float]]:
    """The steps of a path's relative commands; of a curve, where it ends."""
    steps = []
    for command, numbers in re.findall(r"([hvlq])([^hvlq]*)", rest):
        values = [float(value) for value in re.findall(r"-?[\d.]+", numbers)]
        steps.append({"h": (values[0], 0.0), "v": (0.0, values[0])}.get(command, tuple(values[-2:])))
    return steps
