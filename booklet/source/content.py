"""Short marks of what a pattern says, by which lint knows that a released pattern has changed."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping
from dataclasses import MISSING, fields, is_dataclass, replace
from hashlib import sha256
from typing import Any

from ..craft.beads import Bead
from .pattern import Pattern
from .records import Form

LENGTH = 16   # hexadecimal digits


def stitched(pattern: Pattern) -> str:
    """A mark of what is stitched: chart, fringe, hanger and the beads, and how the pieces are made. The pattern must have a piece."""
    return _mark(_stitched(pattern))


def printed(pattern: Pattern) -> str:
    """A mark of everything that is printed but the version."""
    names = ("title", "summary", "level", "notes", "steps", "links", "colourways", "findings_list", "thread", "photo", "spare_percent", "least_spare")
    said = {name: plain(getattr(pattern, name)) for name in names}
    said["thread"] = plain(replace(pattern.thread, kinds={}, needles=()))   # what is known of threads is not said by the pattern
    return _mark({**_stitched(pattern), **said, "colourways": {way: _legend(beads) for way, beads in pattern.colourways.items()}})


def facts(pattern: Pattern) -> dict[str, str]:
    """What else a maker goes by, in the words of the corrections; part of it may come from the book."""
    thread = pattern.thread
    items = (f"{item.each} {item.item}" + (f", {item.size}" if item.size else "") for item in pattern.findings_list)
    said = {"makes": pattern.makes + (", mirrored" if pattern.mirror else ""), "hand": pattern.hand, "level": pattern.level,
            "thread": f"{thread.body} for the body, {thread.fringe} for the fringe, {thread.length / 1000:g} m at a time", "findings": "; ".join(items)}
    return {name: text for name, text in said.items() if text}


def _stitched(pattern: Pattern) -> dict[str, Any]:
    piece = {name: value for name, value in plain(pattern.piece).items() if name != "legend"}
    return {"piece": piece, "legend": _legend(pattern.legend), "makes": pattern.makes, "mirror": pattern.mirror}


def _legend(beads: Mapping[str, Bead]) -> list[list[str]]:
    return [[key, bead.name, bead.colour, bead.finish, bead.kind.name] for key, bead in beads.items()]


def plain(value: Any) -> Any:
    """A value as lists and dictionaries. What has its default is left out, so that a field that booklet gains later changes no mark."""
    if is_dataclass(value):
        return {field.name: plain(getattr(value, field.name)) for field in fields(value) if getattr(value, field.name) != _default(field)}
    if isinstance(value, Form):
        return {name: plain(getattr(value, name)) for name, field in value.fields.items() if getattr(value, name) != field.default}
    if hasattr(value, "_fields"):
        return {name: plain(one) for name, one in zip(value._fields, value) if one != value._field_defaults.get(name, MISSING)}
    if isinstance(value, Mapping):
        return {str(name): plain(one) for name, one in value.items()}
    if isinstance(value, Iterable) and not isinstance(value, str):
        return [plain(one) for one in value]
    return value


def _default(field: Any) -> Any:
    return field.default_factory() if field.default_factory is not MISSING else field.default


def _mark(said: Any) -> str:
    text = json.dumps(said, ensure_ascii=False, separators=(",", ":"), sort_keys=True)
    return sha256(text.encode()).hexdigest()[:LENGTH]
