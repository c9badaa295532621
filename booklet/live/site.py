"""What is served: the last good pages, and what is wrong with the sources since. Browsers wait here for news."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from hashlib import sha256
from pathlib import Path
from posixpath import dirname, join, normpath
from threading import Condition
from urllib.parse import unquote

from ..findings import Finding

_LANGUAGE = re.compile(rb'<html lang="([A-Za-z0-9-]+)"')
_NEEDED = re.compile(rb'(?:src|href)="([^"#?:]+)[^"]*"')


@dataclass(frozen=True)
class Report:
    """What the last build has to say: a line about the pages that are shown, and its findings.

    `kept`: the slugs of the patterns whose pages are as they last were, none where all are; the line says so in English. None where it says something else.
    """

    head: str = ""
    findings: Sequence[Finding] = ()
    is_bad: bool = False    # the pages are not what the sources say
    kept: Sequence[str] | None = None

    def told(self) -> dict:
        """As browsers are told it."""
        found = [{"where": f"{one.mark.file}:{one.mark.line}:{one.mark.column}", "level": str(one.severity), "text": one.message, "hint": one.hint}
                 for one in sorted(self.findings, key=lambda one: (one.severity, one))]
        return {"head": self.head, "kept": self.kept, "language": "en", "bad": self.is_bad, "found": found}


class Site:
    """Files by name, and the report. Each change of either is an edition with a number of its own."""

    def __init__(self, files: Mapping[str, bytes]) -> None:
        self._files, self._report, self._edition, self._open = dict(files), Report(), 0, True
        self._changed = Condition()
        self._digest = lru_cache(maxsize=None)(self._digested)

    @property
    def edition(self) -> int:
        return self._edition

    @property
    def report(self) -> Report:
        return self._report

    @property
    def is_open(self) -> bool:
        return self._open

    def publish(self, report: Report, files: Mapping[str, bytes] | None = None) -> None:
        """Tell everyone who waits. Without files, the earlier ones stay."""
        with self._changed:
            self._report, self._files = report, self._files if files is None else dict(files)
            self._edition += 1
            self._digest.cache_clear()
            self._changed.notify_all()

    def close(self) -> None:
        """Nothing will change any more."""
        with self._changed:
            self._open = False
            self._changed.notify_all()

    def wait(self, seen: int, patience: float) -> int:
        """The number of the edition, as soon as it is another than `seen`, or after so many seconds."""
        with self._changed:
            self._changed.wait_for(lambda: self._edition != seen or not self._open, patience)
            return self._edition

    def name(self, path: str) -> str:
        """The name of the file for the path of an address; empty if there is none. Nothing but names that are known can be reached."""
        wanted = unquote(path).lstrip("/")
        tries = (wanted, f"{wanted}.html", join(wanted, "index.html") if wanted.endswith("/") or not wanted else "")
        return next((one for one in tries if one in self._files), "")

    def content(self, name: str) -> bytes:
        """A file; empty if it has gone meanwhile."""
        return self._files.get(name, b"")

    def language(self, name: str) -> str:
        """The language of a page; empty where it says none."""
        found = _LANGUAGE.search(self._files.get(name, b"")[:200])
        return found[1].decode() if found else ""

    def digest(self, name: str) -> str:
        """Tells whether a page, or anything that it shows, is still what it was. Empty where there is no such page."""
        return self._digest(name)

    def _digested(self, name: str) -> str:
        if name not in self._files:
            return ""
        page, found = self._files[name], sha256(self._files[name])
        for link in sorted(set(_NEEDED.findall(page))):
            other = normpath(join(dirname(name), unquote(link.decode("utf-8", "replace"))))
            if not other.endswith(".html"):
                found.update(self._files.get(other, b""))
        return found.hexdigest()[:16]


def read_site(folder: Path) -> dict[str, bytes]:
    """The pages that an earlier build has left in a folder. Links are not followed."""
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in sorted(folder.rglob("*"))
            if path.is_file() and not path.is_symlink()} if folder.is_dir() and not folder.is_symlink() else {}
