"""Run text to beads: "3(2W 1B) 4W > 1D". Counts stand before keys, a bare key counts one, > starts the end beads."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from ..findings import Finding, Mark, Severity

MOST_BEADS, MOST_TIMES, DEEPEST = 2000, 1000, 20


@dataclass(frozen=True)
class PlacedKey:
    """A bead key and where it was written."""

    key: str
    mark: Mark


@dataclass(frozen=True)
class ReadRuns:
    """Beads in order, the end beads, whether ">" was written, and what was wrong."""

    beads: tuple[PlacedKey, ...]
    end: tuple[PlacedKey, ...]
    has_end: bool
    findings: tuple[Finding, ...]


def read_runs(text: str, mark_at: Callable[[int], Mark]) -> ReadRuns:
    """Expand a run text. `mark_at` gives the place of a character of it."""
    stack: list[tuple[list[PlacedKey], int, int]] = [([], 1, 0)]   # open lists, how often each repeats, where it opened
    beads: list[PlacedKey] | None = None
    at = 0

    def wrong(place: int, message: str, hint: str = "", rule: str = "bad-run-text") -> ReadRuns:
        return ReadRuns((), (), False, (Finding(mark_at(min(place, max(len(text) - 1, 0))), Severity.ERROR, rule, message, hint),))

    while at < len(text):
        sign, start = text[at], at
        if sign in " \t\n,":
            if sign == ",":
                return wrong(at, "a comma may not stand in run text", "part runs by spaces")
            at += 1
            continue
        digits = at
        while digits < len(text) and text[digits] in "0123456789":
            digits += 1
        following = text[digits] if digits < len(text) else ""
        is_bare = digits == at or not (following.isascii() and (following.isalnum() or following == "("))
        if digits > at and is_bare and digits - at == 1 and following in ("", " ", ")", "\n"):
            times, key_at = 1, at       # a digit alone is a bead key
        elif digits > at and is_bare:
            if digits - at == 2 or (digits - at > 2):    # "37": 3 beads of key 7
                times, key_at = int(text[at:digits - 1]), digits - 1
            else:
                return wrong(digits, f"{text[at:digits]!r} counts nothing", "a count stands right before a key or a parenthesis")
        else:
            times, key_at = (int(text[at:digits]) if digits > at else 1), digits
        if not 1 <= times <= MOST_TIMES:
            return wrong(start, f"{times} times is outside 1 to {MOST_TIMES}", rule="too-large")
        sign = text[key_at]
        if sign == "(":
            stack.append(([], times, start))
            if len(stack) > DEEPEST:
                return wrong(start, f"parentheses go deeper than {DEEPEST - 1} levels", rule="too-deep")
        elif sign == ")" and key_at == at:
            if len(stack) == 1:
                return wrong(at, "this parenthesis was never opened")
            inner, times, opened = stack.pop()
            if not inner:
                return wrong(opened, "these parentheses are empty")
            if len(stack[-1][0]) + len(inner) * times > MOST_BEADS:
                return wrong(opened, f"this makes more than {MOST_BEADS:,} beads", rule="too-large")
            stack[-1][0].extend(inner * times)
        elif sign == ">" and key_at == at:
            if len(stack) > 1 or beads is not None:
                return wrong(at, "> may stand once, outside parentheses")
            beads, stack = stack[0][0], [([], 1, 0)]
        elif sign.isascii() and sign.isalnum():
            if len(stack[-1][0]) + times > MOST_BEADS:
                return wrong(start, f"this makes more than {MOST_BEADS:,} beads", rule="too-large")
            stack[-1][0].extend([PlacedKey(sign, mark_at(key_at))] * times)
        else:
            return wrong(key_at, f"{sign!r} may not stand here", "run text holds counts, bead keys, parentheses and one >")
        at = key_at + 1
    if len(stack) > 1:
        return wrong(stack[-1][2], "this parenthesis is never closed")
    last = tuple(stack[0][0])
    if beads is not None and not last:
        return wrong(len(text) - 1, "no end bead stands after >")
    return ReadRuns(last if beads is None else tuple(beads), () if beads is None else last, beads is not None, ())
