"""The finished PDF made ready for a printer: boxes, crop marks, black as one ink, and what a standard asks to be said.

Boxes: ISO 32000-1, 14.11.2. The trimmed page lies within its bleed, and that within the sheet. Neutral colours become
greys of the one black ink, because four inks that must meet exactly would blur small type.
"""

from __future__ import annotations

import io
import re
from collections.abc import Iterator

from .edition import Edition
from .standards import X4, declare

POINT = 72 / 25.4        # points in a millimetre
MARK, AWAY = 5.0, 3.0    # mm: length of a crop mark, and its least distance from the trimmed page
LINE = 0.25              # points
_RGB = re.compile(rb"^([\d.]+) ([\d.]+) ([\d.]+) (rg|RG)(?=\s|\Z)", re.MULTILINE)
_NEUTRAL = 0.0045        # of a channel; colours that differ less are one grey (8-bit colours differ by 0.0039)


def finished(content: bytes, on: Edition, profile: bytes = b"", year: int | None = None) -> bytes:
    """The PDF of an edition as it leaves us: pages with their boxes, marks where they are asked for, greys in black ink alone."""
    import pikepdf

    with pikepdf.open(io.BytesIO(content)) as pdf:
        if not on.screen:
            _black_forms(pdf)
        for page in pdf.pages:
            _boxes(page, on)
            page.contents_coalesce()   # page numbers are laid over as streams of their own
            drawn = page.Contents.read_bytes()
            if not on.screen:
                drawn = _RGB.sub(_grey, drawn)
            if on.marks:
                drawn = b"q\n" + drawn + b"\nQ\n" + _marks(page, on)
            page.Contents = pikepdf.Stream(pdf, drawn)
        declare(pdf, on, profile, year)
        return saved(pdf, "1.6" if on.output == X4 else "")


def saved(pdf, version: str = "") -> bytes:
    """The file; the same bytes for the same content."""
    import pikepdf

    made = io.BytesIO()
    pdf.save(made, deterministic_id=True, object_stream_mode=pikepdf.ObjectStreamMode.generate, force_version=version, fix_metadata_version=False)
    return made.getvalue()


def _boxes(page, on: Edition) -> None:
    left, bottom, right, top = (float(value) for value in page.TrimBox)
    bleed = on.bleed * POINT
    page.BleedBox = _box(left - bleed, bottom - bleed, right + bleed, top + bleed)
    page.TrimBox = _box(left, bottom, right, top)
    page.CropBox = page.MediaBox


def _box(*corners: float):
    import pikepdf

    return pikepdf.Array([round(value, 4) for value in corners])


def _black_forms(pdf) -> None:
    """Let neutral colours of drawings that pages share be greys of the one black ink."""
    import pikepdf

    for held in pdf.objects:
        if isinstance(held, pikepdf.Stream) and held.get("/Subtype") == "/Form":
            held.write(_RGB.sub(_grey, held.read_bytes()))


def _grey(match: re.Match) -> bytes:
    channels = [float(value) for value in match.groups()[:3]]
    if max(channels) - min(channels) > _NEUTRAL:
        return match[0]
    return b"%s %s" % (match[2], b"g" if match[4] == b"rg" else b"G")


def _marks(page, on: Edition) -> bytes:
    """Crop marks at the four corners, outside the bleed, and white where a picture ran over it."""
    media, bleed, trim = ([float(value) for value in box] for box in (page.MediaBox, page.BleedBox, page.TrimBox))
    lines = "\n".join(f"{x1:.3f} {y1:.3f} m {x2:.3f} {y2:.3f} l S" for x1, y1, x2, y2 in _crosses(trim, max(on.bleed, AWAY) * POINT))
    frame = " ".join(f"{value:.3f}" for value in (media[0], media[1], media[2] - media[0], media[3] - media[1]))
    hole = " ".join(f"{value:.3f}" for value in (bleed[0], bleed[1], bleed[2] - bleed[0], bleed[3] - bleed[1]))
    return f"/Artifact BMC\nq\n1 g {frame} re {hole} re f*\n0 G {LINE} w\n{lines}\nQ\nEMC".encode()


def _crosses(trim: list[float], away: float) -> Iterator[tuple[float, float, float, float]]:
    left, bottom, right, top = trim
    long = MARK * POINT
    for x, side in ((left, -1), (right, 1)):
        for y, up in ((bottom, -1), (top, 1)):
            yield x + side * away, y, x + side * (away + long), y
            yield x, y + up * away, x, y + up * (away + long)
