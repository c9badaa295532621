"""The steps of a fringe under stitches whose beads lie along the row: peyote, square stitch and loom work.

The needle comes out beside a stitch of row 1, works the strand, and passes through that stitch once more the same way, so
that the strand hangs under its middle. It always goes on in the direction of row 1.
"""

from __future__ import annotations

from .fringe_steps import charm_step, is_plain, longest_said, stretch_said, twigs_step, where_said
from .piece import Piece, opposite
from .plan import ThreadPlan
from .saying import Step, m, numbers_said, unit_of
from .strand import LOOP, STRAIGHT, TWIST
from .strands import journeys

TAKE = ("Pick up the beads of the strand from the top down, then its end beads. Skip the end beads and pass back up through the rest "
        "of the strand.")


def lying_fringe_steps(piece: Piece, plan: ThreadPlan) -> list[Step | None]:
    """The steps of the fringe in working order; None for those that this piece does not need."""
    if not piece.strands:
        return []
    if is_plain(piece):
        return [_start(piece, plan), _plain(piece)]
    made = [_start(piece, plan), _straight(piece), twigs_step(piece), _loop(piece), _twist(piece), charm_step(piece), _way(piece)]
    last = next(index for index in reversed(range(len(made))) if made[index])
    made[last] = Step(made[last].id, made[last].title, f"{made[last].text} After the last strand the thread exits row 1 on the {piece.along}.")
    return made


def _start(piece: Piece, plan: ThreadPlan) -> Step:
    unit, side, first = unit_of(piece), opposite(piece.along), journeys(piece)[0]
    number = first.start.index + 1
    at_edge = number == (1 if side == "left" else len(piece.base.stitches))
    which = f"the first {unit} of row 1" if at_edge else f"row 1 as far as its {unit} {number}, counted from the left, and through that,"
    return Step("fringe-start", "Starting the fringe",
                f"{where_said(piece)}Thread {m(plan.length)} of {plan.fringe}{stretch_said(plan)}. Anchor it in the body round two neighbouring "
                f"{unit_of(piece, 2)} twice, come to the {side} edge and pass through {which} towards the {piece.along}. "
                f"The thread exits beside it, above strand {first.strand.number}.")


def _again(piece: Piece) -> str:
    return f"Pass once more through the {unit_of(piece)} that the thread came out of, the same way, so that the strand hangs under it"


def _plain(piece: Piece) -> Step:
    unit, side, count = unit_of(piece), opposite(piece.along), len(piece.strands)
    strands = f"{count} strands, one under each {unit} of row 1, from the {side} edge" if count > 1 else f"one strand, under the one {unit} of row 1"
    beside = f"the {'bead' if piece.drop == 1 else 'set'} of row 2 beside it and " if piece.stitch == "peyote" else ""
    return Step("fringe", "Each strand",
                f"Work {strands}. {TAKE} {_again(piece)}; then pass through {beside}the next {unit} of row 1. Pull until no thread shows and the strand "
                f"still swings. {longest_said(piece, piece.strands)} After the last strand the thread exits row 1 at the {piece.along} edge.")


def _straight(piece: Piece) -> Step | None:
    strands = [strand for strand in piece.strands if strand.kind == STRAIGHT]
    if not strands:
        return None
    return Step("fringe", "Each strand",
                f"Work {numbers_said('strand', [strand.number for strand in strands])} like this, from the {opposite(piece.along)} edge. {TAKE} {_again(piece)}. "
                f"Pull until no thread shows and the strand still swings. {longest_said(piece, strands)} "
                f"The thread exits beside the strand, on the {piece.along}.")


def _loop(piece: Piece) -> Step | None:
    strands = [strand for strand in piece.strands if strand.kind == LOOP]
    if not strands:
        return None
    return Step("fringe-loop", "Loops",
                f"{numbers_said('Strand', [strand.number for strand in strands])} {'is a loop' if len(strands) == 1 else 'are loops'}. "
                "Pick up all the beads; there are no end beads, and the needle does not pass back through them. Pass through the "
                f"{unit_of(piece)} of the second place that the words name, towards the {piece.along}. Pull until the loop hangs round and no thread shows. "
                f"The thread exits that {unit_of(piece)} on the {piece.along}.")


def _twist(piece: Piece) -> Step | None:
    strands = [strand for strand in piece.strands if strand.kind == TWIST]
    if not strands:
        return None
    ends = ", the end beads" if any(strand.end for strand in strands) else ""
    return Step("fringe-twist", "Twisted pairs",
                f"{numbers_said('Strand', [strand.number for strand in strands])} {'is a twisted pair' if len(strands) == 1 else 'are twisted pairs'}. "
                f"Pick up the beads of the first line{ends} and then the beads after \"up\". Hold the thread close to the last bead and roll it between two fingers, "
                "always the same way, until the lines wind round each other when you let them hang. Without letting go, "
                f"{_again(piece)[0].lower()}{_again(piece)[1:]}. The thread exits beside the strand, on the {piece.along}.")


def _way(piece: Piece) -> Step | None:
    """How the needle gets on where strands do not all follow each other alike."""
    if len(piece.strands) == 1:
        return None
    rows = "rows 1 and 2" if piece.stitch == "peyote" else "row 1"
    return Step("fringe-way", "From strand to strand",
                f"Pass through the {'beads' if piece.drop == 1 else 'sets'} of {rows} that lie between, always towards the {piece.along}, and through the {unit_of(piece)} of row 1 "
                "above the next strand. Where the thread is there already, begin the strand at once. The thread exits beside that "
                f"{unit_of(piece)}, above the next strand.")
