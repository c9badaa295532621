"""Strands, read back from their printed lines."""

from __future__ import annotations

import re

from .items import CannotRead, items

_STRAND = re.compile(r"Strand (\d+), (\d+) beads?: (.*)")


def read_strand(line: str) -> tuple[int, tuple[str, ...], tuple[str, ...]]:
    match = _STRAND.fullmatch(line)
    if not match:
        raise CannotRead(f"cannot read this line back: {line!r}")
    body, mark, end = match[3].rpartition("end ")
    body = body.rstrip("; ") if mark else match[3]
    beads = tuple(key for item in items(body, line) for key in item) if body else ()
    ends = tuple(key for item in items(end, line) for key in item) if mark else ()
    if len(beads) + len(ends) != int(match[2]):
        raise CannotRead(f"strand {match[1]} says {match[2]} beads but names {len(beads) + len(ends)}: {line!r}")
    return int(match[1]), beads, ends
