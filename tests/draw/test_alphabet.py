"""The stroke alphabet: complete, unmistakable, and of the shapes that readers know."""

import io
import string
from itertools import combinations
from pathlib import Path

import font_source_sans_pro
import numpy
import pytest
from PIL import Image, ImageDraw, ImageFont
from skimage.measure import label

from booklet.draw import alphabet
from booklet.draw.labels import pen
from booklet.draw.picture import Picture
from booklet.draw.png import png_bytes

KEYS = string.ascii_letters + string.digits
SIDE = 80    # pixels of a glyph's picture


def shape(char):
    """A glyph as ink between 0 and 1, on a square that holds capitals and descenders."""
    picture = Picture(["letters"])
    unit = 10 / alphabet.CAP_UNITS
    picture.add("letters", pen("#000000", 10), alphabet._placed(char, 3, 12 + 2 * unit, unit))
    image = Image.open(io.BytesIO(png_bytes(picture.svg(0, 0, 16, 16, alt=char, prefix="g"), dpi=25.4 * SIDE / 16)))
    return cut(1 - numpy.asarray(image.convert("L")) / 255)


def cut(ink):
    """The columns that have ink, stretched to one width: letters are compared by form, not by how wide they run."""
    columns = numpy.flatnonzero(ink.max(axis=0) > 0.3)
    part = Image.fromarray((255 * ink[:, columns[0]:columns[-1] + 1]).astype("uint8"))
    return numpy.asarray(part.resize((SIDE // 2, SIDE), Image.Resampling.BILINEAR)) / 255


def parts_and_holes(ink):
    """How many separate strokes a glyph has, and how many closed counters."""
    dark = numpy.pad(ink > 0.5, 2)
    return label(dark, connectivity=2).max(), label(~dark, connectivity=1).max() - 1


def unlikeness(one, other):
    return float(((one - other) ** 2).mean())


def test_every_bead_key_has_a_glyph():
    assert set(alphabet.GLYPHS) == set(KEYS)


def test_no_two_glyphs_look_alike():
    shapes = {char: shape(char) for char in KEYS}
    closest = min(combinations(KEYS, 2), key=lambda pair: unlikeness(shapes[pair[0]], shapes[pair[1]]))
    assert unlikeness(*(shapes[char] for char in closest)) > 0.008, closest


@pytest.mark.parametrize("char", sorted(set(KEYS) - {"0", "g"}))
def test_glyphs_are_built_as_in_a_text_face(char):
    """As many parts and closed counters as the same letter of the open Source Sans design, whose g has two bowls and whose 0 no bar."""
    files = Path(font_source_sans_pro.__file__).parent / "files"
    font = ImageFont.truetype(str(files / "SourceSansPro-Regular.otf"), 4 * SIDE)
    image = Image.new("L", (6 * SIDE, 6 * SIDE), 0)
    ImageDraw.Draw(image).text((2 * SIDE, 4 * SIDE), char, fill=255, font=font, anchor="ls")
    assert parts_and_holes(shape(char)) == parts_and_holes(numpy.asarray(image) / 255)


def test_zero_has_a_bar_inside():
    assert parts_and_holes(shape("0")) == (2, 1)
    assert parts_and_holes(shape("O")) == (1, 1)


@pytest.mark.parametrize("text", ["1", "10", "base", "23"])
def test_a_word_is_as_wide_as_it_says(text):
    picture = Picture(["letters"])
    picture.add("letters", pen("#000000", 3), alphabet.word(text, 2, 5, 3))
    image = Image.open(io.BytesIO(png_bytes(picture.svg(0, 0, 20, 10, alt=text, prefix="w"), dpi=254)))
    columns = numpy.flatnonzero((numpy.asarray(image.convert("L")) < 128).any(axis=0))
    line = 3 * alphabet.STROKE / alphabet.CAP_UNITS
    assert (columns[-1] + 1 - columns[0]) / 10 == pytest.approx(alphabet.width(text, 3) + line, abs=0.15)
