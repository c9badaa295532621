"""A step picture in words: what is placed already, what the needle does, in the order of its numbers."""

from __future__ import annotations

from collections.abc import Sequence

from ...craft.events import Anchor, Event, Guard, Pass, PickUp, Place, Ring, Through, WeaveIn
from ...craft.language import _, ngettext, sentences
from ...craft.layout import Layout
from ...craft.piece import Piece
from ...craft.runs import said
from ...craft.saying import section_name, unit_of
from ...craft.scenes import Scene
from ..said import beads_counted


def scene_alt(piece: Piece, plan: Layout, scene: Scene) -> str:
    """What is seen, one clause an action, numbered as in the picture."""
    told = "; ".join(f"{number} {_action(piece, plan, [scene.shown[index] for index in action])}" for number, action in enumerate(scene.actions, 1))
    return sentences(
        _("The way of the thread in {section}.", section=section_name(scene.section)),
        _("A new thread begins with a loose tail.") if isinstance(scene.shown[0], Anchor) else "", f"{told}.",
        _("The thread is cut off.") if isinstance(scene.shown[-1], WeaveIn) else _("The needle is at the end of the thread."))


def _action(piece: Piece, plan: Layout, events: Sequence[Event]) -> str:
    first = events[0]
    if len(events) == 1:
        return _said(piece, plan, first)
    if isinstance(first, PickUp):
        return _picked(plan, tuple(place for event in events for place in event.places))
    return ngettext("pass through {count} {units} one after the other, from {first} to {last}", "pass through {count} {units} one after the other, from {first} to {last}",
                    len(events), units=unit_of(piece, len(events)), first=_where(piece, first.places), last=_where(piece, events[-1].places))


def _said(piece: Piece, plan: Layout, event: Event) -> str:
    if isinstance(event, PickUp):
        return _picked(plan, event.places)
    if isinstance(event, Pass):
        return _passed(plan, event, _where(piece, event.places))
    if isinstance(event, Guard):
        return _("pass through the thread guard")
    if isinstance(event, Ring):
        return _("pass through the ring")
    if isinstance(event, Through):
        return _("pass through {charm}", charm=event.name)
    return _("pass under the thread bridge between {units} {first} and {second} of row {row}",
             units=unit_of(piece, 2), first=event.left + 1, second=event.left + 2, row=event.row)


def _passed(plan: Layout, event: Pass, beads: str) -> str:
    if not plan.lying or event.places[0].part != "row":
        return _("pass up through {beads}", beads=beads) if event.up else _("pass down through {beads}", beads=beads)
    return _("pass to the right through {beads}", beads=beads) if event.up else _("pass to the left through {beads}", beads=beads)


def _picked(plan: Layout, places: tuple[Place, ...]) -> str:
    keys = [plan.spots[place].key for place in places]
    return _("pick up {count}, {beads}", count=beads_counted(len(keys)), beads=said([(key,) for key in keys]))


def _where(piece: Piece, places: tuple[Place, ...]) -> str:
    stitches = list(dict.fromkeys(place[:3] for place in places))
    if places[0].part == "hanger":
        return _("{beads} of the loop", beads=beads_counted(len(places)))
    if places[0].part != "row":
        return _("{beads} of strand {number}", beads=beads_counted(len(places)), number=places[0].line)
    rows, units = sorted({stitch[1] for stitch in stitches}), unit_of(piece, len(stitches))
    row = _(" and ").join(_("row {number}", number=row) for row in rows)
    if len(rows) == 1 and len(stitches) < 4:
        return _("{units} {numbers} of {row}", units=units, numbers=_(" and ").join(str(stitch[2] + 1) for stitch in stitches), row=row)
    return _("{count} {units} of {row}", count=len(stitches), units=units, row=row)
