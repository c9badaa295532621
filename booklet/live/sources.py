"""Which files of a workspace the pages are made from, and when one of them has changed."""

from __future__ import annotations

import os
import time
from collections.abc import Iterator
from pathlib import Path, PurePath

from watchfiles import Change, watch

FOLDERS = ("patterns", "templates")
KINDS = frozenset({".yaml", ".yml", ".md", ".jpg", ".jpeg", ".png", ".webp", ".jinja", ".css", ".js"})
LOOK = 500       # milliseconds after which we look whether the folders are still there
TOGETHER = 400   # milliseconds in which several files that are saved count as one change


def is_source(path: PurePath) -> bool:
    """Whether a file of this name is read at all. What editors write beside a file (a hidden name, a mark after its ending) is not."""
    return path.suffix.lower() in KINDS and not path.name.startswith((".", "#", "~"))


def changes(root: Path) -> Iterator[frozenset[str]]:
    """The names, seen from the workspace, of the files that have changed, whenever some have. Never ends.

    An empty set says that a whole folder has come or gone.
    """
    root = root.resolve()
    while True:
        there = _there(root)
        if there:
            yield from _changes(root, there)
        else:
            time.sleep(LOOK / 1000)
        if _there(root) != there:
            yield frozenset()


def _changes(root: Path, there: dict[Path, tuple[int, int]]) -> Iterator[frozenset[str]]:
    """Changes, as long as the same folders are there."""
    def wanted(change: Change, path: str) -> bool:
        return is_source(Path(path)) or Path(path) in there or Path(path).is_dir()

    try:
        for found in watch(*there, watch_filter=wanted, debounce=TOGETHER, step=50, rust_timeout=LOOK, yield_on_timeout=True, ignore_permission_denied=True):
            gone = any(change is Change.deleted and Path(path) in there for change, path in found)
            if gone or _there(root) != there:
                return
            if found:
                yield frozenset(Path(path).relative_to(root).as_posix() for _, path in found)
    except FileNotFoundError:   # it went between our looking and our watching
        return


def _there(root: Path) -> dict[Path, tuple[int, int]]:
    """The folders that exist, each with what tells it from another one of its name."""
    found = {}
    for name in FOLDERS:
        try:
            state = os.stat(root / name)
        except OSError:
            continue
        found[root / name] = (state.st_dev, state.st_ino)
    return found
