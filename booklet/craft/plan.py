"""The thread that a maker works with, and what is added to every length of it."""

from __future__ import annotations

from dataclasses import dataclass

TAIL = 150.0      # mm left at the start; published advice runs from 4 in to 8 in
WEAVE_IN = 150.0  # mm kept at the end; a published pattern keeps 6 in
WARP_END = 200.0  # mm of warp beyond either end of loom work, to tie and to weave in; common practice, no source


@dataclass(frozen=True)
class ThreadPlan:
    """Which thread a maker works with."""

    body: str = "braided 6 lb"
    fringe: str = "nylon D"
    length: float = 1400.0   # comfortable working length, mm
