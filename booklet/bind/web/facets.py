"""What the gallery is sorted through by: level, width, number of colours, stitch."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from ...craft.size import size
from ...source.pattern import Pattern

WIDTHS = ((20.0, "up to 20 mm"), (30.0, "20 to 30 mm"), (40.0, "30 to 40 mm"), (float("inf"), "over 40 mm"))
COLOURS = ((3, "up to 3"), (5, "4 or 5"), (8, "6 to 8"), (float("inf"), "9 and more"))
LEVELS = ("beginner", "intermediate", "advanced")


@dataclass(frozen=True)
class Facet:
    """One way to choose: its name, and the values that patterns of this book have."""

    name: str
    label: str
    values: tuple[str, ...]


def facets_of(pattern: Pattern) -> dict[str, str]:
    """The value of every facet for one pattern."""
    return {"level": pattern.level, "width": _band(size(pattern.piece).width, WIDTHS), "colours": _band(len(pattern.legend), COLOURS),
            "stitch": pattern.piece.stitch}


def facets(found: Iterable[Mapping[str, str]]) -> tuple[Facet, ...]:
    """The facets of a book, their values in a sensible order."""
    found = list(found)
    orders = {"level": LEVELS, "width": [label for _, label in WIDTHS], "colours": [label for _, label in COLOURS],
              "stitch": sorted({one["stitch"] for one in found})}
    labels = {"level": "Level", "width": "Width", "colours": "Colours", "stitch": "Stitch"}
    return tuple(Facet(name, labels[name], tuple(value for value in order if any(one[name] == value for one in found)))
                 for name, order in orders.items())


def _band(value: float, bands: Iterable[tuple[float, str]]) -> str:
    return next(label for most, label in bands if value <= most)
