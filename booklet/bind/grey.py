"""A book without colour: every colour as the grey of equal luminance, photographs too.

Charts stay readable, because a letter stands in every bead in the ink that has the higher contrast with its luminance.
"""

from __future__ import annotations

import io
import re
from collections.abc import Mapping

from markupsafe import Markup

from ..draw.colour import grey_of

_COLOUR = re.compile(r'((?:fill|stroke|stop-color)="|[:\s,(])(#[0-9a-fA-F]{6}|#[0-9a-fA-F]{3})\b')
_PLACES = re.compile(r"<style>.*?</style>|<svg\b.*?</svg>|\sstyle=\"[^\"]*\"", re.DOTALL)


def greyed(html: str) -> Markup:
    """A page with the colours of its styles and drawings as greys. Texts that only mention a colour stay as they are."""
    return Markup(_PLACES.sub(lambda place: _COLOUR.sub(_grey, place[0]), str(html)))


def _grey(match: re.Match) -> str:
    colour = match[2].lower()
    if len(colour) == 4:
        colour = "#" + "".join(digit * 2 for digit in colour[1:])
    return match[1] + grey_of(colour)


def greyed_photos(photos: Mapping[str, bytes]) -> dict[str, bytes]:
    """The photographs in greys, in their own formats."""
    return {name: _photo(content) for name, content in photos.items()}


def _photo(content: bytes) -> bytes:
    from PIL import Image, ImageOps

    with Image.open(io.BytesIO(content)) as image:
        made, out = ImageOps.exif_transpose(image).convert("L"), io.BytesIO()
        made.save(out, image.format, **({"quality": 92} if image.format != "PNG" else {}))
    return out.getvalue()
