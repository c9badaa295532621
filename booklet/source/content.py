"""Short marks of what a pattern says, by which lint knows that a released pattern has changed."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping
from hashlib import sha256
from typing import Any

from msgspec import Struct
from msgspec.structs import asdict, replace

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
    if pattern.translations:   # one that has none keeps the mark that it had before there were any
        said["translations"] = plain(pattern.translations)
    return _mark({**_stitched(pattern), **said, "colourways": {way: _legend(beads) for way, beads in pattern.colourways.items()}})


def facts(pattern: Pattern) -> dict[str, str]:
    """What else a maker goes by, in the words of the corrections; part of it may come from the book."""
    thread = pattern.thread
    names = pattern.written_findings or tuple(item.item for item in pattern.findings_list)
    items = (f"{item.each} {name}" + (f", {item.size}" if item.size else "") for item, name in zip(pattern.findings_list, names))
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
    if isinstance(value, Struct):
        return _said(asdict(value), _defaults(type(value)))
    if isinstance(value, Form):
        return _said({name: getattr(value, name) for name in value.fields}, {name: field.default for name, field in value.fields.items()})
    if hasattr(value, "_fields"):
        return _said(value._asdict(), value._field_defaults)
    if isinstance(value, Mapping):
        return {str(name): plain(one) for name, one in value.items()}
    if isinstance(value, Iterable) and not isinstance(value, str):
        return [plain(one) for one in value]
    return value


def _said(values: Mapping[str, Any], defaults: Mapping[str, Any]) -> dict[str, Any]:
    return {name: plain(value) for name, value in values.items() if name not in defaults or value != defaults[name]}


def _defaults(form: type[Struct]) -> dict[str, Any]:
    """What the last fields of a structure hold where nothing is said; a default that can be changed is made anew each time."""
    values = [default.factory() if hasattr(default, "factory") else default for default in form.__struct_defaults__]
    return dict(zip(form.__struct_fields__[-len(values):], values)) if values else {}


def _mark(said: Any) -> str:
    text = json.dumps(said, ensure_ascii=False, separators=(",", ":"), sort_keys=True)
    return sha256(text.encode()).hexdigest()[:LENGTH]
