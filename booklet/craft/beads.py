"""Bead kinds and the beads of a legend: size, hole and mass.

Sizes are millimetres, masses milligrams, densities grams per cubic centimetre (= mg per mm3).
"""

from __future__ import annotations

from math import pi

from msgspec import Struct

from .language import _, in_figures, message

# Soda-lime glass is published at 2.52-2.53, "glass" in handbooks at 2.4-2.8; bead makers do not say.
GLASS_DENSITY = 2.5

SHAPES = message("cylinder"), message("round"), message("bugle"), message("drop"), message("bicone")
FINISHES = message("matte"), message("lustre"), message("metallic"), message("transparent"), message("opaque")


class BeadKind(Struct, frozen=True):
    """A kind of bead by shape and size, such as "cylinder 11/0"."""

    name: str
    shape: str                      # one of SHAPES
    diameter: float                 # mm across the hole's axis
    length: float                   # mm along the hole's axis
    hole: float                     # mm, diameter of the hole
    per_gram: float | None = None   # a published count; None where none is published
    density: float = GLASS_DENSITY  # g/cm3, used only where per_gram is None
    source: str = ""                # where the figures come from

    @property
    def volume(self) -> float:
        """Glass in one bead, mm3: the body's volume less the hole."""
        d, hole, length = self.diameter, self.hole, self.length
        if self.shape == "round":  # an elliptic torus
            return pi**2 * (d + hole) / 2 * (d - hole) / 4 * length / 2
        bore = pi / 4 * hole**2 * length
        if self.shape == "bicone":  # two cones, base to base
            return pi / 12 * d**2 * length - bore / 2
        if self.shape == "drop":  # an ellipsoid
            return pi / 6 * d**2 * length - bore / 2
        return pi / 4 * d**2 * length - bore

    @property
    def mass(self) -> float:
        """Mass of one bead in mg: from the published count, else from glass density."""
        return 1000 / self.per_gram if self.per_gram else self.volume * self.density


class Bead(Struct, frozen=True):
    """One entry of a pattern's legend."""

    key: str      # one letter or digit
    name: str     # "chalk white"
    colour: str   # "#rrggbb", lower case
    finish: str   # matte | lustre | metallic | transparent | opaque
    kind: BeadKind


def finish_said(finish: str) -> str:
    """How the surface of a bead looks."""
    return _(finish)


def kind_said(name: str) -> str:
    """The name of a kind, whose first word is translated where it is a shape: "cylinder 11/0"."""
    shape, gap, size = name.partition(" ")
    return f"{_(shape)}{gap}{in_figures(size)}" if shape in SHAPES else name
