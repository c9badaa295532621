"""What has changed between two versions of a piece, as a maker needs it: row by row, strand by strand, bead by bead."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from typing import NamedTuple

from .piece import Hanger, Piece
from .runs import said
from .saying import listed
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
    rows = _differing("row", "Row", _rows(old), _rows(new))
    strands = _differing("strand", "Strand", _strands(old), _strands(new))
    return (*rows, *strands, *_differing("hanger", "Hanger", {"": _hangers(old)}, {"": _hangers(new)}))


def bead_corrections(old: Tally, new: Tally) -> tuple[Correction, ...]:
    """Beads of the legend that have another name, look or kind, then those of which another number is needed, then all beads together."""
    looks = _differing("bead", "", *({line.key: _look(line.bead) for line in counts.lines} for counts in (old, new)))
    was, now = ({line.key: (line.piece, line.total, line.to_buy) for line in counts.lines} for counts in (old, new))
    counts = [_count(key, was.get(key, (0, 0, 0)), now.get(key, (0, 0, 0))) for key in _together(was, now) if was.get(key) != now.get(key)]
    whole = (old.beads, old.beads * old.pieces), (new.beads, new.beads * new.pieces)
    return (*looks, *counts, *([_count("All", *whole)] if whole[0] != whole[1] else []))


def _count(what: str, old: Iterable[int], new: Iterable[int]) -> Correction:
    """Counts as "88 → 87 a piece, 176 → 174 in all"; those that stay the same are said once."""
    told = (f"{was:,} → {now:,} {name}" if was != now else f"{now:,} {name}" for was, now, name in zip(old, new, ("a piece", "in all", "to buy")))
    return Correction("count", what, "", ", ".join(told))


def _look(bead) -> str:
    return f"{bead.name}, {bead.finish}, {bead.kind.name}"


def _rows(piece: Piece) -> dict[tuple[int, str], str]:
    return {(words.number, words.part): f"{words.arrow} {words.count}: {words.text}" for words in row_words(piece)}


def _strands(piece: Piece) -> dict[int, str]:
    return {words.number: f"{words.count}: {words.text}" for words in sorted(strand_words(piece), key=lambda words: words.number)}


def _hangers(piece: Piece) -> str:
    return listed([_hanger(hanger) for hanger in piece.hangers]) if piece.hangers else "no hanger"


def _hanger(hanger: Hanger) -> str:
    """What it is, with what a maker does otherwise for it: its place, its size, how often the thread goes through."""
    where = "" if hanger.at == "middle" else f" on the {hanger.at}"
    what = {"guard": f"a thread guard with a span of {hanger.span:g} mm", "ring": f"a closed ring of {hanger.size:g} mm",
            "loop": f"a loop of {said([(key,) for key in hanger.beads])}"}[hanger.kind]
    return f"{what}{where}, {hanger.passes} times through"


def _differing(part: str, name: str, old: Mapping[Key, str], new: Mapping[Key, str]) -> Iterator[Correction]:
    for key in _together(old, new):
        was, now = old.get(key, ""), new.get(key, "")
        if was != now:
            said = "".join(map(str, key)) if isinstance(key, tuple) else key
            yield Correction(part, f"{name} {said}".strip(), was, now)


def _together(old: Iterable, new: Iterable) -> Iterable:
    """The keys of both, in the order of the new ones; numbers by size, parts of rows after their numbers."""
    keys = dict.fromkeys((*new, *old))
    return keys if any(isinstance(key, str) for key in keys) else sorted(keys)
