"""The colours of a page: those of its beads, which its pictures name by key, and an accent for a light and for a dark page."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from ...craft.beads import Bead
from ...draw.colour import WHITE, contrast, ink_on, mix
from ..accent import READABLE

DARK = "#17191c"   # the dark page; the style sheet has the same


def bead_colours(legend: Mapping[str, Bead]) -> str:
    """Declarations for a style attribute: the colour of every bead, and the ink of its letter."""
    return ";".join(f"--b-{key}:{bead.colour};--i-{key}:{ink_on(bead.colour)}" for key, bead in legend.items())


def bead_rules(keys: Iterable[str]) -> str:
    """Rules that give the shapes and letters of every key its colours."""
    return "".join(f".f-{key}{{fill:var(--b-{key})}}.i-{key}{{fill:var(--i-{key})}}\n" for key in sorted(set(keys)))


def on_dark(colour: str) -> str:
    """The colour, lightened in equal steps until it can be read on the dark page."""
    return next(shade for step in range(21) for shade in [mix(colour, WHITE, step / 20)] if contrast(shade, DARK) >= READABLE)
