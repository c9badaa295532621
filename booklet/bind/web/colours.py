"""The colours of a page: those of its beads, which its pictures name by key, and an accent for a light and for a dark page."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from ...craft.beads import Bead
from ...draw.colour import WHITE, contrast, ink_on, mix
from ..accent import READABLE, readable

# Panels of the light and of the dark page, which are nearer to the accent than the pages themselves; the style sheet has the same.
LIGHT_PANEL, DARK_PANEL = "#f6f4f0", "#22262b"


def bead_colours(legend: Mapping[str, Bead]) -> str:
    """Declarations for a style attribute: the colour of every bead, and the ink of its letter."""
    return ";".join(f"--b-{key}:{bead.colour};--i-{key}:{ink_on(bead.colour)}" for key, bead in legend.items())


def bead_rules(keys: Iterable[str]) -> str:
    """Rules that give the shapes and letters of every key, and the key itself where it stands in text, its colours."""
    return "".join(f".f-{key}{{fill:var(--b-{key})}}.i-{key}{{fill:var(--i-{key})}}b.k-{key}{{background:var(--b-{key});color:var(--i-{key})}}\n" for key in sorted(set(keys)))


def on_light(colour: str) -> str:
    """The colour, darkened in equal steps until it can be read on the light page and its panels."""
    return readable(colour, LIGHT_PANEL)


def on_dark(colour: str) -> str:
    """The colour, lightened in equal steps until it can be read on the dark page and its panels."""
    return next(shade for step in range(21) for shade in [mix(colour, WHITE, step / 20)] if contrast(shade, DARK_PANEL) >= READABLE)
