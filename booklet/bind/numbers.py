"""Numbers as they are printed: millimetres with inches beside them, grams to two figures, counts with a thousands comma."""

from __future__ import annotations

from decimal import Decimal

from ..craft.size import inches
from ..craft.tally import two_figures


def mm(value: float) -> str:
    """Millimetres to whole ones, or to a tenth below 10: "38 mm"."""
    return f"{value:.0f} mm" if value >= 10 else f"{value:.1f} mm"


def mm_and_inches(value: float) -> str:
    """"38 mm (1.5 in)"."""
    return f"{mm(value)} ({inches(value):.1f} in)"


def metres(value: float) -> str:
    """Millimetres as metres with inches: "1.40 m (55 in)"."""
    return f"{value / 1000:.2f} m ({inches(value):.0f} in)"


def grams(value: float) -> str:
    """Two significant figures, no unit: "0.65", "13"."""
    return f"{Decimal(str(two_figures(value))).normalize():f}"


def count(value: int) -> str:
    """A whole number with a comma at the thousands."""
    return f"{value:,}"


def many(value: int, one: str, more: str = "") -> str:
    """"1 bead", "3 beads"."""
    return f"{value:,} {one if value == 1 else more or one + 's'}"
