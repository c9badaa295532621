"""The path of the needle through the fringe."""

from __future__ import annotations

from .events import Anchor, Event, Pass, PickUp, Place, Section, WeaveIn, worked_indexes
from .piece import Piece
from .stitches import stitch_of


def fringe(piece: Piece) -> list[Event]:
    """To the first base stitch; each strand down and back, then through the base row to the next."""
    if not piece.strands:
        return []
    stitch, order = stitch_of(piece), worked_indexes(piece.base)
    sections = [Section("strand", strand.number) for strand in piece.worked_strands]
    events: list[Event] = [Anchor(sections[0]), *stitch.to_strand(piece, sections[0], order[0], None)]
    for k, strand in enumerate(piece.worked_strands):
        section = sections[k]
        places = tuple(Place("strand", strand.number, index) for index in range(len(strand.all)))
        events.append(PickUp(section, places))
        if strand.beads:
            events.append(Pass(section, places[:len(strand.beads)][::-1], True))
        events += stitch.from_strand(piece, section, order[k])
        if k + 1 < len(sections):
            events += stitch.to_strand(piece, sections[k + 1], order[k + 1], order[k])
    return [*events, WeaveIn(sections[-1])]
