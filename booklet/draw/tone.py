"""The inks of charts, and what becomes of a bead's colour in a colour, grey or blank chart."""

from __future__ import annotations

from .colour import BLACK, WHITE, grey_of, ink_on, mix

# Warm greys. Each is given as its contrast on white paper; WCAG 2.2 asks 4.5 of figures and 3 of outlines.
TEXT = "#3a332d"      # 12.4: row numbers, arrows, strand numbers
QUIET = "#6f665d"     # 5.7: totals and counting figures
GAP = "#8c837a"       # 3.8: between and around beads
GUIDE = "#cfc7bc"     # light lines every five
THREAD = "#b5aca1"

TONES = ("colour", "grey", "blank")


def tone_of(grey: bool, blank: bool) -> str:
    """The tone of a chart from its options; blank wins."""
    return "blank" if blank else "grey" if grey else "colour"


def shown(colour: str, tone: str) -> str:
    """The colour in which a bead is filled."""
    return colour if tone == "colour" else grey_of(colour) if tone == "grey" else WHITE


def pale(colour: str) -> str:
    """The same colour far back."""
    return mix(colour, WHITE, 0.62)


def ink(fill: str) -> str:
    """Ink of the letter on a bead so filled."""
    return BLACK if fill == WHITE else ink_on(fill)
