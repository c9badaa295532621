"""Plain words for colours, and whether a bead looks so.

Each word has a wide range of CIELAB hue, lightness and chroma (common practice, no source): it is for finding a red bead that
is called blue, not for choosing a name.
"""

from __future__ import annotations

from math import atan2, degrees, hypot

from msgspec import Struct

from .sight import lab


class _Range(Struct, frozen=True):
    """What may be called so. Hues are degrees of CIELAB and may run through 0."""

    hues: tuple[float, float] = (0.0, 360.0)
    light: tuple[float, float] = (0.0, 100.0)
    chroma: tuple[float, float] = (0.0, 200.0)

    def holds(self, colour: str) -> bool:
        light, a, b = lab(colour)
        chroma, hue = hypot(a, b), degrees(atan2(b, a)) % 360
        low, high = self.hues
        in_hue = low <= hue <= high if low <= high else hue >= low or hue <= high
        return in_hue and self.light[0] <= light <= self.light[1] and self.chroma[0] <= chroma <= self.chroma[1]


_COLOURED = (4.0, 200.0)
_RANGES = {
    "white": _Range(light=(78, 100), chroma=(0, 20)),
    "black": _Range(light=(0, 30), chroma=(0, 28)),
    "grey": _Range(light=(12, 90), chroma=(0, 24)),
    "silver": _Range(light=(35, 100), chroma=(0, 24)),
    "red": _Range((340, 65), (5, 80), _COLOURED),
    "pink": _Range((300, 65), (35, 100), _COLOURED),
    "orange": _Range((25, 90), (25, 95), (15, 200)),
    "brown": _Range((20, 110), (5, 65), _COLOURED),
    "gold": _Range((45, 115), (20, 100), _COLOURED),
    "yellow": _Range((65, 125), (35, 100), _COLOURED),
    "green": _Range((97, 225), (5, 100), _COLOURED),
    "teal": _Range((160, 235), (10, 85), _COLOURED),
    "blue": _Range((190, 325), (3, 98), _COLOURED),
    "purple": _Range((275, 15), (3, 97), _COLOURED),
    "violet": _Range((275, 360), (3, 97), _COLOURED),
    "indigo": _Range((250, 330), (3, 60), _COLOURED),
    "plum": _Range((290, 30), (5, 75), _COLOURED),
    "straw": _Range((60, 115), (50, 100), (8, 200)),
    "cream": _Range((40, 120), (75, 100), (0, 50)),
    "coral": _Range((5, 75), (35, 90), (15, 200)),
    "rust": _Range((15, 80), (15, 70), (10, 200)),
    "mint": _Range((110, 210), (60, 100), _COLOURED),
}
_SAME = {"gray": "grey", "golden": "gold", "silvery": "silver", "rosy": "pink", "rose": "pink", "turquoise": "teal", "lilac": "violet", "mauve": "purple",
         "lavender": "violet", "crimson": "red", "scarlet": "red", "navy": "blue"}
COLOUR_WORDS = frozenset(_RANGES) | frozenset(_SAME)


def same_word(word: str) -> str:
    """One word for several that mean nearly the same."""
    return _SAME.get(word, word)


def looks_like(colour: str, word: str) -> bool:
    """Whether a colour may be called by this word, one of COLOUR_WORDS."""
    return _RANGES[same_word(word)].holds(colour)
