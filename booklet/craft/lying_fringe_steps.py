"""The steps of a fringe under stitches whose beads lie along the row: peyote, square stitch and loom work.

The needle comes out beside a stitch of row 1, works the strand, and passes through that stitch once more the same way, so
that the strand hangs under its middle. It always goes on in the direction of row 1.
"""

from __future__ import annotations

from collections.abc import Sequence

from .fringe_steps import charm_step, is_plain, longest_said, loops_said, thread_taken, twigs_step, twists_said, where_said, with_end
from .language import _, ngettext, sentences
from .piece import LEFT, Piece, opposite
from .plan import ThreadPlan
from .saying import Step, at_edge, bead_or_set, from_edge, on_side, strands_said, to_edge, towards, unit_of
from .strand import STRAIGHT, Strand
from .strands import journeys


def lying_fringe_steps(piece: Piece, plan: ThreadPlan) -> list[Step | None]:
    """The steps of the fringe in working order; None for those that this piece does not need."""
    if not piece.strands:
        return []
    if is_plain(piece):
        return [_start(piece, plan), _plain(piece)]
    made = [_start(piece, plan), _straight(piece), twigs_step(piece), _loop(piece), _twist(piece), charm_step(piece), _way(piece)]
    return with_end(made, _("After the last strand the thread exits row 1 {side}.", side=on_side(piece.along)))


def _start(piece: Piece, plan: ThreadPlan) -> Step:
    side, first = opposite(piece.along), journeys(piece)[0]
    number = first.start.index + 1
    told = {"units": unit_of(piece, 2), "unit": unit_of(piece), "edge": to_edge(side), "towards": towards(piece.along)}
    if number == (1 if side == LEFT else len(piece.base.stitches)):
        begin = _("Anchor it in the body round two neighbouring {units} twice, come {edge} and pass through the first {unit} of row 1 {towards}.", **told)
    else:
        begin = _("Anchor it in the body round two neighbouring {units} twice, come {edge} and pass through row 1 as far as its {unit} {number}, "
                  "counted from the left, and through that, {towards}.", number=number, **told)
    return Step("fringe-start", _("Starting the fringe"), sentences(
        where_said(piece), thread_taken(plan), begin, _("The thread exits beside it, above strand {strand}.", strand=first.strand.number)))


def _taken() -> str:
    return _("Pick up the beads of the strand from the top down, then its end beads. Skip the end beads and pass back up through the rest of the strand.")


def _pulled(piece: Piece, strands: Sequence[Strand]) -> str:
    return sentences(_("Pull until no thread shows and the strand still swings."), longest_said(piece, strands))


def _plain(piece: Piece) -> Step:
    unit, count = unit_of(piece), len(piece.strands)
    begin = ngettext("Work {count} strands, one under each {unit} of row 1, {edge}.", "Work {count} strands, one under each {unit} of row 1, {edge}.", count,
                     unit=unit, edge=from_edge(opposite(piece.along))) if count > 1 else \
        _("Work one strand, under the one {unit} of row 1.", unit=unit)
    again = {"unit": unit, "beside": bead_or_set(piece)}
    on = _("Pass once more through the {unit} that the thread came out of, the same way, so that the strand hangs under it; "
           "then pass through the {beside} of row 2 beside it and the next {unit} of row 1.", **again) if piece.stitch == "peyote" else \
        _("Pass once more through the {unit} that the thread came out of, the same way, so that the strand hangs under it; "
          "then pass through the next {unit} of row 1.", unit=unit)
    return Step("fringe", _("Each strand"), sentences(
        begin, _taken(), on, _pulled(piece, piece.strands), _("After the last strand the thread exits row 1 {edge}.", edge=at_edge(piece.along))))


def _straight(piece: Piece) -> Step | None:
    strands = [strand for strand in piece.strands if strand.kind == STRAIGHT]
    if not strands:
        return None
    return Step("fringe", _("Each strand"), sentences(
        _("Work {strands} like this, {edge}.", strands=strands_said([strand.number for strand in strands]), edge=from_edge(opposite(piece.along))), _taken(),
        _("Pass once more through the {unit} that the thread came out of, the same way, so that the strand hangs under it.", unit=unit_of(piece)),
        _pulled(piece, strands), _beside(piece)))


def _beside(piece: Piece) -> str:
    return _("The thread exits beside the strand, {side}.", side=on_side(piece.along))


def _loop(piece: Piece) -> Step | None:
    begin = loops_said(piece)
    if not begin:
        return None
    return Step("fringe-loop", _("Loops"), sentences(begin, _(
        "Pass through the {unit} of the second place that the words name, {towards}. Pull until the loop hangs round and no thread shows. "
        "The thread exits that {unit} {side}.", unit=unit_of(piece), towards=towards(piece.along), side=on_side(piece.along))))


def _twist(piece: Piece) -> Step | None:
    begin = twists_said(piece)
    if not begin:
        return None
    return Step("fringe-twist", _("Twisted pairs"), sentences(begin, _(
        "Without letting go, pass once more through the {unit} that the thread came out of, the same way, so that the strand hangs under it.",
        unit=unit_of(piece)), _beside(piece)))


def _way(piece: Piece) -> Step | None:
    """How the needle gets on where strands do not all follow each other alike."""
    if len(piece.strands) == 1:
        return None
    told = {"beads": bead_or_set(piece, 2), "unit": unit_of(piece), "towards": towards(piece.along)}
    way = _("Pass through the {beads} of rows 1 and 2 that lie between, always {towards}, and through the {unit} of row 1 above the next strand.", **told) \
        if piece.stitch == "peyote" else \
        _("Pass through the {beads} of row 1 that lie between, always {towards}, and through the {unit} of row 1 above the next strand.", **told)
    return Step("fringe-way", _("From strand to strand"), sentences(way, _(
        "Where the thread is there already, begin the strand at once. The thread exits beside that {unit}, above the next strand.", unit=unit_of(piece))))
