"""Numbers as they are printed in the language of the moment: millimetres with inches beside them, grams to two figures, counts parted at the thousands."""

from __future__ import annotations

from decimal import Decimal

from ..craft.language import _, decimal, spoken, whole
from ..craft.size import inches
from ..craft.tally import two_figures

count = whole


def mm(value: float) -> str:
    """Millimetres to whole ones, or to a tenth below 10: "38 mm"."""
    return _("{mm} mm", mm=decimal(value, 0 if value >= 10 else 1))


def mm_and_inches(value: float) -> str:
    """"38 mm (1.5 in)"."""
    return _("{mm} ({inches} in)", mm=mm(value), inches=decimal(inches(value), 1))


def metres(value: float) -> str:
    """Millimetres as metres with inches: "1.40 m (55 in)"."""
    return _("{metres} m ({inches} in)", metres=decimal(value / 1000, 2), inches=decimal(inches(value), 0))


def grams(value: float) -> str:
    """Two significant figures, no unit: "0.65", "13"."""
    return f"{Decimal(str(two_figures(value))).normalize():f}".replace(".", spoken().point)


def many(value: int, one: str, more: str = "") -> str:
    """"1 bead", "3 beads": in English, for what commands print."""
    return f"{value:,} {one if value == 1 else more or one + 's'}"
