"""Pages as a printer wants them: their boxes, and neutral colours as greys of the one black ink.

Boxes: ISO 32000-1, 14.11.2. The trimmed page lies within its bleed, and that within the sheet. Black type of four inks, which must meet
exactly, would be blurred.
"""

from __future__ import annotations

import re
from typing import Any

POINT = 72 / 25.4   # points in a millimetre
_RGB = re.compile(rb"^([\d.]+) ([\d.]+) ([\d.]+) (rg|RG)(?=\s|\Z)", re.MULTILINE)
_NEUTRAL = 0.0045   # of a channel; colours that differ less are one grey (8-bit colours differ by 0.0039)


def in_black(content: bytes) -> bytes:
    """What is painted, with neutral colours as greys."""
    return _RGB.sub(_grey, content)


def _grey(match: re.Match) -> bytes:
    channels = [float(value) for value in match.groups()[:3]]
    if max(channels) - min(channels) > _NEUTRAL:
        return match[0]
    return b"%s %s" % (match[2], b"g" if match[4] == b"rg" else b"G")


def boxed(page: dict[str, Any], bleed: float) -> None:
    """Give a page of the typesetter its boxes; `bleed` in mm."""
    left, bottom, right, top = (float(value) for value in page["TrimBox"])
    beyond = bleed * POINT
    page["BleedBox"] = _box(left - beyond, bottom - beyond, right + beyond, top + beyond)
    page["TrimBox"] = _box(left, bottom, right, top)
    page["CropBox"] = page["MediaBox"]


def _box(*corners: float):
    import pydyf

    return pydyf.Array([round(value, 4) for value in corners])
