"""Building the pages again after a change: what has not changed is kept, and what is broken stays as it was."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from hashlib import sha256
from pathlib import Path
from typing import NamedTuple

from msgspec.structs import replace

from ..bind.book import web
from ..bind.files import update_folder
from ..bind.found import Found
from ..bind.press.cache import KEPT, Cache
from ..bind.web.article import Article, articles
from ..errors import BookletError, FindingsError, UnreadableInput
from ..findings import Finding
from ..lint.run import lint
from ..source.pattern import Pattern
from ..source.workspace import Known, Workspace, load
from .site import Report

Says = Callable[[str], None]


class Built(NamedTuple):
    """The report of a build, and its files; None where there are none."""

    report: Report
    files: dict[str, bytes] | None


class Rebuilder:
    """Builds one workspace again and again."""

    def __init__(self, root: Path) -> None:
        self.root = root
        self._read: Known = {}
        self._good: dict[str, Pattern] = {}      # as they were when they last had no error
        self._kept: dict[str, tuple[tuple, tuple[Article, ...]]] = {}
        self.made: list[str] = []                # patterns that the last build has drawn anew

    def build(self, says: Says = lambda line: None) -> Built:
        """Build, and write build/html/. Raises nothing of booklet.errors: what is wrong stands in the report."""
        found: Sequence[Finding] = ()
        try:
            if not (self.root / "patterns").is_dir():
                raise UnreadableInput("the folder patterns/ is gone", "put it back; these are the last good pages")
            workspace = load(self.root, known=self._read)
            found = lint(workspace, kept=Found(Cache(self.root / KEPT)))
            usable, missing = self._usable(workspace, found)
            if usable is None:
                return Built(_not_built(missing, found), None)
            files = self._files(usable, says)
            update_folder(self.root / "build" / "html", files)
        except FindingsError as error:
            return Built(_not_built((), (*error.findings, *found)), None)
        except BookletError as error:
            return Built(Report(f"{error.message} ({error.hint})" if error.hint else error.message, found, True), None)
        return Built(_not_built(missing, found) if missing else Report(findings=found), files)

    def _usable(self, workspace: Workspace, found: Sequence[Finding]) -> tuple[Workspace | None, list[str]]:
        """The workspace with broken patterns as they last were, and the slugs of those; None if nothing can be built."""
        broken = {finding.mark.file for finding in found if finding.is_error}
        slugs = {f"patterns/{slug}.yaml": slug for slug in workspace.slugs}
        missing = sorted(slugs[file] for file in broken & set(slugs))
        self._good = {slug: workspace.patterns.get(slug) if slug not in missing else self._good.get(slug) for slug in workspace.slugs}
        usable = {slug: self._good[slug] for slug in (*workspace.patterns, *missing) if self._good[slug] is not None}
        if broken - set(slugs) or not usable:
            return None, missing
        order = {slug: place for place, slug in enumerate(workspace.book.order)}
        return replace(workspace, patterns=dict(sorted(usable.items(), key=lambda one: (order.get(one[0], len(order)), one[0]))), slugs=tuple(usable)), missing

    def _files(self, workspace: Workspace, says: Says) -> dict[str, bytes]:
        settings, self.made = _digest(self.root), []

        def make(setter, pattern: Pattern, room, small: float, title: str) -> tuple[Article, ...]:
            key = (pattern, small, title, settings)
            if pattern.slug not in self._kept or self._kept[pattern.slug][0] != key:
                self.made.append(pattern.slug)
                self._kept[pattern.slug] = key, articles(setter, pattern, room, small, title)
            return self._kept[pattern.slug][1]

        return web(workspace, says, make)


def _not_built(missing: Sequence[str], found: Sequence[Finding]) -> Report:
    head = f"The pages of {', '.join(missing)} are as they last were without an error." if missing else "The pages are as they last were without an error."
    return Report(head, found, True, tuple(missing))


def _digest(root: Path) -> str:
    """Tells whether anything but the patterns themselves has changed that their pages show."""
    found = sha256()
    for path in (root / "patterns" / "book.yaml", *sorted((root / "templates").rglob("*"))):
        if path.is_file():
            found.update(path.as_posix().encode() + path.read_bytes())
    return found.hexdigest()
