"""Placeholders in prose: names in double braces, such as {{ base.stitches }}, that are filled from the pattern.

Nothing but a name of these tables can stand between the braces; no expression is ever evaluated.
"""

from __future__ import annotations

import re
from collections.abc import Iterable

PLACEHOLDER = re.compile(r"\{\{\s*(.*?)\s*\}\}", re.DOTALL)
BEAD_FIELDS = ("name", "piece", "total", "to_buy", "grams", "packs")

# What a placeholder in a pattern may name, and what it stands for. KEY is a bead key.
KNOWN = {
    "title": "the pattern's title",
    "version": "its version",
    "makes": "pair or single",
    "pieces": "pieces that it makes",
    "rows": "rows of the body",
    "strands": "strands of the fringe",
    "drop": "beads in a stitch",
    "base.stitches": "stitches of row 1",
    "beads.piece": "beads in one piece",
    "beads.total": "beads in all pieces",
    **{f"beads.KEY.{field}": f"{field.replace('_', ' ')} of one bead" for field in BEAD_FIELDS},
    "size.width": "width in mm", "size.body": "height of the body in mm",
    "size.fringe": "longest strand in mm", "size.length": "body and fringe in mm",
    "mass.piece": "grams of beads in one piece",
    "thread.length": "working length in m", "thread.body": "thread of the body", "thread.fringe": "thread of the fringe",
}

# What a placeholder in a front or back page may name.
ON_PAGES = {"title": "the book's title", "author": "its author", "patterns": "how many patterns it has"}


def names(keys: Iterable[str]) -> tuple[str, ...]:
    """Every placeholder that a pattern with these bead keys may use."""
    plain = [name for name in KNOWN if ".KEY." not in name]
    return (*plain, *(f"beads.{key}.{field}" for key in keys for field in BEAD_FIELDS))
