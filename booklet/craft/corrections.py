"""What has changed between two versions of a piece, as a maker needs it: row by row, strand by strand, bead by bead."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from typing import NamedTuple

from .beads import Bead, finish_said, kind_said
from .language import _, listed, ngettext, plainly, whole
from .piece import Hanger, Piece
from .runs import said
from .tally import Tally
from .words import row_words, strand_words


Key = int | str | tuple[int, str]   # of a strand, of a bead, of a row and its part


class Correction(NamedTuple):
    """One thing that is different. `old` or `new` is empty where there was, or is, no such thing; counts are told in `new` alone."""

    part: str   # row | strand | hanger | bead | count
    what: str   # "Row 3", "Strand 5", "W"
    old: str
    new: str


def corrections(old: Piece, new: Piece) -> tuple[Correction, ...]:
    """Rows whose words differ, by number and part, strands from the left, then the hanger. Raises ValueError for a piece that cannot be worked."""
    rows = _differing("row", lambda row: ngettext("Row {numbers}", "Rows {numbers}", 1, numbers=row), _rows(old), _rows(new))
    strands = _differing("strand", lambda number: _("Strand {number}", number=number), _strands(old), _strands(new))
    return (*rows, *strands, *_differing("hanger", lambda key: _("Hanger"), {"": _hangers(old)}, {"": _hangers(new)}))


def bead_corrections(old: Tally, new: Tally) -> tuple[Correction, ...]:
    """Beads of the legend that have another name, look or kind, then those of which another number is needed, then all beads together."""
    looks = _differing("bead", str, *({line.key: _look(line.bead) for line in counts.lines} for counts in (old, new)))
    was, now = ({line.key: (line.piece, line.total, line.to_buy) for line in counts.lines} for counts in (old, new))
    counts = [_count(key, was.get(key, (0, 0, 0)), now.get(key, (0, 0, 0))) for key in _together(was, now) if was.get(key) != now.get(key)]
    every = (old.beads, old.beads * old.pieces), (new.beads, new.beads * new.pieces)
    return (*looks, *counts, *([_count(_("All"), *every)] if every[0] != every[1] else []))


def _count(what: str, old: Iterable[int], new: Iterable[int]) -> Correction:
    """Counts as "88 → 87 a piece, 176 → 174 in all"; those that stay the same are said once."""
    numbers = (f"{whole(was)} → {whole(now)}" if was != now else whole(now) for was, now in zip(old, new))
    told = (say(number) for number, say in zip(numbers, (_a_piece, _in_all, _to_buy)))
    return Correction("count", what, "", ", ".join(told))


def _a_piece(number: str) -> str:
    return _("{number} a piece", number=number)


def _in_all(number: str) -> str:
    return _("{number} in all", number=number)


def _to_buy(number: str) -> str:
    return _("{number} to buy", number=number)


def _look(bead: Bead) -> str:
    return f"{bead.name}, {finish_said(bead.finish)}, {kind_said(bead.kind.name)}"


def _rows(piece: Piece) -> dict[tuple[int, str], str]:
    return {(words.number, words.part): f"{words.arrow} {words.count}: {words.text}" for words in row_words(piece)}


def _strands(piece: Piece) -> dict[int, str]:
    return {words.number: f"{words.count}: {words.text}" for words in sorted(strand_words(piece), key=lambda words: words.number)}


def _hangers(piece: Piece) -> str:
    return listed([_hanger(hanger) for hanger in piece.hangers]) if piece.hangers else _("no hanger")


def _hanger(hanger: Hanger) -> str:
    """What it is, with what a maker does otherwise for it: its place, its size, how often the thread goes through."""
    if hanger.kind == "guard":
        what = _("a thread guard with a span of {span} mm", span=plainly(hanger.span))
    elif hanger.kind == "ring":
        what = _("a closed ring of {size} mm", size=plainly(hanger.size))
    else:
        what = _("a loop of {beads}", beads=said([(key,) for key in hanger.beads]))
    placed = {"left": _("{hanger} on the left", hanger=what), "right": _("{hanger} on the right", hanger=what)}.get(hanger.at, what)
    return _("{hanger}, {count} times through", hanger=placed, count=hanger.passes)


def _differing(part: str, name: Callable[[Key], str], old: Mapping[Key, str], new: Mapping[Key, str]) -> Iterator[Correction]:
    for key in _together(old, new):
        was, now = old.get(key, ""), new.get(key, "")
        if was != now:
            said = "".join(map(str, key)) if isinstance(key, tuple) else key
            yield Correction(part, name(said), was, now)


def _together(old: Iterable, new: Iterable) -> Iterable:
    """The keys of both, in the order of the new ones; numbers by size, parts of rows after their numbers."""
    keys = dict.fromkeys((*new, *old))
    return keys if any(isinstance(key, str) for key in keys) else sorted(keys)
