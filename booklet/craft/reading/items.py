"""Lists of beads and sets as printed, to single items."""

from __future__ import annotations

import re

_TOKEN = re.compile(r"\s*(?:(\d+) × \[|(\d*)\(([A-Za-z0-9](?: [A-Za-z0-9])*)\)|(\d+)([A-Za-z0-9])(?![A-Za-z0-9])|([\],]))")


class CannotRead(ValueError):
    """A printed line that is not in the form in which lines are written."""


def items(text: str, line: str) -> list[tuple[str, ...]]:
    """Expand "3W, 2 × [1B, 1W], 2(W B)" to single items."""
    out: list[tuple[str, ...]] = []
    group: list[tuple[str, ...]] | None = None
    times, at = 1, 0
    while at < len(text):
        token = _TOKEN.match(text, at)
        if not token:
            raise CannotRead(f"cannot read {text[at:]!r} in this line: {line!r}")
        at = token.end()
        target = out if group is None else group
        if token[1]:
            group, times = [], int(token[1])
        elif token[3]:
            target += [tuple(token[3].split())] * int(token[2] or 1)
        elif token[4]:
            target += [(token[5],)] * int(token[4])
        elif token[6] == "]":
            out += (group or []) * times
            group = None
    return out
