"""The path of the needle through the fringe."""

from __future__ import annotations

from .events import Anchor, Event, Pass, PickUp, Place, Section, WeaveIn, stitch_places, worked_indexes
from .piece import Piece


def fringe(piece: Piece) -> list[Event]:
    """Down out of the first base stitch; each strand down and back, up its base stitch, down through the next."""
    if not piece.strands:
        return []
    base, order = piece.base, worked_indexes(piece.base)
    sections = [Section("strand", strand.number) for strand in piece.worked_strands]
    events: list[Event] = [Anchor(sections[0]), Pass(sections[0], stitch_places(base, order[0], False), False)]
    for k, strand in enumerate(piece.worked_strands):
        section = sections[k]
        places = tuple(Place("strand", strand.number, index) for index in range(len(strand.all)))
        events.append(PickUp(section, places))
        if strand.beads:
            events.append(Pass(section, places[:len(strand.beads)][::-1], True))
        events.append(Pass(section, stitch_places(base, order[k], True), True))
        if k + 1 < len(sections):
            events.append(Pass(sections[k + 1], stitch_places(base, order[k + 1], False), False))
    return [*events, WeaveIn(sections[-1])]
