"""The ways in which one pattern can be worked: by either hand, as drawn or as its mirror image.

Each is a piece of its own, so chart, words and steps of all of them are computed, and read back, like those of the first.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from msgspec.structs import replace

from ...craft.pair import is_symmetric, mirrored, other_hand
from ...craft.piece import Piece, opposite
from ...craft.stitches import faults
from ...source.pattern import Pattern

MIRRORED = "mirrored"


@dataclass(frozen=True)
class Variant:
    """One way of working a pattern. `name` is empty for the pattern as written, else it names the folder of its page."""

    name: str
    hand: str
    is_mirrored: bool
    pattern: Pattern

    @property
    def address(self) -> str:
        """Its page, seen from build/html/."""
        return f"{self.name}/{self.pattern.slug}.html" if self.name else f"{self.pattern.slug}.html"

    @property
    def up(self) -> str:
        """The way from its page to build/html/."""
        return "../" if self.name else ""


def variants(pattern: Pattern) -> tuple[Variant, ...]:
    """Every way that can be worked, the written one first. A piece that is its own mirror image has no mirrored one."""
    ways: list[tuple[str, Callable[[Piece], Piece]]] = [("", lambda piece: piece), (opposite(pattern.hand), other_hand)]
    if not is_symmetric(pattern.piece):
        ways += [(MIRRORED, mirrored), (f"{MIRRORED}-{opposite(pattern.hand)}", lambda piece: other_hand(mirrored(piece)))]
    made = [Variant(name, piece.hand, name.startswith(MIRRORED), replace(pattern, piece=piece, hand=piece.hand))
            for name, turn in ways for piece in [turn(pattern.piece)]]
    return tuple(variant for variant in made if not faults(variant.pattern.piece))


def beside(variant: Variant, every: tuple[Variant, ...], hand: bool) -> Variant | None:
    """The variant that differs in the hand alone, or in being mirrored alone; None if there is none."""
    wanted = (opposite(variant.hand), variant.is_mirrored) if hand else (variant.hand, not variant.is_mirrored)
    return next((other for other in every if (other.hand, other.is_mirrored) == wanted), None)
