"""Photos of finished pieces: their pixels, and the size at which they are printed."""

from __future__ import annotations

import warnings
from pathlib import Path

from ..source.book import Page
from ..source.files import inside
from .subject import Subject

FORMATS = ("JPEG", "PNG", "WEBP")
HIGHEST = 62.0          # mm of a photo on the page, as in templates/print.css
NATURAL = 25.4 / 96     # mm a pixel where nothing makes the picture smaller: CSS pixels


def photo_path(subject: Subject) -> Path | None:
    """The file of the photo; None where there is none that may be read."""
    photo, root = subject.pattern.photo, subject.workspace.root
    path = root / "patterns" / photo.file if photo else None
    return path if path and path.is_file() and inside(path, root) else None


def pixels(path: Path) -> tuple[int, int] | None:
    """Width and height as shown; None for a file that is no picture of FORMATS. Only its head is read."""
    from PIL import Image, UnidentifiedImageError   # imported here, because most patterns have no photo

    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore", Image.DecompressionBombWarning)   # nothing is decompressed
            with Image.open(path, formats=FORMATS) as image:
                turned = image.getexif().get(0x0112, 1) >= 5   # EXIF: the camera was held upright
                return image.size[::-1] if turned else image.size
    except (UnidentifiedImageError, Image.DecompressionBombError, OSError, ValueError, SyntaxError):
        return None


def printed_width(size: tuple[int, int], page: Page) -> float:
    """mm that a picture of so many pixels takes across the page."""
    outside = max(11.0, page.width * 0.09)
    measure = page.width - 2 * outside - page.gutter
    return min(measure, size[0] * NATURAL, HIGHEST * size[0] / size[1])
