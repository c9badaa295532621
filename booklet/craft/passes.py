"""Where a piece asks for more passes through a bead than its hole has room for, and which needle goes through everywhere."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import lru_cache

from msgspec import Struct

from .beads import BeadKind
from .events import Place, passes
from .hole import PRESSED, can_hold, comfortable
from .kept import kept
from .layout import layout
from .needle import path
from .piece import Piece
from .plan import Needle, ThreadPlan


class Threaded(Struct, frozen=True):
    """One bead and the threads that go through it, in their order."""

    place: Place
    key: str
    kind: BeadKind
    threads: tuple[float, ...]   # mm, one a pass: those of the body first

    @property
    def passes(self) -> int:
        return len(self.threads)


class Crowded(Struct, frozen=True):
    """Beads of one kind in one part of the work that take more passes than go through."""

    kind: BeadKind
    beads: tuple[Threaded, ...]   # all with the same threads
    fit: int                      # how many of the passes go through
    needle: Needle | None         # the one that sticks; None where the threads alone have no room

    @property
    def passes(self) -> int:
        return self.beads[0].passes


def threaded(piece: Piece, plan: ThreadPlan) -> tuple[Threaded, ...]:
    """Every bead with its threads; empty where the diameter of a thread that is used is not known."""
    needle, spots = path(piece), layout(piece).spots
    body, fringe = plan.kind("body"), plan.kind("fringe") if needle.fringe else None
    if body is None or fringe is None and needle.fringe:
        return ()
    in_body, in_fringe = passes(needle.body), passes(needle.fringe)
    threads: dict[tuple[int, int], tuple[float, ...]] = {}   # by passes in each part: few beads differ in them
    found = []
    for place, spot in spots.items():
        times = in_body.get(place, 0), in_fringe.get(place, 0)
        if times not in threads:
            threads[times] = (body.diameter,) * times[0] + (fringe.diameter if fringe else 0.0,) * times[1]
        found.append(Threaded(place, spot.key, piece.legend[spot.key].kind, threads[times]))
    return tuple(found)


def impossible(beads: Sequence[Threaded]) -> Iterator[Crowded]:
    """Beads whose holes cannot hold the thread, even pressed thin, by the bound of circle packing."""
    for group in _groups(beads):
        if held(group[0]) < group[0].passes:
            yield Crowded(group[0].kind, group, held(group[0]), None)


def tight(beads: Sequence[Threaded], plan: ThreadPlan) -> Iterator[Crowded]:
    """Beads whose holes hold the thread, but have hardly room for the needle that has to bring it through on the last pass."""
    for group in _groups(beads):
        stuck = sticks(group[0], plan) if held(group[0]) == group[0].passes else None
        if stuck:
            yield Crowded(group[0].kind, group, *stuck)


def held(bead: Threaded) -> int:
    """How many of a bead's threads, pressed thin, its hole can hold."""
    return _held(bead.kind.hole, bead.threads)


@lru_cache(maxsize=256)
def _held(hole: float, threads: tuple[float, ...]) -> int:
    thin = [PRESSED * thread for thread in threads]
    return max((count for count in range(1, len(thin) + 1) if can_hold(hole, thin[:count])), default=0)


def sticks(bead: Threaded, plan: ThreadPlan) -> tuple[int, Needle] | None:
    """How many passes go through with the thinnest needle for their thread, and that needle; None if all do."""
    for done, thread in enumerate(bead.threads):
        needles = needles_for(plan, thread)
        if needles and not comfortable(bead.kind.hole, needles[-1].diameter, bead.threads[:done]):
            return done, needles[-1]
    return None


def needles_for(plan: ThreadPlan, thread: float) -> list[Needle]:
    """The needles that take a thread of this diameter in mm, thickest first."""
    return [needle for needle in plan.needles if thread <= needle.eye + 1e-9]


def needle_for(piece: Piece, plan: ThreadPlan) -> Needle | None:
    """The needle that goes with the thickest thread used, or the next thinner one that goes through every bead on its last pass.

    The thinnest that takes the thread where none goes through everywhere; None where nothing is known.
    """
    beads = threaded(piece, plan)
    thickest = max((thread for bead in beads for thread in bead.threads), default=0.0)
    usual = [needle for needle in plan.needles if thickest <= needle.thread][-1:]
    needles = [needle for needle in needles_for(plan, thickest) if not usual or needle.diameter <= usual[0].diameter] if beads else []
    holes = {(bead.kind.hole, bead.threads[:-1]) for bead in beads}   # on the last pass a hole is fullest
    fits = (needle for needle in needles if all(comfortable(hole, needle.diameter, before) for hole, before in holes))
    return next(fits, needles[-1] if needles else None)


@kept
def _groups(beads: Sequence[Threaded]) -> tuple[tuple[Threaded, ...], ...]:
    """Together: beads of one kind with the same threads, in one row, in the fringe or in the hangers."""
    groups: dict[tuple, list[Threaded]] = {}
    for bead in beads:
        line = bead.place.line if bead.place.part == "row" else 0
        groups.setdefault((bead.place.part, line, bead.kind.name, bead.threads), []).append(bead)
    return tuple(map(tuple, groups.values()))
