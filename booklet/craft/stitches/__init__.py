"""The stitches of a body, one module each.

A stitch module has
  NAME          what the trade calls it;
  LYING         whether beads lie with their holes along the row (else they stand with their holes across it), so
                that the beads of a set lie side by side;
  INTERLOCKED   whether a row lies half a bead deep in the row under it;
  DROPS         how many beads a stitch can hold;
  PARTED        whether a row may stand in several parts;
  directed      rows with the way in which each is worked;
  faults        every reason why the body cannot be worked;
  body          what the needle does from the anchor to the end of the last row;
  warps         threads that are stretched on a loom before the work begins;
  told_together the rows that share a line of words, and `row_count` and `row_text`, which say them;
and where LYING also
  to_strand, from_strand   the way of the needle through the base row to a strand and on from it;
  to_hanger                the way to a hanger.
A piece names its stitch; everything else asks here. A module is loaded when a piece asks for it.
"""

from __future__ import annotations

from functools import lru_cache
from importlib import import_module
from types import ModuleType

from ..piece import Fault, Piece, Row, Stitch, piece_rows

STITCHES = ("brick", "peyote", "square", "loom")


@lru_cache(maxsize=None)
def stitch_named(name: str) -> ModuleType:
    """The module of a stitch."""
    return import_module(f".{name}", __name__)


def stitch_of(piece: Piece) -> ModuleType:
    """The module of the stitch that a piece is worked in."""
    return stitch_named(piece.stitch)


def faults(piece: Piece) -> tuple[Fault, ...]:
    """Every reason why the body cannot be worked; empty if it can."""
    return stitch_of(piece).faults(piece)


def worked_rows(stitch: str, drawn: list[list[Stitch]], base: int, hand: str) -> tuple[Row, ...]:
    """Rows of a chart, numbered and directed as this stitch is worked; the arguments are those of `piece_rows`."""
    module = stitch_named(stitch)
    return module.directed(piece_rows(drawn, base, hand, module.PARTED))
