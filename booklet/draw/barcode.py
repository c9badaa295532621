"""The bar code of an ISBN: EAN-13, as ISO/IEC 15420 has it; the order of bars comes from a library."""

from __future__ import annotations

from itertools import groupby

from ..craft.language import _
from . import alphabet
from .colour import BLACK, WHITE
from .labels import pen
from .numbers import num
from .picture import Picture, Style, polyline

MODULE = 0.33              # mm, width of the narrowest bar at full size
HEIGHT, GUARD = 22.85, 1.65   # mm; guard bars reach 5 modules lower
QUIET_LEFT, QUIET_RIGHT = 11, 7   # modules that must stay white
MODULES = 95
_GUARDS = (*range(3), *range(45, 50), *range(92, 95))
TEXT = 2.3                 # mm, height of the digits


def modules(isbn: str) -> str:
    """95 modules of an ISBN of thirteen digits, "1" for black."""
    from barcode import EAN13

    return EAN13(isbn).build()[0]


def barcode_svg(isbn: str, written: str) -> str:
    """The bar code with its digits below, on white."""
    picture = Picture(("ground", "bars", "digits"))
    code, top = modules(isbn), 0.4
    width, height = (QUIET_LEFT + MODULES + QUIET_RIGHT) * MODULE, top + HEIGHT + TEXT + 1.4
    picture.add("ground", Style(fill=WHITE), polyline([(0, 0), (width, 0), (width, height), (0, height)]) + "z")
    at = 0
    for (bar, guard), run in groupby(enumerate(code), lambda one: (one[1], one[0] in _GUARDS)):
        wide = len(list(run))
        if bar == "1":
            x, tall = (QUIET_LEFT + at) * MODULE, HEIGHT + GUARD * guard
            picture.add("bars", Style(fill=BLACK), f"M{num(x)} {num(top)}h{num(wide * MODULE)}v{num(tall)}h{num(-wide * MODULE)}z")
        at += wide
    ink, y = pen(BLACK, TEXT), top + HEIGHT + 0.5 + TEXT / 2
    for index, digit in enumerate(isbn):
        x = 4 if index == 0 else QUIET_LEFT + 3 + 7 * (index - 1) + 3.5 + (5 if index > 6 else 0)
        picture.add("digits", ink, alphabet.word(digit, x * MODULE, y, TEXT, "middle"))
    return picture.svg(0, 0, width, height, alt=_("Bar code: ISBN {number}", number=written), prefix="isbn")
