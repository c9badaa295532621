"""Whether every chart can be read at the size that the page allows."""

from __future__ import annotations

from collections.abc import Iterator

from ..findings import Finding, Severity
from ..source.pattern import Pattern
from .context import chart_scales
from .geometry import Room


def page_findings(pattern: Pattern, room: Room) -> Iterator[Finding]:
    """A warning for a chart whose beads come out too narrow for their letters, an error for one that does not fit at all."""
    scales = chart_scales(pattern.piece, room)
    for name, path, bead in zip(("body", "fringe"), (("body", "chart"), ("fringe",)), scales):
        if bead < room.least and (name == "body" or pattern.piece.strands):
            severity = Severity.WARNING if bead else Severity.ERROR
            yield Finding(pattern.mark(*path), severity, "chart-too-large-for-page",
                          f"the {name} chart fits this page with beads {bead:.1f} mm wide; letters need {room.least:g} mm",
                          "choose a larger page in book.yaml, or make the piece smaller")
