"""A thread guard spans more than the top row is wide.

The legs of the guard stand in the top row. Where the row is narrower than the guard, a leg stands beside it, the thread is
drawn outward and the ear wire pulls the piece askew.

Bad:

    hanger: {kind: guard, span: 5 mm}

Good:

    hanger: {kind: guard, span: 3 mm}

Good:

    hanger: {kind: loop, beads: 7W}
"""

from __future__ import annotations

from collections.abc import Iterator

from ...craft.hanger import top_row, top_width
from ...findings import Finding, Severity
from ..subject import Subject

ID, SEVERITY, NEEDS = "guard-wider-than-top-row", Severity.WARNING, "piece"


def check(subject: Subject) -> Iterator[Finding]:
    """Every guard that cannot sit, with its span and the width of the row."""
    pattern, piece = subject.pattern, subject.piece
    for written in pattern.hangers:
        wide = top_width(piece, written.hanger.at)
        if written.hanger.kind == "guard" and written.hanger.span > wide + 1e-9:
            row = top_row(piece, written.hanger.at)
            stitches = "1 stitch" if len(row.stitches) == 1 else f"{len(row.stitches)} stitches"
            yield Finding(pattern.mark(*written.path, "span"), SEVERITY, ID,
                          f"the thread guard spans {written.hanger.span:g} mm, but row {row.name} at the top has {stitches} and is {wide:.1f} mm wide",
                          "end the body with a wider row, or hang it by a loop or a ring")
