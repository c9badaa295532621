"""How much thread a piece takes, in how many working lengths, and where each of them runs out.

The path is measured as a line through bead centres (and the thread bridges it goes under). Tails and weaving in
are added for every working length.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from math import ceil, dist

from .events import Event, Pass, Place, Section, Under
from .layout import Layout, layout
from .needle import path
from .piece import RIGHT, Piece
from .plan import TAIL, WARP_END, WEAVE_IN, ThreadPlan
from .stitches import stitch_of

@dataclass(frozen=True)
class ThreadUse:
    """What one part of one piece takes."""

    part: str                        # body | fringe | warps
    kind: str
    path: float                      # mm along the needle's path
    length: float                    # mm with tails and weaving in
    lengths: int                     # working lengths; of the warps, how many there are
    changes: tuple[Section, ...]     # a new length starts before each of these

    @property
    def unit(self) -> str:
        """What a length of it is called."""
        return "warp" if self.part == "warps" else "working length"


def thread_use(piece: Piece, plan: ThreadPlan) -> tuple[ThreadUse, ...]:
    """Thread for one piece: body first, then fringe if there is any, then the warps of a loom."""
    needle, places = path(piece), layout(piece)
    uses = [_use("body", plan.body, plan.length, needle.body, places, piece)]
    if needle.fringe:
        uses.append(_use("fringe", plan.fringe, plan.length, needle.fringe, places, piece))
    warps = stitch_of(piece).warps(piece)
    if warps:
        body = warps * max(places.tops.values())
        uses.append(ThreadUse("warps", plan.body, body, body + warps * 2 * WARP_END, warps, ()))
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
        edge = places.bottoms if worked is not None and worked.level < 0 else places.tops
        return [(x, edge[row.number])]
    return [point for place in getattr(event, "places", ()) for point in _through(event, place, places, piece)]


def _through(event: Event, place: Place, places: Layout, piece: Piece) -> list[tuple[float, float]]:
    """The middle of a bead; of one that lies along its row both ends of its hole, where the thread turns."""
    spot = places.spots[place]
    if not places.lying or place.part != "row":
        return [(spot.x, spot.y)]
    right = event.up if isinstance(event, Pass) else piece.rows[place.line - 1].direction == RIGHT
    half = piece.legend[spot.key].kind.length / 2 * (1 if right else -1)
    return [(spot.x - half, spot.y), (spot.x + half, spot.y)]
