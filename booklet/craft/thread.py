"""How much thread a piece takes, in how many working lengths, and where each of them runs out.

The path is measured as a line through bead centres (and the thread bridges it goes under). Tails and weaving in
are added for every working length.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from math import ceil, dist

from .events import Event, Section, Under
from .layout import Layout, layout
from .needle import path
from .piece import Piece
from .plan import TAIL, WEAVE_IN, ThreadPlan

@dataclass(frozen=True)
class ThreadUse:
    """What one part of one piece takes."""

    part: str                        # body | fringe
    kind: str
    path: float                      # mm along the needle's path
    length: float                    # mm with tails and weaving in
    lengths: int                     # working lengths
    changes: tuple[Section, ...]     # a new length starts before each of these


def thread_use(piece: Piece, plan: ThreadPlan) -> tuple[ThreadUse, ...]:
    """Thread for one piece: body first, then fringe if there is any."""
    needle, places = path(piece), layout(piece)
    uses = [_use("body", plan.body, plan.length, needle.body, places, piece)]
    if needle.fringe:
        uses.append(_use("fringe", plan.fringe, plan.length, needle.fringe, places, piece))
    return tuple(uses)


def _use(part: str, kind: str, working: float, events: tuple[Event, ...], places: Layout, piece: Piece) -> ThreadUse:
    sections = section_lengths(events, places, piece)
    room = max(working - TAIL - WEAVE_IN, 1.0)
    lengths, changes, used = 1, [], 0.0
    for section, need in sections.items():
        if used and used + need > room:
            lengths, used = lengths + 1, 0.0
            changes.append(section)
        extra = ceil(need / room) - 1 if need > room else 0  # one row longer than a whole working length
        lengths, used = lengths + extra, used + need - extra * room
    total = sum(sections.values())
    return ThreadUse(part, kind, total, total + lengths * (TAIL + WEAVE_IN), lengths, tuple(changes))


def section_lengths(events: Iterable[Event], places: Layout, piece: Piece) -> dict[Section, float]:
    """mm of path in each row or strand, in working order; the way to a section counts with that section."""
    lengths: dict[Section, float] = {}
    here: tuple[float, float] | None = None
    for event in events:
        for point in _points(event, places, piece):
            if here is not None:
                lengths[event.section] = lengths.get(event.section, 0.0) + dist(here, point)
            here = point
    return lengths


def _points(event: Event, places: Layout, piece: Piece) -> list[tuple[float, float]]:
    if isinstance(event, Under):
        row = piece.rows[event.row - 1]
        zero = min(other.first for other in piece.rows)
        x = places.x(row.stitches[event.left].at + 1 - zero)
        worked = piece.rows[event.section.number - 1] if event.section.kind == "row" else None
        below = event.section.kind == "strand" or worked is not None and worked.level < 0
        edge = places.bottoms if below else places.tops
        return [(x, edge[row.number])]
    return [(places.spots[place].x, places.spots[place].y) for place in getattr(event, "places", ())]
