"""Photos on web pages: bounded in size, upright, and without the place where they were taken."""

import io

import pytest
from PIL import Image

from booklet.bind.web.screen_photos import LONGEST, for_screens

TURNED, PLACE, TOP = 0x0112, 0x8825, (200, 30, 30)


def a_photo(kind, size, mode="RGB"):
    """A picture, red in its upper tenth, that a camera held on its side, with a place and a note in it."""
    image = Image.new(mode, size, "#2060a0")
    image.paste(TOP, (0, 0, size[0], size[1] // 10))
    exif = Image.Exif()
    exif[TURNED] = 6     # to be turned to the right by a quarter
    exif.get_ifd(PLACE)[2] = (48.0, 12.0, 30.0)
    file = io.BytesIO()
    image.save(file, kind, exif=exif)
    return file.getvalue()


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP"])
def test_a_large_photo_is_made_small_and_stands_upright(kind):
    large = a_photo(kind, (3000, 1200))
    small = for_screens(large)
    with Image.open(io.BytesIO(small)) as image:
        assert (image.format, image.size) == (kind, (640, LONGEST))
        assert not dict(image.getexif()) and "exif" not in image.info
        red, green, _blue = image.convert("RGB").getpixel((630, 800))    # what was the top is at the right
        assert red > 150 > 90 > green
    assert for_screens(large) == small


def test_a_small_photo_keeps_its_pixels_but_not_its_place():
    photo = a_photo("PNG", (400, 300))
    with Image.open(io.BytesIO(for_screens(photo))) as image:
        assert image.size == (300, 400) and not dict(image.getexif())


def test_colours_of_a_palette_and_see_through_ones_stay():
    clear = Image.new("RGBA", (20, 20), (10, 200, 30, 0)).quantize(4)
    file = io.BytesIO()
    clear.save(file, "PNG", transparency=0)
    with Image.open(io.BytesIO(for_screens(file.getvalue()))) as image:
        assert image.convert("RGBA").getpixel((5, 5))[3] == 0


def test_what_is_no_picture_stays():
    assert for_screens(b"no picture") == b"no picture"
