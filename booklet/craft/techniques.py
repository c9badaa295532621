"""What a piece asks of its maker: the techniques it uses, and the level at which each is usually placed.

The usual levels are common practice, no source; a book may place any technique differently.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping

from msgspec import Struct

from .language import _, message
from .piece import Piece
from .stitches.brick_edges import edges
from .strand import LOOP, TWIST
from .tally import tally

LEVELS = BEGINNER, INTERMEDIATE, ADVANCED = message("beginner"), message("intermediate"), message("advanced")   # easiest first
MANY_BEADS = 800   # in one piece: more than most earrings have, and more evenings than a first piece should take


class Technique(Struct, frozen=True):
    """One thing that a piece can ask of its maker."""

    id: str                          # what a book calls it under levels:
    level: str                       # where it is usually placed, one of LEVELS
    words: str                       # as it is printed; {drop} is beads in a stitch
    used: Callable[[Piece], bool]
    listed: bool = True              # whether it stands among the techniques of a pattern's page

    def said(self, piece: Piece) -> str:
        """The technique as this piece uses it."""
        return _(self.words, drop=piece.drop)


def _increases(piece: Piece) -> bool:
    hung = ((row, piece.under(row)) for row in piece.rows[1:])
    return piece.stitch != "peyote" and any(row.first < under.first or row.last > under.last for row, under in hung)


def _edge_turn(piece: Piece) -> bool:
    if piece.stitch != "peyote":
        return False
    from .stitches.peyote import turns_at_edge   # loaded here, because other stitches go without it

    return any(turns_at_edge(row, piece.under(row)) for row in piece.rows[2:])


def _steps(piece: Piece) -> bool:
    """Rows that begin or end further in or out than half a stitch."""
    places = (edges(row, piece.under(row)) for row in piece.rows[1:]) if piece.stitch == "brick" else ()
    return any(place.travel or place.short or place.ladder_start or place.ladder_end for place in places)


def _mixed_sizes(piece: Piece) -> bool:
    """Kinds side by side in the body, or one after the other in a strand; the end beads of a strand are often small and change nothing."""
    body = {piece.legend[key].kind.name for row in piece.rows for stitch in row.stitches for key in stitch.beads}
    strands = ({piece.legend[key].kind.name for key in strand.beads + strand.second} for strand in piece.strands)
    return len(body) > 1 or any(len(kinds) > 1 for kinds in strands)


_ALL = (
    Technique("ladder-stitch", BEGINNER, message("ladder stitch"), lambda piece: piece.stitch == "brick"),
    Technique("brick-stitch", BEGINNER, message("brick stitch"), lambda piece: piece.stitch == "brick"),
    Technique("flat-peyote", BEGINNER, message("flat peyote"), lambda piece: piece.stitch == "peyote"),
    Technique("edge-turn", INTERMEDIATE, message("edge turn of an odd count"), _edge_turn),
    Technique("square-stitch", BEGINNER, message("square stitch"), lambda piece: piece.stitch == "square"),
    Technique("loom-work", BEGINNER, message("loom work"), lambda piece: piece.stitch == "loom"),
    Technique("2-drop", INTERMEDIATE, message("{drop}-drop"), lambda piece: piece.drop > 1),
    Technique("increases", INTERMEDIATE, message("increases"), _increases),
    Technique("steps", INTERMEDIATE, message("steps at the edges"), _steps),
    Technique("parts", ADVANCED, message("rows in parts"), lambda piece: any(row.part for row in piece.rows)),
    Technique("lower-rows", INTERMEDIATE, message("rows below the base row"), lambda piece: bool(piece.lower)),
    Technique("fringe", BEGINNER, message("fringe"), lambda piece: bool(piece.strands)),
    Technique("bridge-fringe", BEGINNER, message("fringe on thread bridges"), lambda piece: bool(piece.strands) and piece.hang == "bridges"),
    Technique("edge-fringe", INTERMEDIATE, message("fringe along the lower edge"), lambda piece: bool(piece.strands) and piece.hang == "edge"),
    Technique("looped-fringe", INTERMEDIATE, message("looped fringe"), lambda piece: any(strand.kind == LOOP for strand in piece.strands)),
    Technique("twisted-fringe", ADVANCED, message("twisted fringe"), lambda piece: any(strand.kind == TWIST for strand in piece.strands)),
    Technique("branched-fringe", ADVANCED, message("branched fringe"), lambda piece: any(strand.twigs for strand in piece.strands)),
    Technique("charms", BEGINNER, message("charms or rings in the fringe"), lambda piece: any(strand.charms for strand in piece.strands)),
    Technique("mixed-sizes", INTERMEDIATE, message("beads of mixed sizes"), _mixed_sizes),
    Technique("bead-loop", BEGINNER, message("bead loop"), lambda piece: any(hanger.kind == "loop" for hanger in piece.hangers)),
    Technique("many-beads", INTERMEDIATE, f"more than {MANY_BEADS} beads a piece", lambda piece: tally(piece).beads > MANY_BEADS, listed=False),
)
TECHNIQUES: Mapping[str, Technique] = {technique.id: technique for technique in _ALL}
USUAL_LEVELS: Mapping[str, str] = {technique.id: technique.level for technique in _ALL}


def techniques(piece: Piece) -> tuple[Technique, ...]:
    """Everything that the piece asks of its maker, in the order in which she meets it."""
    return tuple(technique for technique in _ALL if technique.used(piece))


def needed_level(piece: Piece, levels: Mapping[str, str] = USUAL_LEVELS) -> str:
    """The lowest level that a piece can have where `levels` places the techniques."""
    return max((levels[technique.id] for technique in techniques(piece)), key=LEVELS.index)


def techniques_said(piece: Piece) -> str:
    """The techniques of a piece as its page lists them: "ladder stitch, brick stitch, fringe"."""
    return ", ".join(technique.said(piece) for technique in techniques(piece) if technique.listed)
