"""The plan of a pattern to start from: a plain shape in three colours.

The colours run like lines of equal distance from the edge of the piece, through the body and on along the hem of the fringe.
"""

from __future__ import annotations

from msgspec import Struct

from ..craft.shapes import LEAST_STRAND, ImpossibleShape, Outline, outline, strand_lengths

DARK, MIDDLE, LIGHT = KEYS = "DML"
FROM_EDGE = DARK + MIDDLE + MIDDLE + LIGHT + MIDDLE + MIDDLE   # of the body, from the edge inwards; the last three again and again
FROM_HEM = DARK * 4 + LIGHT * 2                                 # of a strand, up from its end beads; the rest is the middle colour
END = LIGHT * 3
LOOP = DARK * 2 + LIGHT * 3 + DARK * 2
FRINGE_ROOM = 30                                                # beads of the longest strand, if nothing else is asked for


class Start(Struct, frozen=True):
    """What a new pattern is made of."""

    slug: str
    shape: str
    drop: int
    fringe: str                    # a name in craft.shapes.FRINGES
    outline: Outline
    body: tuple[str, ...]          # keys of each row, bottom up, one for a stitch
    strands: tuple[str, ...]       # keys of each strand, left to right, without the end beads

    @property
    def base(self) -> int:
        """Stitches of the base row."""
        return len(self.body[self.outline.base])

    @property
    def title(self) -> str:
        return " ".join(word.capitalize() for word in self.slug.split("-"))

    @property
    def keys(self) -> tuple[str, ...]:
        """The bead keys that the piece uses."""
        used = set("".join((*self.body, *self.strands, LOOP)))
        return tuple(key for key in KEYS if key in used)

    @property
    def mirrored(self) -> bool:
        """Whether the fringe is its own mirror image."""
        return self.strands == self.strands[::-1]

    @property
    def beads(self) -> int:
        """Beads of one piece."""
        return self.drop * sum(map(len, self.body)) + sum(len(strand) + len(END) for strand in self.strands) + len(LOOP)


def start(slug: str, shape: str, base: int, rows: int | None, drop: int, fringe: str, longest: int | None) -> Start:
    """Plan a new pattern. `longest` counts the beads of the longest strand, end beads included. Raises ImpossibleShape."""
    drawn = outline(shape, base, rows)
    if fringe == "none":
        if longest is not None:
            raise ImpossibleShape("there is no fringe, so it has no longest strand", "leave out --longest, or take --fringe straight")
        return Start(slug, shape, drop, fringe, drawn, _body(drawn, hem=True), ())
    if drawn.base:
        raise ImpossibleShape(f"the strands would hang from the widest row of the {shape} and hide the rows below it",
                              "take --fringe none, or --shape hexagon")
    lengths = strand_lengths(fringe, base, max(FRINGE_ROOM, base + LEAST_STRAND) if longest is None else longest)
    return Start(slug, shape, drop, fringe, drawn, _body(drawn, hem=False), tuple(map(_strand, lengths)))


def _body(drawn: Outline, hem: bool) -> tuple[str, ...]:
    """Keys by the distance from the edge. `hem`: whether the bottom row is an edge too."""
    height = len(drawn.rows)
    distances = [[min(index, count - 1 - index, height - 1 - row, row if hem else index) for index in range(count)]
                 for row, (_, count) in enumerate(drawn.rows)]
    deepest = max(map(max, distances))
    return tuple("".join(_from_edge(distance, deepest) for distance in row) for row in distances)


def _from_edge(distance: int, deepest: int) -> str:
    """A small piece that does not reach the first fine line has a light heart."""
    if distance == deepest and 0 < deepest < FROM_EDGE.index(LIGHT):
        return LIGHT
    first = len(FROM_EDGE) - 3
    return FROM_EDGE[distance if distance < first else first + (distance - first) % 3]


def _strand(length: int) -> str:
    inner = length - len(END)
    return (FROM_HEM[:inner] + MIDDLE * (inner - len(FROM_HEM)))[::-1]
