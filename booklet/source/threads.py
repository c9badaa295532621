"""Thread kinds, the shipped ones and those that a book adds or changes, and the needles there are."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache

from msgspec.structs import asdict

from ..craft.plan import Needle, ThreadKind
from .kinds import DATA
from .nodes import compose
from .reader import FieldPath, Reader, label
from .schema import NEEDLES, THREADS, ThreadEntry, ThreadKindEntry
from .wording import did_you_mean, quoted


@lru_cache(maxsize=1)
def shipped_threads() -> Mapping[str, ThreadKind]:
    """The kinds of booklet/data/thread_kinds.yaml by name."""
    return {name: ThreadKind(name, **_said(entry)) for name, entry in _shipped("thread_kinds.yaml", THREADS).items()}


@lru_cache(maxsize=1)
def shipped_needles() -> tuple[Needle, ...]:
    """The needles of booklet/data/needles.yaml, thickest first."""
    return tuple(Needle(size, **_said(entry)) for size, entry in _shipped("needles.yaml", NEEDLES).items())


def with_own_threads(own: Mapping[str, ThreadKindEntry | None], reader: Reader) -> dict[str, ThreadKind]:
    """The shipped kinds with a book's own. An own kind of a known name changes only what it says."""
    kinds = dict(shipped_threads())
    for name, entry in own.items():
        known = asdict(kinds[name]) if name in kinds else {"name": name}
        figures = {**known, **(_said(entry) if entry else {})}
        if "diameter" in figures:
            kinds[name] = ThreadKind(**figures)
        elif entry and ("threads", name, "diameter") not in reader.marks:   # else it is there, and wrong
            reader.find_at(reader.marks["threads", name], "missing-field", f"{label(('threads', name, 'diameter'))} is missing",
                           "a strength in pounds does not tell how thick a thread is")
    return kinds


def check_threads(thread: ThreadEntry | None, kinds: Mapping[str, ThreadKind], reader: Reader, path: FieldPath) -> None:
    """A finding for each thread that is not among the known kinds."""
    for part in ("body", "fringe"):
        given = getattr(thread, part, None)
        name = given and given.kind
        if name and name not in kinds and not reader.full:
            reader.find_at(reader.marks[(*path, part, "kind")], "unknown-thread", f"the thread kind {quoted(name)} is not known",
                           did_you_mean(name, kinds) or "add it to threads: in book.yaml, with its diameter")


def _shipped(file: str, form) -> Mapping:
    document = compose((DATA / file).read_text("utf-8"), file)
    reader = Reader(document)
    entries = form.read(document.root, reader, ())
    if reader.findings:
        raise ValueError([finding.one_line() for finding in reader.findings])
    return entries


def _said(entry) -> dict:
    return {name: getattr(entry, name) for name in entry.fields if getattr(entry, name) is not None}
