"""How much thread a piece takes, in how many working lengths, and where each of them runs out.

The path is measured as a line through bead centres (and the thread bridges it goes under). Tails and weaving in
are added for every working length. A length ends where a row or a strand ends, with enough left to weave in.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from math import ceil, dist

from msgspec import Struct

from .events import Anchor, Event, Guard, Pass, PickUp, Place, Ring, Section, Under
from .hanger import carriers, top_row
from .layout import Layout, layout
from .needle import path
from .piece import RIGHT, Piece
from .plan import TAIL, WARP_END, WEAVE_IN, ThreadPlan
from .stitches import stitch_of

GUARD_HEIGHT = 4.0   # mm from the top row to the bow of a guard; from memory
RING_WIRE = 0.2      # of the size of a ring: how thick its wire is; from memory

Point = tuple[float, float]   # mm


class ThreadUse(Struct, frozen=True):
    """What one part of one piece takes."""

    part: str                              # body | fringe | warps
    kind: str
    path: float                            # mm along the needle's path
    length: float                          # mm with tails and weaving in
    lengths: int                           # working lengths; of the warps, how many there are
    changes: tuple[Section, ...]           # a new length starts before each of these
    after: tuple[Section, ...] = ()        # the row, strand or hanger that ends there, one for each change
    too_long: tuple[Section, ...] = ()     # rows, strands and hangers that take more than one working length
    begun: tuple[Section, ...] = ()        # of the changes, those for a part that has a thread of its own

    @property
    def unit(self) -> str:
        """What a length of it is called."""
        return "warp" if self.part == "warps" else "working length"


class ThreadTotal(Struct, frozen=True):
    """What one kind of thread comes to for all pieces of a pattern."""

    kind: str
    parts: tuple[str, ...]   # body | fringe | warps
    length: float            # mm
    lengths: int             # working lengths, in all pieces
    spools: int | None       # to buy; None where it is not known what a spool holds
    warps: int = 0           # in all pieces
    warp: float = 0.0        # mm of one of them


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


def thread_totals(uses: Sequence[ThreadUse], pieces: int, plan: ThreadPlan) -> tuple[ThreadTotal, ...]:
    """Each kind of thread once, in the order of use. Working lengths are cut whole, so what is left on a spool may be waste."""
    totals = []
    for kind in dict.fromkeys(use.kind for use in uses):
        same = [use for use in uses if use.kind == kind]
        cut = pieces * sum(use.lengths for use in same if use.part != "warps")
        warps = next((use for use in same if use.part == "warps"), None)
        strung = warps.length / warps.lengths if warps else 0.0
        totals.append(ThreadTotal(kind, tuple(use.part for use in same), pieces * sum(use.length for use in same), cut,
                                  _spools(plan, kind, cut, pieces * warps.length if warps else 0.0),
                                  pieces * warps.lengths if warps else 0, strung))
    return tuple(totals)


def _spools(plan: ThreadPlan, kind: str, cut: int, strung: float) -> int | None:
    """Spools from which this many working lengths can be cut, and `strung` mm of warps, which may go on from spool to spool."""
    known = plan.kinds.get(kind)
    if known is None or not known.spool:
        return None
    each = int(known.spool / plan.length + 1e-9)
    if strung or not each:
        return ceil(round((cut * plan.length + strung) / known.spool, 9))
    return ceil(cut / each)


def room_in(plan: ThreadPlan) -> float:
    """mm of a working length that can be worked with: without tail and weaving in."""
    return max(plan.length - TAIL - WEAVE_IN, 1.0)


def _use(part: str, kind: str, working: float, events: tuple[Event, ...], places: Layout, piece: Piece) -> ThreadUse:
    legs = _legs(section_lengths(events, places, piece), {event.section for event in events if isinstance(event, Pass)})
    room = room_in(ThreadPlan(length=working))
    begun = {event.section for event in events[1:] if isinstance(event, Anchor)}   # with a new thread, whatever is left of the old one
    lengths, used, before = 1, 0.0, None
    changes, after, too_long = [], [], []
    for start, end, need in legs:
        if start in begun or used and used + need > room:
            lengths, used = lengths + 1, 0.0
            changes.append(start)
            after.append(before)
        if need > room:   # it cannot be helped: the thread changes inside the row as well
            too_long.append(end)
        extra = ceil(need / room) - 1 if need > room else 0
        lengths, used, before = lengths + extra, used + need - extra * room, end
    total = sum(need for *_, need in legs)
    return ThreadUse(part, kind, total, total + lengths * (TAIL + WEAVE_IN), lengths, tuple(changes), tuple(after), tuple(too_long), tuple(sorted(begun)))


def _legs(lengths: dict[Section, float], passed: set[Section]) -> list[tuple[Section, Section, float]]:
    """First and last section, and mm, of what is worked with one thread.

    The way to the lower rows belongs to the first of them. Rows that are only strung, those that are not in `passed`, belong to the row
    that sews them together: no thread could be anchored in them.
    """
    legs: list[tuple[Section, Section, float]] = []
    way = None
    for section, need in lengths.items():
        start, extra = way or (section, 0.0)
        if section.kind == "lower" or section.kind == "row" and section not in passed:
            way = (start, need + extra)
            continue
        legs.append((start, section, need + extra))
        way = None
    return legs


def section_lengths(events: Iterable[Event], places: Layout, piece: Piece) -> dict[Section, float]:
    """mm of path in each row or strand, in working order; the way to a section counts with that section."""
    lengths: dict[Section, float] = {}
    for section, way in _ways(events, places, piece):
        if len(way) > 1:
            lengths[section] = lengths.get(section, 0.0) + sum(map(dist, way, way[1:]))
    return lengths


def _ways(events: Iterable[Event], places: Layout, piece: Piece) -> list[tuple[Section, list[Point]]]:
    """Each section, as often as the needle comes to it, and the points on its way there and through it."""
    ways: list[tuple[Section, list[Point]]] = []
    section, way = None, []
    for event in events:
        if event.section != section or isinstance(event, Anchor):
            section, way = event.section, [] if isinstance(event, Anchor) else way[-1:]   # a thread that begins comes from nowhere
            ways.append((section, way))
        if isinstance(event, (PickUp, Pass)) and not places.lying:
            way += map(places.middles.__getitem__, event.places)
        else:
            way += _points(event, places, piece)
    return ways


def _points(event: Event, places: Layout, piece: Piece) -> list[Point]:
    if isinstance(event, (PickUp, Pass)):
        return [point for place in event.places for point in _through(event, place, places, piece)]
    if isinstance(event, Under):
        left, right = (places.spots[Place("row", event.row, event.left + k)].x for k in (0, 1))
        below_base = bool(piece.lower) and event.row >= piece.lower[0].number
        edge = places.bottoms if below_base != event.foot else places.tops
        return [((left + right) / 2, edge[event.row])]
    if isinstance(event, (Guard, Ring)):
        return [_hanger_point(event, places, piece)]
    return []


def _hanger_point(event: Guard | Ring, places: Layout, piece: Piece) -> Point:
    """The top of a guard, or of the wire of a ring, between the stitches that carry it."""
    hanger, zero = piece.hangers[event.section.number - 1], min(row.first for row in piece.rows)
    top = top_row(piece, hanger.at)
    middle = sum(places.x(top.stitches[index].at - zero) for index in carriers(piece, hanger)) / 2
    return middle, places.tops[top.number] + (GUARD_HEIGHT if hanger.kind == "guard" else RING_WIRE * hanger.size)


def _through(event: Event, place: Place, places: Layout, piece: Piece) -> list[Point]:
    """The middle of a bead; of one that lies along its row both ends of its hole, where the thread turns."""
    spot = places.spots[place]
    if not places.lying or place.part != "row":
        return [(spot.x, spot.y)]
    right = event.up if isinstance(event, Pass) else piece.holds(place.line, place.index).direction == RIGHT
    half = piece.legend[spot.key].kind.length / 2 * (1 if right else -1)
    return [(spot.x - half, spot.y), (spot.x + half, spot.y)]
