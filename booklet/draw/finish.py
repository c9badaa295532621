"""How light falls on a bead of each finish: marks of lighter and darker colour, no transparency, so that print keeps them."""

from __future__ import annotations

from msgspec import Struct

from .colour import BLACK, WHITE, mix


class Light(Struct, frozen=True):
    """One mark on a bead, as shares of its size. u runs across, v along the hole, both -0.5 to 0.5 from left and top."""

    towards: str     # white or black
    share: float     # how much of it is mixed into the bead's colour
    u: float
    v: float
    wide: float
    tall: float

    def colour(self, bead: str) -> str:
        return mix(bead, self.towards, self.share)


# Light comes from the upper left. The first mark of each list is the one that a small picture keeps.
LIGHTS: dict[str, tuple[Light, ...]] = {
    "matte": (Light(WHITE, 0.15, -0.10, 0.0, 0.44, 0.80), Light(BLACK, 0.06, 0.38, 0.0, 0.14, 0.76)),
    "opaque": (Light(WHITE, 0.13, -0.12, 0.0, 0.40, 0.80), Light(BLACK, 0.12, 0.38, 0.0, 0.14, 0.76),
               Light(WHITE, 0.70, -0.22, -0.12, 0.11, 0.36)),
    "lustre": (Light(WHITE, 0.30, -0.10, 0.0, 0.46, 0.82), Light(BLACK, 0.16, 0.40, 0.0, 0.12, 0.74),
               Light(WHITE, 0.78, -0.17, -0.04, 0.14, 0.60), Light(WHITE, 0.26, 0.25, 0.06, 0.09, 0.52)),
    "metallic": (Light(WHITE, 0.34, -0.12, 0.0, 0.44, 0.84), Light(BLACK, 0.24, 0.38, 0.0, 0.17, 0.80),
                 Light(BLACK, 0.16, -0.41, 0.0, 0.10, 0.76), Light(WHITE, 0.86, -0.15, 0.0, 0.13, 0.74)),
    "transparent": (Light(WHITE, 0.30, 0.06, 0.03, 0.62, 0.78), Light(BLACK, 0.05, 0.04, 0.0, 0.13, 0.78),
                    Light(WHITE, 0.82, -0.27, -0.14, 0.11, 0.36), Light(WHITE, 0.58, 0.27, 0.17, 0.13, 0.28)),
}


def lights(finish: str, detail: bool = True) -> tuple[Light, ...]:
    """The marks of a finish, in the order of painting; only the first in a small picture."""
    found = LIGHTS.get(finish, LIGHTS["opaque"])
    return found if detail else found[:1]
