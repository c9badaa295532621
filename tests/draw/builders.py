"""Small pieces for the tests of pictures, built straight from craft's structures."""

from __future__ import annotations

from booklet.craft.beads import Bead, BeadKind
from booklet.craft.piece import RIGHT, Hanger, Piece, Stitch, Strand, piece_rows

CYLINDER = BeadKind("cylinder 11/0", "cylinder", 1.6, 1.3, 0.8)
ROUND = BeadKind("round 11/0", "round", 2.2, 1.49, 0.8)
BUGLE = BeadKind("bugle 6 mm", "bugle", 1.9, 6.0, 0.8)
DROP = BeadKind("drop 3.4", "drop", 3.4, 3.4, 0.9)
BICONE = BeadKind("bicone 3", "bicone", 3.0, 3.0, 0.8)

LEGEND = {bead.key: bead for bead in (
    Bead("W", "chalk white", "#f4f1ea", "matte", CYLINDER),
    Bead("B", "storm blue", "#3d5a80", "lustre", CYLINDER),
    Bead("S", "slate", "#2b2f36", "opaque", CYLINDER),
    Bead("R", "rowan red", "#b3412e", "transparent", CYLINDER),
    Bead("G", "old gold", "#b08d3e", "metallic", CYLINDER),
    Bead("M", "mist", "#9fb4c0", "lustre", CYLINDER),
    Bead("o", "round sea", "#4f8a8b", "lustre", ROUND),
    Bead("1", "long ice", "#cfe0e6", "transparent", BUGLE),
    Bead("D", "silver drop", "#b8bcc4", "metallic", DROP),
    Bead("c", "cut amber", "#c98a2b", "transparent", BICONE),
)}


def piece(chart: str, *, drop: int = 1, base: int = 0, hand: str = RIGHT, strands: tuple[str, ...] = (),
          hanger: Hanger = Hanger(), legend=None) -> Piece:
    """A piece from chart lines, top row first, a bead every second column; `base` is the row's index from the bottom.

    Strands read "WWWB>BBB": beads from the top down, then the end beads.
    """
    lines = [line for line in chart.splitlines() if line.strip()]
    sets = [lines[i:i + drop] for i in range(0, len(lines), drop)]
    drawn = [[Stitch(at, tuple(line[at] for line in reversed(rows)))
              for at in range(max(map(len, rows))) if rows[0][at:at + 1].strip()] for rows in reversed(sets)]
    fringe = tuple(Strand(number, tuple(text.partition(">")[0]), tuple(text.partition(">")[2]))
                   for number, text in enumerate(strands, 1))
    used = dict(LEGEND if legend is None else legend)
    keys = set("".join(lines)) | set("".join(strands)) | set(hanger.beads)
    return Piece({key: bead for key, bead in used.items() if key in keys}, drop, hand,
                 piece_rows(drawn, base, hand), fringe, (hanger,) if hanger.kind != "none" else ())


def triangle(base: int = 11, keys: str = "WBWGWR", **more) -> Piece:
    """Rows from `base` stitches up to one, in bands of the keys given."""
    rows = []
    for count in range(1, base + 1):
        inner = [keys[min(i, count - 1 - i) % len(keys)] for i in range(count)]
        rows.append(" " * (base - count) + " ".join(inner))
    return piece("\n".join(rows), **more)


def diamond(middle: int = 7, drop: int = 1, keys: str = "BWMGR", **more) -> Piece:
    """Rows from one stitch to `middle` and back, the widest being the base row."""
    counts = [*range(1, middle), *range(middle, 0, -1)]
    lines = []
    for row, count in enumerate(counts):
        for level in range(drop):
            inner = [keys[(min(i, count - 1 - i) + row + level) % len(keys)] for i in range(count)]
            lines.append(" " * (middle - count) + " ".join(inner))
    return piece("\n".join(lines), drop=drop, base=middle - 1, **more)


def v_fringe(count: int, short: int = 10, step: int = 2) -> tuple[str, ...]:
    """Strands that are longest in the middle, each with three end beads."""
    lengths = [short + step * min(i, count - 1 - i) for i in range(count)]
    return tuple("W" * (n - 6) + "BBGGRR" + ">BGB" for n in lengths)
