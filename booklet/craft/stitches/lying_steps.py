"""Steps that stitches share whose beads lie along the row: stringing, hanger and fringe."""

from __future__ import annotations

from ..hanger import HANGER_PASSES, hanger_side, hanger_stitches, top_row
from ..piece import LEFT, RIGHT, Piece, opposite
from ..plan import TAIL, ThreadPlan
from ..runs import said
from ..saying import Step, cm, m, unit_of
from ..size import strand_length


def start_side(piece: Piece) -> str:
    """The edge at which row 1 starts."""
    return opposite(piece.base.direction)


def threaded(plan: ThreadPlan) -> str:
    """How a piece that begins with a strung line is begun."""
    return (f"Thread a needle with {m(plan.length)} of {plan.body}. Pick up a stop bead of any other colour, pass through it once more the same "
            f"way and slide it along until a tail of {cm(TAIL)} is left; take it off when you weave the tail in.")


def hanger_step(piece: Piece) -> Step | None:
    """Round the stitches in the middle of the top row; None without a hanger."""
    if piece.hanger.kind == "none":
        return None
    top = top_row(piece)
    left, right = (index + 1 for index in hanger_stitches(piece))
    side = hanger_side(piece)
    where = f"{unit_of(piece, 2)} {left} and {right}" if left != right else f"the one {unit_of(piece)}"
    over = "Pass through a thread guard" if piece.hanger.kind == "guard" else \
        f"Pick up the {_beads(len(piece.hanger.beads))} of the loop: {said([(key,) for key in piece.hanger.beads])}"
    counted = ", counted from the left" if left != right else ""
    between = " and what lies between them" if right - left > 1 or piece.stitch == "peyote" and left != right else ""
    which = f"both{between}" if left != right else "it"
    return Step("hanger", "Hanger",
                f"The hanger sits on {where} of row {top.number}{counted}. Pass through a lower row towards the {opposite(side)} until you are past "
                f"{'both' if left != right else 'it'}, come up into row {top.number} and pass back through {which} towards the {side}. "
                f"{over} and pass through {which} towards the {side} again. Go round {HANGER_PASSES} times in all, snug but not stiff. "
                f"The thread exits at the {side} of the hanger.")


def _beads(count: int) -> str:
    return "1 bead" if count == 1 else f"{count} beads"


def fringe_steps(piece: Piece, plan: ThreadPlan, way_on: str) -> list[Step]:
    """Start and each strand. `way_on` says how the needle gets from one stitch of row 1 to the next."""
    if not piece.strands:
        return []
    unit, side, count = unit_of(piece), start_side(piece), len(piece.strands)
    first, longest = piece.worked_strands[0].number, max(piece.strands, key=lambda strand: strand_length(piece, strand.all))
    strands = f"{count} strands, one under each {unit} of row 1, from the {side} edge" if count > 1 else f"one strand, under the one {unit} of row 1"
    return [
        Step("fringe-start", "Starting the fringe",
             f"Thread {m(plan.length)} of {plan.fringe}; stretch nylon before you use it. Anchor it in the body round two neighbouring "
             f"{unit_of(piece, 2)} twice, come to the {side} edge and pass through the first {unit} of row 1 towards the {piece.base.direction}. "
             f"The thread exits beside it, above strand {first}."),
        Step("fringe", "Each strand",
             f"Work {strands}. Pick up the beads of the strand from the top down, then its end beads. Skip the end beads and pass back up "
             f"through the rest of the strand. Pass once more through the {unit} that the thread came out of, the same way, so that the strand "
             f"hangs under it; {way_on} the next {unit} of row 1. Pull until no thread shows and the strand still swings. "
             f"The longest, strand {longest.number}, measures {strand_length(piece, longest.all):.0f} mm. "
             f"After the last strand the thread exits row 1 at the {RIGHT if side == LEFT else LEFT} edge."),
    ]
