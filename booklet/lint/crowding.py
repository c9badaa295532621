"""Beads that take too many passes, in the words of findings."""

from __future__ import annotations

from collections.abc import Iterable

from ..craft.passes import Crowded
from ..findings import Mark
from ..source.pattern import Pattern


def beads_said(crowded: Crowded) -> str:
    """Which beads: "stitches 2 to 8 of row 1 (W, B; cylinder 15/0, hole 0.6 mm)"."""
    first = crowded.beads[0].place
    places = sorted({bead.place[:3] for bead in crowded.beads})
    if first.part == "row":
        where = f"{_numbers('stitch', 'stitches', [index + 1 for _, _, index in places])} of row {first.line}"
    elif first.part == "strand":
        where = _numbers("strand", "strands", [line for _, line, _ in places])
    else:
        where = "the loop of the hanger"
    keys = ", ".join(dict.fromkeys(bead.key for bead in crowded.beads))
    return f"{where} ({keys}; {crowded.kind.name}, hole {crowded.kind.hole:g} mm)"


def threads_said(pattern: Pattern, crowded: Crowded) -> str:
    """How often, and with what: "5 passes of thread (3 of braided 6 lb, 2 of nylon D)"."""
    plan, threads = pattern.thread, crowded.beads[0].threads
    counts: dict[str, int] = {}
    for thread in threads:
        name = next(name for name in (plan.body, plan.fringe) if plan.kinds[name].diameter == thread)
        counts[name] = counts.get(name, 0) + 1
    each = ", ".join(f"{count} of {name}, {plan.kinds[name].diameter:g} mm" for name, count in counts.items())
    return f"{len(threads)} passes of thread ({each})"


def place_of(pattern: Pattern, crowded: Crowded) -> Mark:
    """Where the first of the beads is written."""
    place = crowded.beads[0].place
    return pattern.mark("hanger") if place.part == "hanger" else pattern.mark(place.part, place.line)


def _numbers(one: str, many: str, numbers: Iterable[int]) -> str:
    """"stitch 4", "stitches 2 to 8", "strands 1, 3 and 4"."""
    found = sorted(set(numbers))
    if len(found) == 1:
        return f"{one} {found[0]}"
    if len(found) > 2 and found == list(range(found[0], found[-1] + 1)):
        return f"{many} {found[0]} to {found[-1]}"
    return f"{many} {', '.join(map(str, found[:-1]))} and {found[-1]}"
