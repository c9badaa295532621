"""A step picture in words: what is placed already, what the needle does, in the order of its numbers."""

from __future__ import annotations

from collections.abc import Sequence

from ...craft.events import Anchor, Event, Guard, Pass, PickUp, Place, Ring, Through, Under, WeaveIn
from ...craft.layout import Layout
from ...craft.piece import Piece
from ...craft.runs import said
from ...craft.saying import section_name, unit_of
from ...craft.scenes import Scene
from ..said import counted


def scene_alt(piece: Piece, plan: Layout, scene: Scene) -> str:
    """What is seen, one clause an action, numbered as in the picture."""
    begins = "A new thread begins with a loose tail. " if isinstance(scene.shown[0], Anchor) else ""
    told = "; ".join(f"{number} {_action(piece, plan, [scene.shown[index] for index in action])}" for number, action in enumerate(scene.actions, 1))
    end = "The thread is cut off." if isinstance(scene.shown[-1], WeaveIn) else "The needle is at the end of the thread."
    return f"The way of the thread in {section_name(scene.section)}. {begins}{told}. {end}"


def _action(piece: Piece, plan: Layout, events: Sequence[Event]) -> str:
    first = events[0]
    if len(events) == 1:
        return _said(piece, plan, first)
    if isinstance(first, PickUp):
        return f"pick up {_beads(plan, tuple(place for event in events for place in event.places))}"
    return f"pass through {counted(len(events), unit_of(piece), unit_of(piece, 2))} one after the other, from {_where(piece, first.places)} to {_where(piece, events[-1].places)}"


def _said(piece: Piece, plan: Layout, event: Event) -> str:
    if isinstance(event, PickUp):
        return f"pick up {_beads(plan, event.places)}"
    if isinstance(event, Pass):
        return f"pass {_way(plan, event)}through {_where(piece, event.places)}"
    if isinstance(event, Under):
        return f"pass under the thread bridge between {unit_of(piece, 2)} {event.left + 1} and {event.left + 2} of row {event.row}"
    return {Guard: "pass through the thread guard", Ring: "pass through the ring"}.get(type(event)) or f"pass through {event.name}"


def _way(plan: Layout, event: Pass) -> str:
    if not plan.lying or event.places[0].part != "row":
        return "up " if event.up else "down "
    return "to the right " if event.up else "to the left "


def _beads(plan: Layout, places: tuple[Place, ...]) -> str:
    keys = [plan.spots[place].key for place in places]
    return f"{counted(len(keys), 'bead')}, {said([(key,) for key in keys])}"


def _where(piece: Piece, places: tuple[Place, ...]) -> str:
    stitches = list(dict.fromkeys(place[:3] for place in places))
    if places[0].part != "row":
        name = "the loop" if places[0].part == "hanger" else f"strand {places[0].line}"
        return f"{counted(len(places), 'bead')} of {name}"
    rows = sorted({stitch[1] for stitch in stitches})
    which = " and ".join(str(stitch[2] + 1) for stitch in stitches) if len(rows) == 1 and len(stitches) < 4 else ""
    row = " and ".join(f"row {row}" for row in rows)
    return f"{unit_of(piece, len(stitches))} {which} of {row}" if which else f"{counted(len(stitches), unit_of(piece), unit_of(piece, 2))} of {row}"
