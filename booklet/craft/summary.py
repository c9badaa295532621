"""The facts of a pattern as one plain object, the shape that `booklet tally --json` prints."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec.structs import replace

from .events import Path, row_section
from .needle import path
from .passes import needle_for
from .piece import Piece
from .plan import ThreadPlan
from .size import mass, size
from .strand import LOOP, STRAIGHT, TWIST, Charm, Strand, Twig
from .tally import Tally, two_figures
from .thread import ThreadUse, thread_totals


def summary(slug: str, version: str, makes: str, piece: Piece, counts: Tally, uses: Sequence[ThreadUse],
            plan: ThreadPlan | None = None, second: Piece | None = None) -> dict:
    """Counts, size, mass and thread. Sizes in mm to one decimal, masses to two figures; `thread_mm` is that of one piece.

    With a plan, the thread by kind for all pieces, with spools and the needle; `second` is the second piece where it has
    words of its own.
    """
    measured, needle = size(piece), path(piece)
    threads = {"body": 0, "fringe": 0} | {use.part: round(use.length) for use in uses}
    return {
        "pattern": slug, "version": version, "makes": makes, "pieces": counts.pieces,
        "body": {"stitch": piece.stitch, "drop": piece.drop, "rows": [_row(piece, row, needle) for row in piece.rows]},
        "fringe": {"strands": _strands(piece), **({"hang": piece.hang} if piece.hang != "base" else {})},
        "beads": {line.key: {"piece": line.piece, "total": line.total, "to_buy": line.to_buy,
                             "grams": two_figures(line.grams)} for line in counts.lines},
        "size_mm": {"width": round(measured.width, 1), "body": round(measured.body, 1), "length": round(measured.length, 1)},
        "mass_g": {"piece": two_figures(mass(piece))},
        "thread_mm": threads,
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
    return [_strand(strand, piece.along) for strand in piece.strands]


def _row(piece: Piece, row, needle: Path) -> dict:
    taken = needle.picked_up(row_section(row))
    part = {"part": row.part} if row.part else {}
    return {"row": row.number, **part, "direction": row.direction, "stitches": len(row.stitches),
            "pickup": "".join(row.stitches[place.index - row.before].beads[place.level] for place in taken)}


def _strand(strand: Strand, hand: str) -> dict:
    """A straight strand has three keys; what else it is has keys of its own. "from" and "to" are places."""
    down, up = strand.span(hand)
    beads, hung = strand.beads, list(strand.hung)
    if down != strand.number:   # a loop is named in the order of picking up, as everywhere
        beads, hung = beads[::-1], [replace(charm, at=len(beads) - charm.at) for charm in reversed(hung)]
    found: dict = {"strand": strand.number, "beads": "".join(beads), "end": "".join(strand.end)}
    if strand.kind != STRAIGHT:
        found["kind"] = strand.kind
    if strand.kind == LOOP:
        found |= {"from": down, "to": up}
    if strand.kind == TWIST:
        found["second"] = "".join(strand.second)
    return found | _hung(hung, strand.turned)


def _hung(hung: Sequence[Twig | Charm], turned: Sequence[Charm]) -> dict:
    """Twigs and charms by the number of beads before them; among the end beads, of those."""
    lists = {
        "twigs": [{"after": thing.at, "beads": "".join(thing.beads), "end": "".join(thing.end), **_hung(thing.hung, thing.turned)}
                  for thing in hung if isinstance(thing, Twig)],
        "charms": [{"after": thing.at, "item": thing.name} for thing in hung if isinstance(thing, Charm)],
        "end_charms": [{"after": charm.at, "item": charm.name} for charm in turned]}
    return {name: found for name, found in lists.items() if found}
