"""The swatch of a legend: one bead, large, with its finish."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from msgspec.structs import replace

from ..craft.beads import Bead, finish_said, kind_said
from ..craft.language import _
from . import alphabet, tone
from .chart import letter_cap
from .colour import contrast, grey_of
from .glass import single
from .labels import pen
from .picture import Picture

LAYERS = ("ground", "beads", "lights", "letters")
TALLEST = 1.5       # a long bead is at most this many swatch widths high
RIM = 0.3           # mm of room round the bead
LEAST_CONTRAST = 4.5    # between a letter and any light that it crosses (WCAG 2.2, 1.4.3)


def swatch_svg(bead: Bead, *, width: float = 6.0, lettered: bool = False, grey: bool = False, prefix: str = "swatch",
               on: Callable[[Iterable[str]], Picture] = Picture) -> str:
    """One bead in a picture `width` mm wide and as high as the bead needs.

    A `lettered` swatch carries the bead's key as charts do, and keeps only those lights on which the key can be read.
    """
    shown = replace(bead, colour=grey_of(bead.colour)) if grey else bead
    room = width - 2 * RIM
    scale = min(room / bead.kind.diameter, TALLEST * width / bead.kind.length)
    height = bead.kind.length * scale + 2 * RIM
    picture, ink = on(LAYERS), tone.ink(shown.colour)
    single(picture, LAYERS[:3], shown, width / 2, height / 2, scale,
           keep=(lambda colour: contrast(colour, ink) >= LEAST_CONTRAST) if lettered else None)
    if lettered:
        cap = min(0.45 * width, letter_cap(bead.kind.diameter * scale, bead.kind.length * scale))
        low = 0.12 * bead.kind.length * scale if bead.kind.shape == "drop" else 0.0
        picture.add("letters", pen(ink, cap), alphabet.letter(bead.key, width / 2, height / 2 + low, cap))
    return picture.svg(0, 0, width, height, alt=swatch_alt(bead), prefix=prefix)


def swatch_alt(bead: Bead) -> str:
    """What the swatch shows, in words."""
    return _("Bead {key}: {name}, {finish}, {kind}.", key=bead.key, name=bead.name, finish=finish_said(bead.finish), kind=kind_said(bead.kind.name))
