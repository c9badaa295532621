"""The corrections list: what has changed for the maker since a pattern, or a book, was last published.

It prints as a page of the single and of the book, and goes out as text with a shop's update.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import groupby
from textwrap import fill

from ..craft.corrections import Correction, bead_corrections, corrections
from ..craft.language import _, message, plainly, spoken
from ..craft.plan import thread_said
from ..craft.stitches import faults
from ..craft.tally import Tally, tally
from ..errors import UnreadableInput
from ..source.content import facts, stitched
from ..source.files import read_file
from ..source.pattern import Pattern
from ..source.releases import Release
from ..source.resolve import read_pattern
from ..source.workspace import Workspace
from .translated import pattern_in

PARTS = {"row": message("Rows"), "strand": message("Strands"), "hanger": message("Hanger"), "bead": message("Beads of the key"),
         "count": message("Bead counts, old → new"), "fact": message("Also"), "text": message("Words")}
FACTS = {"makes": message("Makes"), "hand": message("First row from the"), "level": message("Level"), "thread": message("Thread"), "findings": message("Findings")}
_RECORDED = (message("pair"), message("single"), message("mirrored"), message("right"), message("left"))   # words of facts
_THREAD = re.compile(r"(.+) for the body, (.+) for the fringe, ([0-9.]+) m at a time")
TOLD_ONCE = ("count", "text")   # parts whose corrections are one phrase
WIDTH = 78   # columns of the text


@dataclass(frozen=True)
class Errata:
    """What has changed in one pattern."""

    title: str
    version: str
    since: str                              # the version it is compared with
    corrections: tuple[Correction, ...]     # part by part, in the order of PARTS

    @property
    def parts(self) -> list[tuple[str, list[Correction]]]:
        """The corrections under the heading of their part."""
        return [(_(PARTS[part]), list(group)) for part, group in groupby(self.corrections, key=lambda one: one.part)]


def errata_of(workspace: Workspace, pattern: Pattern) -> Errata | None:
    """What has changed since the release before this version; None if there is none. Raises UnreadableInput where its copy is not as it was."""
    before = workspace.releases.before(pattern.slug, pattern.version) if workspace.releases else None
    return _compared(workspace, pattern, before) if before else None


def errata_of_book(workspace: Workspace) -> tuple[Errata, ...]:
    """What has changed, pattern by pattern, since the book was last published with other versions than now."""
    releases = workspace.releases
    book = releases.book_before({slug: pattern.version for slug, pattern in workspace.patterns.items()}) if releases else None
    found = []
    for slug, pattern in workspace.patterns.items() if book else ():
        before = releases.at(slug, book.patterns[slug]) if slug in book.patterns else None
        if before and before != releases.at(slug, pattern.version):
            found.append(_compared(workspace, pattern, before))
    return tuple(found)


def _compared(workspace: Workspace, pattern: Pattern, before: Release) -> Errata:
    old = pattern_in(_as_released(workspace, before), spoken().tag, workspace.book)
    changes = (*corrections(old.piece, pattern.piece), *bead_corrections(_tally(old), _tally(pattern)), *_facts(before, pattern), *_texts(old, pattern))
    return Errata(pattern.title, pattern.version, before.version, changes)


def _as_released(workspace: Workspace, release: Release) -> Pattern:
    text, _ = read_file(workspace.root / release.copy, workspace.root)
    pattern = None if text is None else read_pattern(text, release.copy, release.slug, workspace.book)[0]
    if pattern is None or pattern.piece is None or faults(pattern.piece):
        raise UnreadableInput(f"{release.copy} cannot be read, so what has changed since version {release.version} cannot be told",
                              "bring back the file that booklet release wrote")
    if stitched(pattern) != release.stitched:
        raise UnreadableInput(f"{release.copy} is not what was released as version {release.version}", "bring back the file that booklet release wrote")
    return pattern


def _tally(pattern: Pattern) -> Tally:
    return tally(pattern.piece, pattern.pieces, pattern.spare_percent, pattern.least_spare, pattern.pack_grams)


def _facts(before: Release, pattern: Pattern) -> Iterator[Correction]:
    now = facts(pattern)
    for name, label in FACTS.items():
        if before.facts.get(name, "") != now.get(name, ""):
            yield Correction("fact", _(label), _fact(name, before.facts.get(name, "")), _fact(name, now.get(name, "")))


def _fact(name: str, said: str) -> str:
    """A fact as it is recorded, in the language of the page. Findings stay as the author names them."""
    if name in ("makes", "hand", "level"):
        return ", ".join(_(word) for word in said.split(", ")) if said else ""
    thread = _THREAD.fullmatch(said) if name == "thread" else None
    return _("{body} for the body, {fringe} for the fringe, {length} m at a time", body=thread_said(thread[1]), fringe=thread_said(thread[2]),
             length=plainly(float(thread[3]))) if thread else said


def _texts(old: Pattern, new: Pattern) -> Iterator[Correction]:
    """Notes and steps are not repeated here: the maker reads them where they stand."""
    for what, was, now in ((_("Notes"), old.notes, new.notes), (_("Steps"), old.steps, new.steps), (_("Other colours"), old.colourways, new.colourways)):
        if was != now:
            yield Correction("text", what, "", _("have changed: read them again") if now else _("have been taken out"))


def errata_text(every: Iterable[Errata], heading: str = "") -> str:
    """The list as plain text, for a shop's update."""
    lines = [heading] if heading else []
    for errata in every:
        lines += ["", _("{title}, version {version}", title=errata.title, version=errata.version),
                  _("What has changed since version {version}:", version=errata.since)]
        lines += [] if errata.corrections else ["  " + _("Nothing that a maker stitches, buys or reads.")]
        for part, changes in errata.parts:
            lines += ["", part]
            for change in changes:
                lines += list(_said(change))
    return "\n".join(lines).strip("\n") + "\n"


def _said(change: Correction) -> Iterator[str]:
    if change.part in TOLD_ONCE:
        yield f"  {change.what} {change.new}"
        return
    yield f"  {change.what}"
    yield _wrapped(_("was"), change.old or "(" + _("not there") + ")")
    yield _wrapped(_("is now"), change.new or "(" + _("left out") + ")")


def _wrapped(label: str, text: str) -> str:
    whole = re.sub(r"\(\w(?: \w)+\)", lambda beads: beads[0].replace(" ", "\N{NO-BREAK SPACE}"), text)   # no line ends within a set
    lines = fill(whole, WIDTH, initial_indent=f"    {label:<8}", subsequent_indent=" " * 12, break_long_words=False, break_on_hyphens=False)
    return lines.replace("\N{NO-BREAK SPACE}", " ")
