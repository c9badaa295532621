"""A pattern's accent colour, taken from its own beads and darkened until text in it can be read."""

from __future__ import annotations

from ..craft.tally import Tally
from ..draw.colour import channels, contrast

INK = "#33373d"        # where no bead has a colour of its own
READABLE = 4.5         # WCAG 2.2, 1.4.3 (AA)
WELL_USED = 0.04       # of all beads of the piece
COLOURFUL = 0.16       # difference of the largest and smallest sRGB channel, 0 to 1


def accent(counts: Tally) -> str:
    """The most colourful bead that the piece uses often, made readable on white."""
    used = [line.bead.colour for line in counts.lines if line.piece >= WELL_USED * counts.beads]
    colour = max(used, key=colourfulness, default=INK)
    return readable(colour) if colourfulness(colour) >= COLOURFUL else INK


def colourfulness(colour: str) -> float:
    """How far a colour is from grey, 0 to 1."""
    parts = channels(colour)
    return max(parts) - min(parts)


def readable(colour: str, page: str = "#ffffff") -> str:
    """The colour, darkened in equal steps of all channels until it can be read on the page."""
    parts = [int(colour[i:i + 2], 16) for i in (1, 3, 5)]
    shades = ("#" + "".join(f"{channel * share // 100:02x}" for channel in parts) for share in range(100, -1, -1))
    return next((shade for shade in shades if contrast(shade, page) >= READABLE), INK)
