"""How the end beads of a strand sit below it: one underneath, three as a small triangle, other counts as a small loop."""

from __future__ import annotations

from collections.abc import Sequence
from math import cos, pi, sin

from ..craft.beads import BeadKind

Offset = tuple[float, float]


def end_offsets(kinds: Sequence[BeadKind], gap: float, scale: float = 1.0) -> list[Offset]:
    """Centres of the end beads from the foot of the strand, x right and y down, in the order of picking up.

    `gap` is the space above the topmost and between neighbours. With three, the needle leaves through the first, the
    second hangs lowest, and the third leads back beside the first.
    """
    sizes = [(kind.diameter * scale, kind.length * scale) for kind in kinds]
    if len(sizes) == 1:
        return [(0.0, gap + sizes[0][1] / 2)]
    if len(sizes) == 3:
        (first, first_long), (_, second_long), (third, third_long) = sizes
        row = max(first_long, third_long)
        return [(-(first + gap) / 2, gap + row / 2), (0.0, 1.5 * gap + row + second_long / 2),
                ((third + gap) / 2, gap + row / 2)]
    return _loop(max((max(size) for size in sizes), default=0.0) + gap, len(sizes), gap)


def _loop(chord: float, count: int, gap: float) -> list[Offset]:
    """`count` places round a circle whose top is the foot of the strand, from there down the left side."""
    if not count:
        return []
    radius = chord / (2 * sin(pi / (count + 1)))
    turns = [2 * pi * (k + 1) / (count + 1) for k in range(count)]
    top = radius * (1 - cos(turns[0])) - chord / 2   # of the highest bead below the foot
    return [(-radius * sin(turn), radius * (1 - cos(turn)) - top + gap) for turn in turns]
