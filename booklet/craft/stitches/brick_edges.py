"""How a row of brick stitch begins and ends on the row under it, counted from the side where it starts."""

from __future__ import annotations

from msgspec import Struct

from ..events import worked_indexes
from ..piece import RIGHT, Row


class Edges(Struct, frozen=True):
    """The beginning and the end of a row. Stitches between the ladder ends are hung on thread bridges."""

    exit: int         # index in the row under of the stitch whose top the thread exits when the row begins
    travel: int       # stitches that the needle passes through to get there from the edge; always even
    starts_in: bool   # the first stitch stands half a stitch inward of that exit, not outward
    ladder_start: int   # stitches beyond the first hung one, added in ladder stitch
    ladder_end: int     # stitches beyond the last hung one
    ends_in: bool     # the last hung stitch stands on a thread bridge, not half outside the last one
    short: int        # thread bridges left free at the end


def edges(row: Row, under: Row) -> Edges:
    """Read from the places of both rows. The row must have a stitch over a thread bridge of `under`.

    Going down one stitch and up the next moves the exit by two, so a travel is even; where that leads one stitch too far,
    the row starts outward from there. The second stitch, the first to be hung, has the same thread bridge both ways.
    """
    start, stop, near, far = _ahead(row, under)
    inward = start > near
    stitches_in = (start - near - 1) // 2 if inward else 0
    if row.new_start:
        travel, starts_in, exit_at = 0, inward, start - 1 if inward else near
    else:
        travel, starts_in = stitches_in + stitches_in % 2, inward and stitches_in % 2 == 0
        exit_at = near + 2 * travel
    return Edges(_index(row, under, exit_at), travel, starts_in, max(0, (near - 1 - start) // 2), max(0, (stop - far - 1) // 2),
                 stop < far, max(0, (far - 1 - stop) // 2))


def bridge_under(row: Row, under: Row, index: int) -> int:
    """Left stitch of the thread bridge of `under` that a stitch of the row hangs on: its own, or the nearest."""
    return max(0, min((row.stitches[index].at - 1 - under.first) // 2, len(under.stitches) - 2))


def hung_indexes(row: Row, place: Edges) -> tuple[list[int], list[int], list[int]]:
    """Stitch indexes in working order: ladder stitches at the start from the inside out, hung stitches, ladder stitches at the end."""
    order = worked_indexes(row)
    first, last = place.ladder_start, len(order) - place.ladder_end
    return order[:first][::-1], order[first:last], order[last:]


def _ahead(row: Row, under: Row) -> tuple[int, int, int, int]:
    """Start and end of the row, near and far edge of the row under it, counted in the direction of the row."""
    if row.direction == RIGHT:
        return row.first, row.last, under.first, under.last
    return -row.last, -row.first, -under.last, -under.first


def _index(row: Row, under: Row, ahead: int) -> int:
    at = ahead if row.direction == RIGHT else -ahead
    return (at - under.first) // 2
