"""Bead kinds: the shipped ones, and those that a book adds or overrides."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache
from pathlib import Path

from ..craft.beads import BeadKind
from .nodes import compose
from .schema import BOOK
from .shapes import Reading

DATA = Path(__file__).parent.parent / "data"


@lru_cache(maxsize=1)
def shipped_kinds() -> Mapping[str, BeadKind]:
    """The kinds of booklet/data/bead_kinds.yaml by name."""
    document = compose((DATA / "bead_kinds.yaml").read_text("utf-8"), "bead_kinds.yaml")
    reading = Reading(document)
    values = BOOK.of["kinds"].read(document.root, reading, ("kinds",))
    if document.findings or reading.findings:
        raise ValueError([finding.one_line() for finding in (*document.findings, *reading.findings)])
    return {name: BeadKind(name, **fields) for name, fields in values.items()}


def with_own(own: Mapping[str, Mapping | None], reading: Reading) -> Mapping[str, BeadKind]:
    """The shipped kinds with a book's own; an own kind of a known name changes only what it says."""
    kinds = dict(shipped_kinds())
    for name, fields in own.items():
        known = kinds.get(name)
        merged = {**({k: getattr(known, k) for k in ("shape", "diameter", "length", "hole", "per_gram", "source")} if known else {}),
                  **{key: value for key, value in (fields or {}).items() if value is not None}}
        missing = [key for key in ("shape", "diameter", "length", "hole") if merged.get(key) is None]
        node = reading.nodes[("kinds", name)]
        if missing:
            reading.find(node, "missing-field", f"the bead kind {name} has no {', '.join(missing)}")
        elif merged["hole"] >= merged["diameter"]:
            reading.find(node, "wrong-value", f"the hole of {name} is not smaller than the bead")
        else:
            kinds[name] = BeadKind(name, **merged)
    return kinds
