"""Rows of brick stitch, read back from their printed lines.

Places count half stitches. A row is placed from the stitch whose top the thread comes out of: the edge stitch of the row
under it, or the one that the words lead to.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from types import ModuleType

from .items import CannotRead, items
from .told import ReadRow

_SETS = ("first", "before", "more", "after")


def read_rows(lines: Sequence[str], grammar: ModuleType) -> tuple[ReadRow, ...]:
    """Work the lines in their order."""
    rows: list[ReadRow] = []
    for line in lines:
        rows.append(_Reading(line, rows, grammar).row())
    return tuple(rows)


class _Reading:
    """One line, and the rows worked before it."""

    def __init__(self, line: str, done: list[ReadRow], grammar: ModuleType) -> None:
        self.line, self.done = line, done
        match = re.fullmatch(grammar.BRICK_ROW, line)
        if not match:
            raise CannotRead(f"cannot read this line back: {line!r}")
        self.number, self.part, self.right, self.below = int(match[1]), match[2], match[3] == "→", bool(match[6])
        self.name, text = match[1] + match[2], match[7]
        self.travel = self.source = None
        self.told = re.fullmatch(grammar.BRICK_TEXT, text)
        if not self.told:   # few rows begin elsewhere than at the edge
            self.travel, self.source = re.match(grammar.BRICK_TRAVEL, text), re.match(grammar.BRICK_FROM, text)
            lead = self.travel or self.source
            self.told = lead and re.fullmatch(grammar.BRICK_TEXT, text[lead.end():])
        if not self.told:
            raise CannotRead(f"cannot read this line back: {line!r}")
        self.how, self.end = grammar.STARTS[self.told["how"]], grammar.ENDS.get(self.told["end"])
        self.sets = {name: items(self.told[name], line) if self.told[name] else [] for name in _SETS}
        self._count(int(match[4]), match[5])

    def _count(self, count: int, unit: str) -> None:
        sets = [beads for name in _SETS for beads in self.sets[name]]
        if len(sets) != count or len({len(beads) for beads in sets}) != 1:
            raise CannotRead(f"row {self.name} says {count} {unit} but names {len(sets)}: {self.line!r}")

    def row(self) -> ReadRow:
        under = self._under()
        if under is None and self.how in ("in", "out"):
            raise CannotRead(f"the first row is not a ladder: {self.line!r}")
        placed = self._ladder() if under is None else self._hang(under)
        return ReadRow(self.number, self.below, self.right, tuple(sorted(placed)), self.part)

    def _under(self) -> ReadRow | None:
        """The row that this one hangs on: the one named, else the last one, else the base row for the first one below it."""
        if not self.done:
            return None
        last = self.done[-1]
        if self.source:
            named = [row for row in self.done if (row.number, row.part) == (int(self.source[1]), self.source[2])]
            if not named:
                raise CannotRead(f"row {self.name} begins on a row that is not there: {self.line!r}")
            last = named[0]
        elif last.below != self.below:
            last = self.done[0]
        if self.right == last.runs_right and last.below == self.below:
            raise CannotRead(f"row {self.name} runs the same way as the row under it: {self.line!r}")
        return last

    def _ladder(self) -> list[tuple[int, tuple[str, ...]]]:
        """The last stitch is passed upward, the one before it downward, and so on back to the first."""
        sets = self.sets["first"] + self.sets["more"]
        self._check(not any(self.told[name] for name in ("before", "after", "end", "short")), "a ladder has no start and end of a row")
        count, placed = len(sets), []
        for k, beads in enumerate(sets):
            low_first = (count - 1 - k) % 2 == 0
            place = 2 * k if self.right else 2 * (count - 1 - k)
            placed.append((place, beads if low_first else beads[::-1]))
        return placed

    def _hang(self, under: ReadRow) -> list[tuple[int, tuple[str, ...]]]:
        """Hung stitches: only the first of a pair is taken low bead first. Ladder stitches: each the other way round than its neighbour."""
        how, step = self.how, 2 if self.right else -2
        exit_at = self._exit(under, step)
        start = exit_at + (-step // 2 if how.endswith("out") else step // 2)
        if how.startswith("one"):
            hung = [(start, self.sets["first"][0][::-1])]
            self._check(len(self.sets["first"]) == 1 and not self.sets["more"] and not self.end, "one stitch is announced, more is told")
        else:
            taken = self.sets["first"] + self.sets["more"]
            self._check(how != "ladder" and len(self.sets["first"]) == 2 and bool(self.end or self.told["short"]),
                        "cannot hang this row on the one before")
            hung = [(start + k * step, beads if k == 0 else beads[::-1]) for k, beads in enumerate(taken)]
        self._check_end(under, hung, step)
        before = [(start - k * step, beads if k % 2 else beads[::-1]) for k, beads in enumerate(self.sets["before"], 1)]
        after = [(hung[-1][0] + k * step, beads[::-1] if k % 2 else beads) for k, beads in enumerate(self.sets["after"], 1)]
        return [*before, *hung, *after]

    def _exit(self, under: ReadRow, step: int) -> int:
        """Place of the stitch that the thread comes out of."""
        places = [place for place, _ in under.stitches]
        if self.source:
            index = int(self.source[3]) - 1
        else:
            index = int(self.travel[1]) if self.travel else 0
            self._check(index % 2 == 0, "an odd number of stitches leaves the needle at the wrong end")
            index = index if step > 0 else len(places) - 1 - index
        self._check(0 <= index < len(places), "the row under it has no such stitch")
        return places[index]

    def _check_end(self, under: ReadRow, hung: list, step: int) -> None:
        """Whether the hung stitches start and end where the words say, and there is a bridge for them."""
        places = sorted((place for place, _ in under.stitches), reverse=step < 0)
        near, far, last = places[0], places[-1], hung[-1][0]
        overhang = (near - hung[0][0]) * step > 0
        self._check(len(places) > 1 and any(min(places) < place < max(places) for place, _ in hung), "cannot hang this row on the one before")
        self._check(overhang or not self.sets["before"], "ladder stitches stand where there are thread bridges")
        stop = {"in": far - step // 2, "out": far + step // 2, None: far - step // 2 - step * int(self.told["short"] or 0)}[self.end]
        self._check(last == stop, "the row does not end where it should")
        self._check(self.end == "out" or not self.sets["after"], "ladder stitches stand where there are thread bridges")

    def _check(self, right: bool, wrong: str) -> None:
        if not right:
            raise CannotRead(f"row {self.name}: {wrong}: {self.line!r}")
