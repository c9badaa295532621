"""What the gallery is sorted through by: level, width, number of colours, stitch."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from ...craft.language import _, message, pgettext
from ...craft.size import size
from ...craft.techniques import LEVELS
from ...source.pattern import Pattern

WIDTHS = ((20.0, message("up to 20 mm")), (30.0, message("20 to 30 mm")), (40.0, message("30 to 40 mm")), (float("inf"), message("over 40 mm")))
COLOURS = ((3, message("up to 3")), (5, message("4 or 5")), (8, message("6 to 8")), (float("inf"), message("9 and more")))

_STITCHES = {"brick": lambda: pgettext("stitch", "brick"), "peyote": lambda: pgettext("stitch", "peyote"),
             "square": lambda: pgettext("stitch", "square"), "loom": lambda: pgettext("stitch", "loom")}


@dataclass(frozen=True)
class Facet:
    """One way to choose: its name, and the values that patterns of this book have."""

    name: str
    label: str
    values: tuple[str, ...]


def facets_of(pattern: Pattern) -> dict[str, str]:
    """The value of every facet for one pattern."""
    return {"level": _(pattern.level), "width": _band(size(pattern.piece).width, WIDTHS), "colours": _band(len(pattern.legend), COLOURS),
            "stitch": _STITCHES[pattern.piece.stitch]()}


def facets(found: Iterable[Mapping[str, str]]) -> tuple[Facet, ...]:
    """The facets of a book, their values in a sensible order."""
    found = list(found)
    orders = {"level": [_(level) for level in LEVELS], "width": [_(label) for _most, label in WIDTHS], "colours": [_(label) for _most, label in COLOURS],
              "stitch": sorted({one["stitch"] for one in found})}
    labels = {"level": _("Level"), "width": _("Width"), "colours": _("Colours"), "stitch": _("Stitch")}
    return tuple(Facet(name, labels[name], tuple(value for value in order if any(one[name] == value for one in found)))
                 for name, order in orders.items())


def _band(value: float, bands: Iterable[tuple[float, str]]) -> str:
    return next(_(label) for most, label in bands if value <= most)
