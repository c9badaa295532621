"""Whether a command has to be run at all: what it reads is as it was the last time, and what it wrote is still there.

The last run is kept beside the parts of the book, under the digest of every file of the workspace's patterns/ and templates/, of booklet
itself, its fonts and its libraries, and of what was asked for. What lint found is kept with it, and said again.
"""

from __future__ import annotations

import json
import os
from collections.abc import Callable, Iterable, Iterator, Sequence
from functools import partial
from hashlib import sha256
from pathlib import Path, PurePosixPath
from typing import TYPE_CHECKING

from ..bind.press.cache import Cache
from ..bind.press.versions import engine_versions, faces_digest
from ..bind.shipped import own_folder
from ..errors import BookletError
from ..findings import Finding, Mark, Severity

if TYPE_CHECKING:
    from ..source.workspace import Workspace

READ = ("patterns", "templates")   # folders of a workspace
PIECE = 1 << 20   # bytes of a file that are read at a time


class Run:
    """One run of a command in a workspace, to be looked up before it and kept after it."""

    def __init__(self, folder: Path, kept: Path, *asked: object) -> None:
        """`kept` is the folder of the cache, in the workspace; `asked` all that the command was told."""
        self.folder, self.cache, self.asked = folder, Cache(folder / kept), asked
        self.key, self._seen = self._state()

    def last(self) -> tuple[list[str], list[Finding]] | None:
        """Names of the files that this very run wrote, in their order, and what lint found; None if it has to be run."""
        content = self.cache.get(self.key) if self.key else None
        if content is None:
            return None
        said = json.loads(content)
        if any(digest != _digest(self.folder / name) for name, digest in said["files"]):
            return None
        return said["made"], [Finding(Mark(*mark), Severity(severity), *rest) for mark, severity, *rest in said["findings"]]

    def keep(self, made: Sequence[Path], findings: Iterable[Finding], read: Iterable[str]) -> None:
        """Keep what was made and found, unless a file was changed meanwhile, or one of those that were read, seen from patterns/, lies elsewhere."""
        if not self.key or any(".." in PurePosixPath(name).parts for name in read) or self._state() != (self.key, self._seen):
            return
        files = [path for one in made for path in (_inside(one.parent) if one.name == "index.html" else [one])]
        digests = {path.relative_to(self.folder).as_posix(): _digest(path) for path in files}
        if not all(digests.values()):
            return
        said = {"made": [path.relative_to(self.folder).as_posix() for path in made], "files": list(digests.items()),
                "findings": [[list(one.mark), int(one.severity), *one[2:]] for one in findings]}
        self.cache.put(self.key, json.dumps(said).encode())

    def _state(self) -> tuple[str, list]:
        """A digest of all that the command reads, and when the files were last written; empty where they cannot be read."""
        made, seen = sha256(repr((self.asked, os.environ.get("SOURCE_DATE_EPOCH", ""))).encode()), []
        try:
            made.update(repr((engine_versions(), faces_digest())).encode())
            for root in (*(self.folder / name for name in READ), own_folder()):
                for path in _inside(root):
                    made.update(f"\n{path.relative_to(root).as_posix()} {_digest(path)}".encode())
                    seen.append((str(path), path.stat().st_mtime_ns))
        except (OSError, BookletError):
            return "", []
        return made.hexdigest(), seen


def _inside(folder: Path) -> Iterator[Path]:
    """The files of a folder, however deep."""
    yield from sorted(path for path in folder.rglob("*") if path.is_file())


def _digest(path: Path) -> str:
    """A digest of a file, which may be larger than the memory; empty where it is not there."""
    made = sha256()
    try:
        with path.open("rb") as file:
            for piece in iter(partial(file.read, PIECE), b""):
                made.update(piece)
    except OSError:
        return ""
    return made.hexdigest()


def again(run: Run, show: Callable[[list[Finding]], None], name: Callable[[str], None]) -> bool:
    """Say once more what this very run said the last time, if nothing has changed since."""
    last = run.last()
    if last is None:
        return False
    made, findings = last
    show(findings)
    for one in made:
        name(one)
    return True


def read_besides(workspace: Workspace) -> list[str]:
    """Files that a build reads because a field names them, seen from patterns/."""
    return [*(pattern.photo.file for pattern in workspace.patterns.values() if pattern.photo), *(one.profile for one in workspace.book.editions.values() if one.profile)]
