"""The step for the hangers of a piece, whatever stitch its body is worked in."""

from __future__ import annotations

from .hanger import carriers, hanger_side, top_row, working_order
from .language import _, ngettext, plainly, sentences
from .piece import LEFT, Hanger, Piece, Row, opposite
from .runs import said
from .saying import Step, times_said, towards, unit_of
from .stitches import stitch_of


def hanger_step(piece: Piece) -> Step | None:
    """How every hanger is worked, in working order; None for a piece without one."""
    if not piece.hangers:
        return None
    if stitch_of(piece).LYING:
        return _lying(piece)
    order = working_order(piece)
    texts = [_one(piece, number, before) for before, number in zip((None, *order), order)]
    return Step("hanger", _title(piece), sentences(
        _("Weave up through the edge to the top row.") if _from_below(piece, _top(piece, order[0])) else "", *texts,
        _("The thread exits below row {row}.", row=_top(piece, order[-1]).name)))


def _title(piece: Piece) -> str:
    return _("Hanger") if len(piece.hangers) == 1 else _("Hangers")


def _top(piece: Piece, number: int) -> Row:
    return top_row(piece, piece.hangers[number - 1].at)


def _from_below(piece: Piece, top: Row) -> bool:
    """Whether the thread has to come up along the edge, from rows below the base row to the whole of the highest row."""
    return piece.rows[-1].level < 0 and top == piece.drawn[-1]


def _sits(piece: Piece, number: int) -> str:
    """Which stitches carry a hanger."""
    hanger, top = piece.hangers[number - 1], _top(piece, number)
    left, right = (index + 1 for index in carriers(piece, hanger))
    told = {"hanger": _name(piece, number), "unit": unit_of(piece), "units": unit_of(piece, 2), "row": top.name, "left": left, "right": right}
    if left != right:
        return _("{hanger} sits on {units} {left} and {right} of row {row}, counted from the left.", **told)
    if len(top.stitches) == 1:
        return _("{hanger} sits on the one {unit} of row {row}.", **told)
    return _("{hanger} sits on {unit} {left} of row {row}, counted from the left.", **told)


def _one(piece: Piece, number: int, before: int | None) -> str:
    """The hanger `number`, worked after the hanger `before`."""
    hanger, top, unit = piece.hangers[number - 1], _top(piece, number), unit_of(piece)
    left, right = carriers(piece, hanger)
    down = _("{through} and pass down through the other {unit}.", through=_through(hanger), unit=unit) if left != right else \
        _("{through} and pass down through the same {unit}.", through=_through(hanger), unit=unit)
    return sentences(_sits(piece, number), _travel(piece, top, before, left != right), down, _rounds(piece, hanger, left != right))


def _travel(piece: Piece, top: Row, before: int | None, two: bool) -> str:
    """To the top of the first of the stitches that carry a hanger: along its row, or from another row."""
    here = piece.rows[-1] if before is None else _top(piece, before)
    goal = _("until the thread exits the top of the nearer one") if two else _("until the thread exits the top of it")
    if here != top and not (before is None and _from_below(piece, top)):
        return _("Weave through the stitches to row {row}, {goal}.", row=top.name, goal=goal)
    if top == piece.drawn[-1]:
        return _("Pass down and up along the top row {goal}.", goal=goal) if before is None else _("Pass up and down along the top row {goal}.", goal=goal)
    return _("Pass down and up along row {row} {goal}.", row=top.name, goal=goal) if before is None else \
        _("Pass up and down along row {row} {goal}.", row=top.name, goal=goal)


def _name(piece: Piece, number: int) -> str:
    if len(piece.hangers) == 1:
        return _("The hanger")
    return {"left": _("Hanger {number}, at its left edge,", number=number), "middle": _("Hanger {number}, in the middle,", number=number),
            "right": _("Hanger {number}, at its right edge,", number=number)}[piece.hangers[number - 1].at]


def _lying(piece: Piece) -> Step:
    """Round the stitches that carry each hanger, along the row."""
    order = working_order(piece)
    left = hanger_side(piece, order[-1]) == LEFT
    if len(order) == 1:
        exits = _("The thread exits at the left of the hanger.") if left else _("The thread exits at the right of the hanger.")
    else:
        exits = _("The thread exits at the left of the last one.") if left else _("The thread exits at the right of the last one.")
    return Step("hanger", _title(piece), sentences(*(_one_lying(piece, number) for number in order), exits))


def _one_lying(piece: Piece, number: int) -> str:
    hanger, side = piece.hangers[number - 1], hanger_side(piece, number)
    left, right = carriers(piece, hanger)
    told = {"row": top_row(piece).number, "inward": towards(opposite(side)), "outward": towards(side), "through": _through(hanger)}
    if left == right:
        way = _("Pass through a lower row {inward} until you are past it, come up into row {row} and pass back through it {outward}. "
                "{through} and pass through it {outward} again.", **told)
    elif right - left > 1 or piece.stitch == "peyote":
        way = _("Pass through a lower row {inward} until you are past both, come up into row {row} and pass back through both and what lies between them {outward}. "
                "{through} and pass through both and what lies between them {outward} again.", **told)
    else:
        way = _("Pass through a lower row {inward} until you are past both, come up into row {row} and pass back through both {outward}. "
                "{through} and pass through both {outward} again.", **told)
    pull = _("Pull until it sits close to the row.") if hanger.passes == 1 else \
        _("Go round {times} in all, snug but not stiff.", times=times_said(hanger.passes))
    return sentences(_sits(piece, number), way, pull)


def _through(hanger: Hanger) -> str:
    if hanger.kind == "guard":
        return _("Pass up one leg of the thread guard and down the other")
    if hanger.kind == "ring":
        return _("Pass through a closed ring of {size} mm", size=plainly(hanger.size))
    return ngettext("Pick up the {count} bead of the loop: {beads}", "Pick up the {count} beads of the loop: {beads}", len(hanger.beads),
                    beads=said([(key,) for key in hanger.beads]))


def _rounds(piece: Piece, hanger: Hanger, two: bool) -> str:
    if hanger.passes == 1:
        return _("Pull until it sits close to the row.")
    told = {"unit": unit_of(piece), "more": times_said(hanger.passes - 1), "count": hanger.passes}
    if hanger.kind == "loop":
        return _("Pass up through the first {unit} again and through the loop {more} more, {count} times in all, snug but not stiff.", **told) if two else \
            _("Pass round the thread bridge below, up through the same {unit} and through the loop {more} more, {count} times in all, snug but not stiff.", **told)
    return _("Pass up through the first {unit} again and through it {more} more, {count} times in all, snug but not stiff.", **told) if two else \
        _("Pass round the thread bridge below, up through the same {unit} and through it {more} more, {count} times in all, snug but not stiff.", **told)
