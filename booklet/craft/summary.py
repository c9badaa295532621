"""The facts of a pattern as one plain object, the shape that `booklet tally --json` prints."""

from __future__ import annotations

from collections.abc import Sequence

from .events import Path, Section
from .needle import path
from .piece import Piece
from .size import mass, size
from .tally import Tally, two_figures
from .thread import ThreadUse


def summary(slug: str, version: str, makes: str, piece: Piece, counts: Tally, uses: Sequence[ThreadUse]) -> dict:
    """Counts, size, mass and thread. Sizes in mm to one decimal, masses to two figures; thread is that of one piece, in mm."""
    measured, needle = size(piece), path(piece)
    threads = {"body": 0, "fringe": 0} | {use.part: round(use.length) for use in uses}
    return {
        "pattern": slug, "version": version, "makes": makes, "pieces": counts.pieces,
        "body": {"stitch": piece.stitch, "drop": piece.drop, "rows": [_row(piece, row, needle) for row in piece.rows]},
        "fringe": {"strands": [{"strand": strand.number, "beads": "".join(strand.beads), "end": "".join(strand.end)}
                               for strand in piece.strands]},
        "beads": {line.key: {"piece": line.piece, "total": line.total, "to_buy": line.to_buy,
                             "grams": two_figures(line.grams)} for line in counts.lines},
        "size_mm": {"width": round(measured.width, 1), "body": round(measured.body, 1), "length": round(measured.length, 1)},
        "mass_g": {"piece": two_figures(mass(piece))},
        "thread_mm": threads,
    }


def _row(piece: Piece, row, needle: Path) -> dict:
    taken = needle.picked_up(Section("row", row.number))
    return {"row": row.number, "direction": row.direction, "stitches": len(row.stitches),
            "pickup": "".join(row.stitches[place.index].beads[place.level] for place in taken)}
