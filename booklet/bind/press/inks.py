"""Pages as a printer wants them: their boxes, and neutral colours as greys of the one black ink.

Boxes: ISO 32000-1, 14.11.2. The trimmed page lies within its bleed, and that within the sheet. Black type of four inks, which must meet
exactly, would be blurred.
"""

from __future__ import annotations

import re
from functools import lru_cache
from typing import Any

POINT = 72 / 25.4   # points in a millimetre
_RGB = re.compile(rb"([\d.]+) ([\d.]+) ([\d.]+)")
_NEUTRAL = 0.0045   # of a channel; colours that differ less are one grey (8-bit colours differ by 0.0039)


def in_black(content: bytes) -> bytes:
    """What is painted, with neutral colours as greys. A colour stands at the beginning of a line; it is looked for from its operator, which is found faster."""
    for operator, grey in ((b" rg", b" g"), (b" RG", b" G")):
        before, *parts = content.split(operator)
        made, starts = [], True    # whether what is before begins a line
        for after in parts:
            head, line, said = before.rpartition(b"\n")
            green = _neutral(said) if (line or starts) and (not after or after[:1].isspace()) else b""
            made += [head, line, green, grey] if green else [before, operator]
            before, starts = after, False
        content = b"".join([*made, before])
    return content


@lru_cache(maxsize=1024)
def _neutral(colour: bytes) -> bytes:
    """The middle channel of a colour that is a grey; nothing for any other."""
    match = _RGB.fullmatch(colour)
    channels = [float(value) for value in match.groups()] if match else []
    return match[2] if match and max(channels) - min(channels) <= _NEUTRAL else b""


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
