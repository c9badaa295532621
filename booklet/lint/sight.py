"""How far apart two colours look, to most eyes, to eyes with another colour sight, and in black and white.

Differences are CIEDE2000 on CIELAB under D65 (Sharma, Wu, Dalal 2005, Color Res. Appl. 30(1)); 1 is about the least that
can be seen side by side. A colour library takes longer to import than all other rules take to run, so the formula
stands here; tests/outside/ holds it to the published pairs and to such a library.
"""

from __future__ import annotations

from functools import lru_cache
from math import atan2, cos, degrees, exp, hypot, radians, sin, sqrt

from ..draw.colour import channels, decode, encode, from_channels, grey_of

Lab = tuple[float, float, float]

# Colour sight without one of the three kinds of cone: Machado 2009, severity 1.0, for linear light.
SIGHTS = {
    "red-blind": ((0.152286, 1.052583, -0.204868), (0.114503, 0.786281, 0.099216), (-0.003882, -0.048116, 1.051998)),
    "green-blind": ((0.367322, 0.860646, -0.227968), (0.280085, 0.672501, 0.047413), (-0.011820, 0.042940, 0.968881)),
    "blue-blind": ((1.255528, -0.076749, -0.178779), (-0.078411, 0.930809, 0.147602), (0.004733, 0.691367, 0.303900)),
}
_TO_XYZ = ((0.4123908, 0.3575843, 0.1804808), (0.2126390, 0.7151687, 0.0721923), (0.0193308, 0.1191948, 0.9505322))   # IEC 61966-2-1
_WHITE = tuple(sum(row) for row in _TO_XYZ)   # D65, so that a grey has no colour at all


def difference(one: str, other: str) -> float:
    """CIEDE2000 of two "#rrggbb" colours."""
    return ciede2000(lab(one), lab(other))


def is_under(one: str, other: str, least: float) -> bool:
    """Whether the difference of two colours is under `least`. Most are told apart by their lightness alone, of which CIEDE2000 takes 1/1.75 or more."""
    return abs(lab(one)[0] - lab(other)[0]) < 1.75 * least and difference(one, other) < least


@lru_cache(maxsize=1024)
def seen(colour: str, sight: str) -> str:
    """The colour as an eye with one of SIGHTS sees it; with "grey", what a black and white print shows."""
    if sight == "grey":
        return grey_of(colour)
    light = [decode(channel) for channel in channels(colour)]
    mixed = (sum(share * part for share, part in zip(row, light)) for row in SIGHTS[sight])
    return from_channels(*(encode(min(1.0, max(0.0, channel))) for channel in mixed))


@lru_cache(maxsize=1024)
def lab(colour: str) -> Lab:
    """CIELAB under D65 of an sRGB colour."""
    light = [decode(channel) for channel in channels(colour)]
    x, y, z = (_root(sum(share * part for share, part in zip(row, light)) / white) for row, white in zip(_TO_XYZ, _WHITE))
    return 116 * y - 16, 500 * (x - y), 200 * (y - z)


def _root(share: float) -> float:
    return share ** (1 / 3) if share > 216 / 24389 else (24389 / 27 * share + 16) / 116


def ciede2000(one: Lab, other: Lab) -> float:
    """The colour difference of two CIELAB colours."""
    (l1, a1, b1), (l2, a2, b2) = one, other
    grey = 0.5 * (1 - sqrt(_seventh((hypot(a1, b1) + hypot(a2, b2)) / 2)))
    a1, a2 = a1 * (1 + grey), a2 * (1 + grey)
    c1, c2, h1, h2 = hypot(a1, b1), hypot(a2, b2), _hue(a1, b1), _hue(a2, b2)
    turn = 0.0 if c1 * c2 == 0 else (h2 - h1 + 180) % 360 - 180 if abs(h2 - h1) != 180 else h2 - h1
    dl, dc, dh = l2 - l1, c2 - c1, 2 * sqrt(c1 * c2) * sin(radians(turn / 2))
    light, chroma, hue = (l1 + l2) / 2, (c1 + c2) / 2, _middle(h1, h2, c1 * c2 == 0)
    t = (1 - 0.17 * cos(radians(hue - 30)) + 0.24 * cos(radians(2 * hue)) + 0.32 * cos(radians(3 * hue + 6))
         - 0.20 * cos(radians(4 * hue - 63)))
    sl = 1 + 0.015 * (light - 50) ** 2 / sqrt(20 + (light - 50) ** 2)
    sc, sh = 1 + 0.045 * chroma, 1 + 0.015 * chroma * t
    twist = -sin(radians(60 * exp(-((hue - 275) / 25) ** 2))) * 2 * sqrt(_seventh(chroma))
    return sqrt((dl / sl) ** 2 + (dc / sc) ** 2 + (dh / sh) ** 2 + twist * (dc / sc) * (dh / sh))


def _seventh(chroma: float) -> float:
    return chroma ** 7 / (chroma ** 7 + 25.0 ** 7)


def _hue(a: float, b: float) -> float:
    return degrees(atan2(b, a)) % 360


def _middle(one: float, other: float, is_grey: bool) -> float:
    """The mean of two hues, the short way round; a grey has no hue to share."""
    total = one + other
    if is_grey:
        return total
    return total / 2 if abs(one - other) <= 180 else (total + 360) / 2 if total < 360 else (total - 360) / 2
