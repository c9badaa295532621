"""Reading the workspace that a command works in, and refusing to work on one with errors."""

from __future__ import annotations

import os
from collections.abc import Iterable
from pathlib import Path
from typing import TYPE_CHECKING

from msgspec.structs import replace

from ..errors import FindingsError, UnreadableInput, WrongUse
from ..findings import Finding
from ..lint.run import lint
from ..source.wording import did_you_mean, quoted
from ..source.workspace import FOLDER, Workspace, load, pattern_files
from .terminal import show_findings

if TYPE_CHECKING:
    from ..bind.press.cache import Cache
    from ..source.workspace import Known

# Errors that would spoil a printed page but not a count or a chart.
PRINT_ONLY = frozenset({"missing-photo", "unknown-placeholder", "unprinted-step"})


def checked_folder(folder: Path) -> Path:
    """The folder, if there is a folder patterns/ in it that can be read. Raises UnreadableInput."""
    if not folder.is_dir():
        raise UnreadableInput(f"there is no folder {folder}")
    if not (folder / "patterns").is_dir():
        here = "the current folder" if folder == Path(".") else folder
        raise UnreadableInput(f"{here} has no folder patterns/", "work in the folder that holds it, or name that one with -C")
    try:
        os.listdir(folder / "patterns")
    except OSError as error:
        raise UnreadableInput(f"{folder / 'patterns'} cannot be read: {(error.strerror or str(error)).lower()}") from None
    return folder


def whole(folder: Path, kept: Cache | None = None, known: Known | None = None) -> Workspace:
    """Everything in a folder, without errors. `kept` may know what is found in it, `known` what is read. Raises FindingsError if it has any."""
    return checked_whole(folder, kept, known)[0]


def checked_whole(folder: Path, kept: Cache | None = None, known: Known | None = None) -> tuple[Workspace, tuple[Finding, ...]]:
    """As `whole`, and what was found besides errors."""
    return _without_errors(load(checked_folder(folder), known=known), folder, with_book=True, kept=kept)


def some(folder: Path, slugs: Iterable[str], to_print: bool = True) -> Workspace:
    """Some patterns and the book file, without errors. Raises WrongUse for a slug that is not there.

    Where nothing is printed, errors that would only spoil a page are shown and do not stop the command.
    """
    return _without_errors(_loaded(folder, slugs)[0], folder, with_book=False, allowed=frozenset() if to_print else PRINT_ONLY)[0]


def those_without_errors(folder: Path, slugs: Iterable[str]) -> tuple[Workspace, list[str], tuple[Finding, ...]]:
    """Those of some patterns that have no errors, the slugs of the others, and what was found, which is shown.

    Raises FindingsError where none is left, or the book file has errors, and WrongUse for a slug that is not there.
    """
    workspace, slugs = _loaded(folder, slugs)
    found = lint(workspace, with_book=False)
    broken = {finding.mark.file for finding in found if finding.is_error}
    files = {slug: f"{FOLDER}/{slug}.yaml" for slug in slugs}
    kept = {slug: pattern for slug, pattern in workspace.patterns.items() if files[slug] not in broken}
    if not kept or broken - set(files.values()):
        raise FindingsError(found)
    show_findings(found, folder, err=True)
    return replace(workspace, patterns=kept), [slug for slug in slugs if slug not in kept], found


def _loaded(folder: Path, slugs: Iterable[str]) -> tuple[Workspace, list[str]]:
    """Some patterns and the book file, each pattern once. Raises WrongUse for a slug that is not there."""
    files, slugs = {file.stem: file for file in pattern_files(checked_folder(folder))}, list(dict.fromkeys(slugs))
    for slug in slugs:
        if slug not in files:
            raise unknown_pattern(slug, files)
    return load(folder, [files[slug] for slug in slugs]), slugs


def unknown_pattern(slug: str, known: Iterable[str]) -> WrongUse:
    """The error for a pattern that is not there, with the nearest one that is, or all if they are few."""
    known = list(known)
    few = f"there are {', '.join(known)}" if 0 < len(known) <= 20 else "see the files in patterns/"
    return WrongUse(f"there is no pattern {quoted(slug)}", did_you_mean(slug, known) or few)


def _without_errors(workspace: Workspace, folder: Path, with_book: bool, allowed: frozenset[str] = frozenset(), kept: Cache | None = None) -> tuple[Workspace, tuple[Finding, ...]]:
    if kept:
        from ..bind.found import Found

        found = lint(workspace, with_book, Found(kept))
    else:
        found = lint(workspace, with_book)
    if any(finding.is_error and finding.rule not in allowed for finding in found):
        raise FindingsError(found)
    show_findings(found, folder, err=True)
    return workspace, found
