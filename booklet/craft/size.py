"""Finished size in millimetres and inches, and mass."""

from __future__ import annotations

from collections import Counter
from math import cos

from msgspec import Struct

from .hanger import pitch
from .layout import layout, place_at, row_edges
from .piece import Piece
from .stitches import stitch_of
from .strand import LOOP, Charm, Strand, Twig

MM_PER_INCH = 25.4  # exact: the international inch
CHARM = 10.0        # mm: how far a charm of unknown size hangs down


class Size(Struct, frozen=True):
    """Millimetres. The hanger and the ear wire are not counted."""

    width: float    # of the body, edge to edge
    body: float     # height of the body
    fringe: float   # the longest strand, end beads and charms counted
    length: float   # body and fringe together


def inches(mm: float) -> float:
    """Millimetres to inches."""
    return mm / MM_PER_INCH


def size(piece: Piece) -> Size:
    """Width: stitches across, slant included, times bead diameter. A row is `drop` bead lengths high.

    Where beads lie along the row, length counts across and diameter upward.
    """
    if stitch_of(piece).LYING:
        return _size_lying(piece)
    kinds = {key: bead.kind for key, bead in piece.legend.items()}
    across = (max(row.last for row in piece.rows) - min(row.first for row in piece.rows)) / 2 + 1
    diameter = max(kinds[key].diameter for row in piece.rows for stitch in row.stitches for key in stitch.beads)
    bottoms, tops = row_edges(piece)
    body = max(tops.values())
    lengths = {strand.number: hanging_length(piece, strand) for strand in piece.strands}
    below = max((length - bottoms[place_at(piece, number).row.number] for number, length in lengths.items()), default=0.0)
    return Size(across * diameter, body, max(lengths.values(), default=0.0), body + max(0.0, below))


def _size_lying(piece: Piece) -> Size:
    places = layout(piece)
    across, body = max(row.last for row in piece.rows) - min(row.first for row in piece.rows), max(places.tops.values())
    fringe = max((hanging_length(piece, strand) for strand in piece.strands), default=0.0)
    return Size(places.x(across) + places.cell / 2, body, fringe, body + fringe)


def strand_length(piece: Piece, keys: tuple[str, ...]) -> float:
    """Length of beads strung one after another, mm."""
    return sum(piece.legend[key].kind.length for key in keys)


def hanging_length(piece: Piece, strand: Strand) -> float:
    """mm from the place of a strand to its lowest point, end beads and charms counted."""
    if strand.kind == LOOP:
        return _loop_depth(piece, strand)
    line, end = strand_length(piece, strand.beads), strand_length(piece, strand.end)
    reaches = [max(line, strand_length(piece, strand.second)) + end]
    for thing in strand.hung:
        above = strand_length(piece, strand.beads[:thing.at])
        reaches.append(above + _reach(piece, thing))
    reaches += [line + strand_length(piece, strand.end[:charm.at]) + _reach(piece, charm) for charm in strand.turned]
    return max(reaches)


def _reach(piece: Piece, thing: Twig | Charm) -> float:
    """How far a twig or a charm reaches below its place on the strand."""
    if isinstance(thing, Charm):
        return piece.charms.get(thing.name, CHARM)
    from .drape import TWIG_LEAN   # loaded here, as below, because most strands are straight and have no twigs

    down = cos(TWIG_LEAN)
    own = down * strand_length(piece, thing.beads + thing.end)
    return max([own, *(down * strand_length(piece, thing.beads[:charm.at]) + _reach(piece, charm) for charm in thing.hung),
                *(down * strand_length(piece, thing.beads + thing.end[:charm.at]) + _reach(piece, charm) for charm in thing.turned)])


def _loop_depth(piece: Piece, strand: Strand) -> float:
    """The lower edge of a loop's lowest bead, and of its charms."""
    bottoms, kinds = row_edges(piece)[0], [piece.legend[key].kind for key in strand.beads]
    ends = [place_at(piece, number) for number in (strand.number, strand.number + strand.to)]
    start, stop = ((place.at / 2 * pitch(piece), -bottoms[place.row.number]) for place in ends)
    from .drape import loop

    beads = loop(start, stop, [kind.length for kind in kinds])
    lows = [bead.y + kind.diameter / 2 for bead, kind in zip(beads, kinds)]
    lows += [beads[min(charm.at, len(beads) - 1)].y + piece.charms.get(charm.name, CHARM) for charm in strand.hung]
    return max(lows) - start[1]


def mass(piece: Piece) -> float:
    """Grams of beads in one piece; findings and thread are not counted."""
    body = (key for row in piece.rows for stitch in row.stitches for key in stitch.beads)
    fringe = (key for strand in piece.strands for key in strand.all)
    loops = (key for hanger in piece.hangers for key in hanger.beads)
    return sum(count * piece.legend[key].kind.mass for key, count in Counter((*body, *fringe, *loops)).items()) / 1000
