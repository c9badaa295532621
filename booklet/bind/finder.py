"""The index of a book: which pattern to choose, by level, by width, by how many beads it takes, and by colour."""

from __future__ import annotations

from collections.abc import Iterable
from colorsys import rgb_to_hsv
from dataclasses import dataclass

from ..craft.language import _, message, ngettext
from ..craft.saying import sentence
from ..craft.size import size
from ..craft.tally import tally
from ..craft.techniques import LEVELS
from ..draw.colour import channels, luminance
from ..source.pattern import Pattern
from .numbers import count, mm_and_inches

MANY = 200          # patterns from which each part begins a page: it is then long enough, and one part is as much as should be set at a time
LONG = 24           # patterns of a line that a page may break
WELL_USED = 0.12    # of the beads of a piece: a colour by which it may be sought
GREYISH = 0.16      # saturation (HSV) below which a colour has no hue to speak of
LIGHT, DARK = 0.55, 0.03   # relative luminance of white and of black among those

# Upper ends of hues in degrees on the colour circle; common practice, no source.
HUES = ((15, "red"), (45, "orange and brown"), (68, "yellow"), (165, "green"), (255, "blue"), (300, "violet"), (345, "pink"), (361, "red"))
ORDER = (message("white and silver"), message("yellow"), message("orange and brown"), message("red"), message("pink"), message("violet"), message("blue"),
         message("green"), message("grey"), message("black"))


@dataclass(frozen=True)
class Found:
    """One line: what is sought, and the patterns that have it."""

    what: str
    patterns: tuple[Pattern, ...]

    @property
    def is_long(self) -> bool:
        """Whether it may be broken over pages."""
        return len(self.patterns) > LONG


@dataclass(frozen=True)
class Part:
    title: str
    lines: tuple[Found, ...]
    begins_page: bool = False


def finder(patterns: Iterable[Pattern]) -> tuple[Part, ...]:
    """The parts of the index; none for a single pattern."""
    patterns = tuple(patterns)
    if len(patterns) < 2:
        return ()
    levels = [Found(sentence(_(level)), tuple(pattern for pattern in patterns if pattern.level == level)) for level in LEVELS]
    widths = {pattern.slug: size(pattern.piece).width for pattern in patterns}
    beads = {pattern.slug: tally(pattern.piece).beads for pattern in patterns}
    colours = {name: tuple(pattern for pattern in patterns if name in families(pattern)) for name in ORDER}
    many = len(patterns) >= MANY
    return (Part(_("By level"), tuple(line for line in levels if line.patterns)),
            Part(_("By width, narrow to wide"), _by(patterns, widths, mm_and_inches), many),
            Part(_("By beads in a piece, few to many"), _by(patterns, beads, _beads), many),
            Part(_("By colour"), tuple(Found(sentence(_(name)), found) for name, found in colours.items() if found), many))


def _beads(number: int) -> str:
    return ngettext("{count} bead", "{count} beads", number, count=count(number))


def _by(patterns: tuple[Pattern, ...], values: dict[str, float], said) -> tuple[Found, ...]:
    """One line for each value as it is printed, rising."""
    lines: dict[str, list[Pattern]] = {}
    for pattern in sorted(patterns, key=lambda pattern: values[pattern.slug]):
        lines.setdefault(said(values[pattern.slug]), []).append(pattern)
    return tuple(Found(what, tuple(found)) for what, found in lines.items())


def families(pattern: Pattern) -> set[str]:
    """The families of colour that a piece shows much of."""
    counts = tally(pattern.piece)
    shares: dict[str, int] = {}
    for line in counts.lines:
        name = family(line.bead.colour)
        shares[name] = shares.get(name, 0) + line.piece
    return {name for name, share in shares.items() if share >= WELL_USED * counts.beads}


def family(colour: str) -> str:
    """The family of one colour "#rrggbb"."""
    hue, saturation, _ = rgb_to_hsv(*channels(colour))
    light = luminance(colour)
    if light < DARK and saturation < 0.5:
        return "black"
    if saturation < GREYISH:
        return "white and silver" if light >= LIGHT * 0.75 else "grey"
    return next(name for end, name in HUES if hue * 360 < end)
