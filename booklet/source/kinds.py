"""Bead kinds: the shipped ones, and those that a book adds or changes."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache
from pathlib import Path

from msgspec.structs import asdict

from ..craft.beads import BeadKind
from .nodes import compose
from .reader import Reader, label
from .schema import KINDS, KindEntry

DATA = Path(__file__).parent.parent / "data"
_NEEDED = ("shape", "diameter", "length", "hole")


@lru_cache(maxsize=1)
def shipped_kinds() -> Mapping[str, BeadKind]:
    """The kinds of booklet/data/bead_kinds.yaml by name."""
    document = compose((DATA / "bead_kinds.yaml").read_text("utf-8"), "bead_kinds.yaml")
    reader = Reader(document)
    entries = KINDS.read(document.root, reader, ())
    if reader.findings:
        raise ValueError([finding.one_line() for finding in reader.findings])
    return {name: BeadKind(name, **_said(entry)) for name, entry in entries.items()}


def with_own(own: Mapping[str, KindEntry | None], reader: Reader) -> dict[str, BeadKind]:
    """The shipped kinds with a book's own. An own kind of a known name changes only what it says."""
    kinds = dict(shipped_kinds())
    for name, entry in own.items():
        made = _made(name, entry, kinds.get(name), reader) if entry else None
        if made:
            kinds[name] = made
    return kinds


def _made(name: str, entry: KindEntry, known: BeadKind | None, reader: Reader) -> BeadKind | None:
    path = ("kinds", name)
    figures = {**(asdict(known) if known else {}), **_said(entry), "name": name}
    if known and not entry.per_gram and any(getattr(entry, size) for size in (*_NEEDED, "density")):
        figures["per_gram"] = None   # a count is of the size it was published for
    missing = [size for size in _NEEDED if size not in figures]
    for size in missing:
        if path + (size,) not in reader.marks:   # else it is there, and wrong
            reader.find_at(reader.marks[path], "missing-field", f"{label(path + (size,))} is missing")
    if missing:
        return None
    if figures["hole"] >= figures["diameter"]:
        reader.find_at(reader.marks[path], "hole-too-wide",
                       f"the hole of {name}, {figures['hole']:g} mm, is not narrower than the bead, {figures['diameter']:g} mm")
        return None
    return BeadKind(**figures)


def _said(entry: KindEntry) -> dict:
    return {name: value for name, value in vars(entry).items() if value is not None}
