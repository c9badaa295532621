"""Building the pages again after a change: what has not changed is kept, and what is broken stays as it was."""

from __future__ import annotations

import asyncio
from collections.abc import Callable, Sequence
from functools import partial
from pathlib import Path
from typing import NamedTuple

from msgspec.structs import replace

from ..bind.book import web
from ..bind.files import update_folder
from ..bind.found import Found
from ..bind.pdf import working_in
from ..bind.press.cache import KEPT, Cache
from ..bind.press.orders import digest
from ..bind.press.workshop import HereAndNow, Workshop
from ..bind.sections import Stationery, printed
from ..bind.web.article import Article
from ..bind.web.orders import made_articles
from ..bind.web.workers import web_workers
from ..errors import BookletError, FindingsError, UnreadableInput
from ..findings import Finding
from ..lint.run import lint
from ..source.pattern import Pattern
from ..source.workspace import Known, Workspace, load
from .site import Report

FEW = 3   # patterns that are drawn sooner than workers are ready
Says = Callable[[str], None]


class Built(NamedTuple):
    """The report of a build, and its files; None where there are none."""

    report: Report
    files: dict[str, bytes] | None


class Rebuilder:
    """Builds one workspace again and again. Used as a context, it has workers for its first build."""

    def __init__(self, root: Path) -> None:
        self.root = root
        self._read: Known = {}
        self._good: dict[str, Pattern] = {}      # as they were when they last had no error
        self._kept: dict[str, tuple[tuple[Pattern, str], tuple[Article, ...]]] = {}
        self._hired: Workshop | None = None      # who draws the patterns of the first build
        self.made: list[str] = []                # patterns that the last build has drawn anew

    def __enter__(self) -> Rebuilder:
        """Start the workers of the first build, in which all patterns have to be drawn. Once there are threads, they could not be forked."""
        self._hired = Workshop(self.root / KEPT, web_workers, typesets=False)
        self._hired.hire()
        return self

    def __exit__(self, *error: object) -> None:
        hired, self._hired = self._hired, None
        if hired:
            hired.__exit__(*error)

    def build(self, says: Says = lambda line: None) -> Built:
        """Build, and write build/html/. Raises nothing of booklet.errors: what is wrong stands in the report."""
        try:
            return self._built(says)
        finally:
            self.__exit__()

    def _built(self, says: Says) -> Built:
        found: Sequence[Finding] = ()
        try:
            if not (self.root / "patterns").is_dir():
                raise UnreadableInput("the folder patterns/ is gone", "put it back; these are the last good pages")
            workspace = load(self.root, known=self._read)
            found = lint(workspace, kept=Found(Cache(self.root / KEPT)))
            usable, missing = self._usable(workspace, found)
            if usable is None:
                return Built(_not_built(missing, found), None)
            files = asyncio.run(self._files(usable, says))
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

    async def _files(self, workspace: Workspace, says: Says) -> dict[str, bytes]:
        with working_in(Workshop(self.root / KEPT, HereAndNow)):
            return await web(workspace, workspace.book.language, says, self._articles)

    async def _articles(self, patterns: Sequence[Pattern], common: Stationery, small: float, title: str, says: Says) -> dict[str, tuple[Article, ...]]:
        """As `made_articles`, but those of patterns of which no page shows a change are what they were."""
        around = digest(common, small, title)
        keys = {pattern.slug: (printed(pattern), around) for pattern in patterns}
        new = [pattern for pattern in patterns if self._kept.get(pattern.slug, (None,))[0] != keys[pattern.slug]]
        self.made = [pattern.slug for pattern in new]
        with working_in(self._who_draws(len(new))):
            made = await made_articles(new, common, small, title, says=says)
        self._kept = {slug: (key, made[slug]) if slug in made else self._kept[slug] for slug, key in keys.items()}
        return {slug: self._kept[slug][1] for slug in keys}

    def _who_draws(self, count: int) -> Workshop:
        """Workers, from whom the cache keeps what they draw. A few are drawn in this process, and nobody else keeps them: saved again and again, they would push out what a build needs."""
        return self._hired or (Workshop(self.root / KEPT, partial(web_workers, count), typesets=False) if count > FEW else Workshop(start=HereAndNow))


def _not_built(missing: Sequence[str], found: Sequence[Finding]) -> Report:
    head = f"The pages of {', '.join(missing)} are as they last were without an error." if missing else "The pages are as they last were without an error."
    return Report(head, found, True, tuple(missing))
