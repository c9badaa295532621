"""The words of a row of brick stitch."""

from __future__ import annotations

from ..piece import Piece, Row
from ..runs import said
from .brick_edges import Edges, edges
from .brick_path import needs_new_thread


def row_count(stitches: int, drop: int, level: int) -> str:
    """"9 stitches", "5 sets", "6 stitches below"."""
    return f"{stitches} {_unit(drop, stitches)}" + (" below" if level < 0 else "")


def row_text(piece: Piece, row: Row, sets: list[tuple[str, ...]]) -> str:
    """What is done in a row, with its sets in the order of picking up."""
    under, one = piece.under(row), len(sets) == 1
    if under is None:
        return f"one {_unit(piece.drop)} {said(sets)}" if one else f"ladder {said(sets[:2])}{_then(sets[2:])}"
    place = edges(row, under)
    way = "" if place.starts_in else " out"
    if one:
        return f"{_lead(piece, row, place)}one {_unit(piece.drop)}{way} {said(sets)}{_free(place)}"
    first, last = 2 + place.ladder_start, len(sets) - place.ladder_end
    start = f"start {way.strip() or 'in'} {said(sets[:2])}{_ladder(sets[2:first])}"
    end = _free(place) or f"; end {'in' if place.ends_in else 'out'}"
    return f"{_lead(piece, row, place)}{start}{_then(sets[first:last])}{end}{_ladder(sets[last:])}"


def _unit(drop: int, count: int = 1) -> str:
    unit = "stitch" if drop == 1 else "set"
    return unit if count == 1 else {"stitch": "stitches", "set": "sets"}[unit]


def _lead(piece: Piece, row: Row, place: Edges) -> str:
    """How the needle gets to the stitch from which the row begins, where that is not the edge."""
    if row.new_start:
        how = "new thread in" if needs_new_thread(piece, row) else "travel to"
        return f"{how} row {piece.under(row).name}, {_unit(piece.drop)} {place.exit + 1} from the left; "
    return f"travel {place.travel} {_unit(piece.drop, 2)} in; " if place.travel else ""


def _then(sets: list[tuple[str, ...]]) -> str:
    return f"; then {said(sets)}" if sets else ""


def _ladder(sets: list[tuple[str, ...]]) -> str:
    return f"; ladder out {said(sets)}" if sets else ""


def _free(place: Edges) -> str:
    """Thread bridges that the row leaves free at its end."""
    return f"; end {place.short} bridge{'' if place.short == 1 else 's'} short" if place.short else ""
