"""What the words tell."""

from __future__ import annotations

from msgspec import Struct


class ReadRow(Struct, frozen=True):
    """A row as the words tell it. Positions count half stitches from the leftmost base stitch."""

    number: int
    below: bool
    runs_right: bool
    stitches: tuple[tuple[int, tuple[str, ...]], ...]  # (position, beads low to high), left to right
    part: str = ""                                     # "a", "b" .. of a row in parts

    @property
    def name(self) -> str:
        return f"{self.number}{self.part}"
