"""The step for the hangers of a piece, whatever stitch its body is worked in."""

from __future__ import annotations

from .hanger import carriers, top_row, working_order
from .piece import Hanger, Piece
from .runs import said
from .saying import Step, unit_of

_WHERE = {"left": "at its left edge", "middle": "in the middle", "right": "at its right edge"}
_TIMES = {1: "once", 2: "twice"}


def hanger_step(piece: Piece) -> Step | None:
    """How every hanger is worked, in working order; None for a piece without one."""
    if not piece.hangers:
        return None
    top = top_row(piece)
    way = "Weave up through the edge to the top row. " if piece.lower else ""
    texts = [_one(piece, number, first=not k) for k, number in enumerate(working_order(piece))]
    title = "Hanger" if len(texts) == 1 else "Hangers"
    return Step("hanger", title, f"{way}{' '.join(texts)} The thread exits below row {top.number}.")


def _one(piece: Piece, number: int, first: bool) -> str:
    hanger, top, unit = piece.hangers[number - 1], top_row(piece), unit_of(piece)
    left, right = (index + 1 for index in carriers(piece, hanger))
    row = f"row {top.number}"
    where = (f"{unit_of(piece, 2)} {left} and {right} of {row}, counted from the left" if left != right else f"the one {unit} of {row}"
             if len(top.stitches) == 1 else f"{unit} {left} of {row}, counted from the left")
    name = "The hanger" if len(piece.hangers) == 1 else f"Hanger {number}, {_WHERE[hanger.at]},"
    travel = "Pass down and up along the top row until the thread exits the top of the nearer one." if first else \
        "Pass up and down along the top row until the thread exits the top of the nearer one."
    return (f"{name} sits on {where}. {travel} {_through(hanger)} and pass down through the {'other' if left != right else 'same'} {unit}. "
            f"{_rounds(hanger, left != right, unit)}")


def _through(hanger: Hanger) -> str:
    if hanger.kind == "guard":
        return "Pass up one leg of the thread guard and down the other"
    if hanger.kind == "ring":
        return f"Pass through a closed ring of {hanger.size:g} mm"
    count = len(hanger.beads)
    return f"Pick up the {count} bead{'s' if count > 1 else ''} of the loop: {said([(key,) for key in hanger.beads])}"


def _rounds(hanger: Hanger, two: bool, unit: str) -> str:
    if hanger.passes == 1:
        return "Pull until it sits close to the row."
    back = f"Pass up through the first {unit} again and" if two else "Pass round the thread bridge below, up through the same " + unit + " and"
    more = _TIMES.get(hanger.passes - 1, f"{hanger.passes - 1} times")
    return f"{back} through {'the loop' if hanger.kind == 'loop' else 'it'} {more} more, {hanger.passes} times in all, snug but not stiff."
