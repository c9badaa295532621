"""There is not one strand, or one ~, for each place of the fringe.

The needle goes to one place after the other and hangs a strand at each. With one too few or too many, the maker is
left with a bare place or with a strand that has none. Where the fringe hangs (hang:) decides how many places there
are: one under each stitch of the base row, if nothing else is written.

Bad:

    body:
      chart: |
        2 |  B B
        1 | W B W
    fringe:
      end: 3B
      strands: [12W 2B, 14W 2B]

Good:

    body:
      chart: |
        2 |  B B
        1 | W B W
    fringe:
      end: 3B
      strands: [12W 2B, 14W 2B, 12W 2B]

Good:

    body:
      chart: |
        2 |  B B
        1 | W B W
    fringe:
      hang: bridges
      end: 3B
      strands: [12W 2B, ~]
"""

from __future__ import annotations

from collections.abc import Iterator

from ...findings import Finding, Severity
from ..subject import Subject

ID, SEVERITY, NEEDS = "strand-count", Severity.ERROR, "piece"


_PLACES = {"lowest": "lowest row", "edge": "lower edge", "bridges": "lowest row"}


def check(subject: Subject) -> Iterator[Finding]:
    """The two numbers, where they differ."""
    pattern, entries, places = subject.pattern, subject.pattern.fringe_places, subject.places
    if entries in (0, places):
        return
    written = len({strand.mark for strand in pattern.written_strands})
    strands, empty = len(pattern.written_strands), entries - len(pattern.written_strands)
    have = "1 strand" if strands == 1 else f"{strands} strands"
    have += f" and {empty} empty place{'' if empty == 1 else 's'}" if empty else ""
    mirrored = f" ({written} written and mirrored)" if written < strands else ""
    field = "strands" if ("fringe", "strands") in pattern.marks else "chart"
    yield Finding(pattern.mark("fringe", field), SEVERITY, ID, f"the fringe has {have}{mirrored}, but {_offered(pattern.hang, places)}")


def _offered(hang: str, places: int) -> str:
    if hang == "base":
        return f"the base row has {'1 stitch' if places == 1 else f'{places} stitches'}"
    what = "thread bridge" if hang == "bridges" else "place"
    return f"the {_PLACES[hang]} has {'1' if places == 1 else places} {what}{'' if places == 1 else 's'}"
