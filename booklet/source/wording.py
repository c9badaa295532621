"""How messages say things: values in one printable line, lists of choices, the nearest known name."""

from __future__ import annotations

import re
from collections.abc import Iterable


def shown(text: str, longest: int = 40) -> str:
    """The text in one printable line: control characters escaped, long texts cut."""
    cut = text if len(text) <= longest else text[:longest - 1] + "…"
    return "".join(c if c.isprintable() else c.encode("unicode_escape").decode("ascii") for c in cut)


def quoted(text: str) -> str:
    """The text as a message quotes it."""
    return f"'{shown(text)}'"


def either(names: Iterable[str]) -> str:
    """"a, b or c"."""
    *first, last = names
    return f"{', '.join(first)} or {last}" if first else last


def nearest(name: str, known: Iterable[str]) -> str:
    """The known name that looks most like this one; empty if none does."""
    from difflib import get_close_matches  # imported here, because good files never need it

    folded = {other.casefold(): other for other in known}
    near = get_close_matches(name[:80].casefold(), folded, 1, 0.6)
    return folded[near[0]] if near else ""


def did_you_mean(name: str, known: Iterable[str]) -> str:
    """A hint with the nearest known name; empty if none is near."""
    near = nearest(name, known)
    return f"did you mean {near}?" if near else ""


def source_lines(text: str) -> list[str]:
    """Lines without their ends."""
    return re.split("\r\n|\r|\n", text)
