"""The words of a row of brick stitch."""

from __future__ import annotations

from ..language import _, ngettext
from ..piece import Piece, Row
from ..runs import said
from ..saying import unit_of
from .brick_edges import Edges, edges
from .brick_path import needs_new_thread


def row_count(stitches: int, drop: int, level: int) -> str:
    """"9 stitches", "5 sets", "6 stitches below"."""
    count = ngettext("{count} stitch", "{count} stitches", stitches) if drop == 1 else ngettext("{count} set", "{count} sets", stitches)
    return _("{count} below", count=count) if level < 0 else count


def row_text(piece: Piece, row: Row, sets: list[tuple[str, ...]]) -> str:
    """What is done in a row, with its sets in the order of picking up."""
    under, one = piece.under(row), len(sets) == 1
    if under is None:
        return _one(piece, sets, False) if one else _("ladder {beads}", beads=said(sets[:2])) + _then(sets[2:])
    place = edges(row, under)
    if one:
        return f"{_lead(piece, row, place)}{_one(piece, sets, not place.starts_in)}{_free(place)}"
    first, last = 2 + place.ladder_start, len(sets) - place.ladder_end
    start = _("start in {beads}", beads=said(sets[:2])) if place.starts_in else _("start out {beads}", beads=said(sets[:2]))
    end = _free(place) or (_("; end in") if place.ends_in else _("; end out"))
    return f"{_lead(piece, row, place)}{start}{_ladder(sets[2:first])}{_then(sets[first:last])}{end}{_ladder(sets[last:])}"


def _one(piece: Piece, sets: list[tuple[str, ...]], out: bool) -> str:
    """A row of one stitch."""
    if piece.drop == 1:
        return _("one stitch out {beads}", beads=said(sets)) if out else _("one stitch {beads}", beads=said(sets))
    return _("one set out {beads}", beads=said(sets)) if out else _("one set {beads}", beads=said(sets))


def _lead(piece: Piece, row: Row, place: Edges) -> str:
    """How the needle gets to the stitch from which the row begins, where that is not the edge."""
    if row.new_start:
        goal = {"row": piece.under(row).name, "unit": unit_of(piece), "number": place.exit + 1}
        return _("new thread in row {row}, {unit} {number} from the left; ", **goal) if needs_new_thread(piece, row) else \
            _("travel to row {row}, {unit} {number} from the left; ", **goal)
    return _("travel {count} {units} in; ", count=place.travel, units=unit_of(piece, 2)) if place.travel else ""


def _then(sets: list[tuple[str, ...]]) -> str:
    return _("; then {beads}", beads=said(sets)) if sets else ""


def _ladder(sets: list[tuple[str, ...]]) -> str:
    return _("; ladder out {beads}", beads=said(sets)) if sets else ""


def _free(place: Edges) -> str:
    """Thread bridges that the row leaves free at its end."""
    return ngettext("; end {count} bridge short", "; end {count} bridges short", place.short) if place.short else ""
