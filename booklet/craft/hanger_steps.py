"""The step for the hangers of a piece, whatever stitch its body is worked in."""

from __future__ import annotations

from .hanger import carriers, hanger_side, top_row, working_order
from .piece import Hanger, Piece, Row, opposite
from .runs import said
from .saying import Step, unit_of
from .stitches import stitch_of

_WHERE = {"left": "at its left edge", "middle": "in the middle", "right": "at its right edge"}
_TIMES = {1: "once", 2: "twice"}


def hanger_step(piece: Piece) -> Step | None:
    """How every hanger is worked, in working order; None for a piece without one."""
    if not piece.hangers:
        return None
    if stitch_of(piece).LYING:
        return _lying(piece)
    order = working_order(piece)
    texts = [_one(piece, number, before) for before, number in zip((None, *order), order)]
    title, top = "Hanger" if len(texts) == 1 else "Hangers", _top(piece, order[-1])
    up = "Weave up through the edge to the top row. " if _from_below(piece, _top(piece, order[0])) else ""
    return Step("hanger", title, f"{up}{' '.join(texts)} The thread exits below row {top.name}.")


def _top(piece: Piece, number: int) -> Row:
    return top_row(piece, piece.hangers[number - 1].at)


def _from_below(piece: Piece, top: Row) -> bool:
    """Whether the thread has to come up along the edge, from rows below the base row to the whole of the highest row."""
    return piece.rows[-1].level < 0 and top == piece.drawn[-1]


def _one(piece: Piece, number: int, before: int | None) -> str:
    """The hanger `number`, worked after the hanger `before`."""
    hanger, top, unit = piece.hangers[number - 1], _top(piece, number), unit_of(piece)
    left, right = (index + 1 for index in carriers(piece, hanger))
    row = f"row {top.name}"
    where = (f"{unit_of(piece, 2)} {left} and {right} of {row}, counted from the left" if left != right else f"the one {unit} of {row}"
             if len(top.stitches) == 1 else f"{unit} {left} of {row}, counted from the left")
    return (f"{_name(piece, number)} sits on {where}. {_travel(piece, top, before, left != right)} {_through(hanger)} and pass down through the "
            f"{'other' if left != right else 'same'} {unit}. {_rounds(hanger, left != right, unit)}")


def _travel(piece: Piece, top: Row, before: int | None, two: bool) -> str:
    """To the top of the first of the stitches that carry a hanger: along its row, or from another row."""
    here, which = piece.rows[-1] if before is None else _top(piece, before), "the nearer one" if two else "it"
    if here != top and not (before is None and _from_below(piece, top)):
        return f"Weave through the stitches to row {top.name}, until the thread exits the top of {which}."
    along = "the top row" if top == piece.drawn[-1] else f"row {top.name}"
    return f"Pass {'down and up' if before is None else 'up and down'} along {along} until the thread exits the top of {which}."


def _name(piece: Piece, number: int) -> str:
    return "The hanger" if len(piece.hangers) == 1 else f"Hanger {number}, {_WHERE[piece.hangers[number - 1].at]},"


def _lying(piece: Piece) -> Step:
    """Round the stitches that carry each hanger, along the row."""
    order = working_order(piece)
    texts = [_one_lying(piece, number) for number in order]
    return Step("hanger", "Hanger" if len(texts) == 1 else "Hangers",
                f"{' '.join(texts)} The thread exits at the {hanger_side(piece, order[-1])} of the {'hanger' if len(texts) == 1 else 'last one'}.")


def _one_lying(piece: Piece, number: int) -> str:
    hanger, row, side = piece.hangers[number - 1], f"row {top_row(piece).number}", hanger_side(piece, number)
    left, right = (index + 1 for index in carriers(piece, hanger))
    where = f"{unit_of(piece, 2)} {left} and {right} of {row}, counted from the left" if left != right else f"the one {unit_of(piece)} of {row}" \
        if len(top_row(piece).stitches) == 1 else f"{unit_of(piece)} {left} of {row}, counted from the left"
    between = " and what lies between them" if right - left > 1 or piece.stitch == "peyote" and left != right else ""
    past, which = ("both", f"both{between}") if left != right else ("it", "it")
    text = (f"{_name(piece, number)} sits on {where}. Pass through a lower row towards the {opposite(side)} until you are past {past}, come up into {row} "
            f"and pass back through {which} towards the {side}. {_through(hanger)} and pass through {which} towards the {side} again. ")
    if hanger.passes == 1:
        return f"{text}Pull until it sits close to the row."
    return f"{text}Go round {_TIMES.get(hanger.passes, f'{hanger.passes} times')} in all, snug but not stiff."


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
