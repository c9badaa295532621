"""Placeholders in prose, filled: names in double braces, such as {{ base.stitches }}, that stand for a value of the pattern.

Names are looked up in a table (their list is lint.placeholders.KNOWN); no expression is ever evaluated.
"""

from __future__ import annotations

from collections.abc import Mapping
from html import escape

from ..craft.language import _, decimal
from ..craft.plan import thread_said
from ..craft.size import mass, size
from ..craft.tally import Tally
from ..lint.placeholders import PLACEHOLDER
from ..source.pattern import Pattern
from .numbers import count, grams


def filled(text: str, values: Mapping[str, str]) -> str:
    """The text with its placeholders filled. Raises KeyError for a name without a value."""
    return PLACEHOLDER.sub(lambda match: escape(values[match[1]]), text)


def values_of(pattern: Pattern, counts: Tally) -> dict[str, str]:
    """The value of every placeholder in KNOWN for this pattern."""
    piece, plan = pattern.piece, pattern.thread
    measured = size(piece)
    values = {
        "title": pattern.title, "version": pattern.version, "makes": _(pattern.makes), "pieces": str(pattern.pieces),
        "rows": str(len(piece.drawn)), "strands": str(len(piece.strands)), "drop": str(piece.drop),
        "base.stitches": str(len(piece.base.stitches)), "beads.piece": count(counts.beads), "beads.total": count(counts.beads * counts.pieces),
        "mass.piece": grams(mass(piece)), "thread.length": decimal(plan.length / 1000, 2), "thread.body": thread_said(plan.body), "thread.fringe": thread_said(plan.fringe),
        **{f"size.{name}": decimal(getattr(measured, name), 1) for name in ("width", "body", "fringe", "length")}}
    for line in counts.lines:
        values |= {f"beads.{line.key}.{field}": value for field, value in (
            ("name", line.bead.name), ("piece", count(line.piece)), ("total", count(line.total)), ("to_buy", count(line.to_buy)),
            ("grams", grams(line.grams)), ("packs", str(line.packs)))}
    return values
