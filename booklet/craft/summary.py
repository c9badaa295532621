"""The facts of a pattern as one plain object, the shape that `booklet tally --json` prints."""

from __future__ import annotations

from collections.abc import Sequence

from .events import Path, Section
from .needle import path
from .passes import needle_for
from .piece import Piece
from .plan import ThreadPlan
from .size import mass, size
from .tally import Tally, two_figures
from .thread import ThreadUse, thread_totals


def summary(slug: str, version: str, makes: str, piece: Piece, counts: Tally, uses: Sequence[ThreadUse],
            plan: ThreadPlan | None = None, second: Piece | None = None) -> dict:
    """Counts, size, mass and thread. Sizes in mm to one decimal, masses to two figures; `thread_mm` is that of one piece.

    With a plan, the thread by kind for all pieces, with spools and the needle; `second` is the second piece where it has
    words of its own.
    """
    measured, needle = size(piece), path(piece)
    threads = {use.part: round(use.length) for use in uses}
    return {
        "pattern": slug, "version": version, "makes": makes, "pieces": counts.pieces,
        "body": {"stitch": "brick", "drop": piece.drop, "rows": [_row(piece, row, needle) for row in piece.rows]},
        "fringe": {"strands": _strands(piece)},
        "beads": {line.key: {"piece": line.piece, "total": line.total, "to_buy": line.to_buy,
                             "grams": two_figures(line.grams)} for line in counts.lines},
        "size_mm": {"width": round(measured.width, 1), "body": round(measured.body, 1), "length": round(measured.length, 1)},
        "mass_g": {"piece": two_figures(mass(piece))},
        "thread_mm": {"body": threads.get("body", 0), "fringe": threads.get("fringe", 0)},
        **(_bought(piece, counts.pieces, uses, plan) if plan else {}),
        **({"second": {"rows": [_row(second, row, path(second)) for row in second.rows], "strands": _strands(second)}} if second else {}),
    }


def _bought(piece: Piece, pieces: int, uses: Sequence[ThreadUse], plan: ThreadPlan) -> dict:
    needle = needle_for(piece, plan)
    totals = [{"kind": total.kind, "parts": list(total.parts), "diameter_mm": plan.kinds[total.kind].diameter if total.kind in plan.kinds else None,
               "total_mm": round(total.length), "working_lengths": total.lengths, "spools": total.spools}
              for total in thread_totals(uses, pieces, plan)]
    return {"threads": totals, "needle": needle.size if needle else None}


def _strands(piece: Piece) -> list[dict]:
    return [{"strand": strand.number, "beads": "".join(strand.beads), "end": "".join(strand.end)} for strand in piece.strands]


def _row(piece: Piece, row, needle: Path) -> dict:
    taken = needle.picked_up(Section("row", row.number))
    return {"row": row.number, "direction": row.direction, "stitches": len(row.stitches),
            "pickup": "".join(row.stitches[place.index].beads[place.level] for place in taken)}
