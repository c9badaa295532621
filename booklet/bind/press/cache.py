"""What has been made before, in a folder that may be deleted at any time.

An entry is a file named after the digest of its order. It is written aside and renamed, so that a reader sees all of it or nothing, and
carries a digest of its own content: a damaged one counts as missing. Entries that have not been used for longest go first; what this build has used stays.
"""

from __future__ import annotations

import os
import time
from contextlib import suppress
from hashlib import sha256
from itertools import count
from pathlib import Path

KEPT = "build/.cache"       # of a workspace
MOST = 512 * 1024 * 1024    # bytes that a cache may hold, unless one build uses more
LEFTOVER = 3600             # seconds after which a file written aside belongs to a build that was killed
_MAGIC = b"booklet cache 1\n"
_aside = count()


class Cache:
    """Results by key. Two builds may use one folder at a time."""

    def __init__(self, folder: Path, most: int = MOST, fresh: bool = False) -> None:
        """`fresh`: nothing that is there already is used."""
        self.folder, self.most = folder, most
        self._old: set[str] | None = None if not fresh else set()
        self._since = time.time() - 1   # clocks of file systems may lie behind
        self.written = False

    def get(self, key: str) -> bytes | None:
        """The result of this key; None if it is not there or damaged."""
        if self._old is not None and key not in self._old:
            return None
        path = self._path(key)
        try:
            content = path.read_bytes()
        except OSError:
            return None
        start = len(_MAGIC) + 32
        if not content.startswith(_MAGIC) or sha256(content[start:]).digest() != content[len(_MAGIC):start]:
            return None
        with suppress(OSError):
            os.utime(path)   # used today
        return content[start:]

    def put(self, key: str, result: bytes) -> None:
        """Keep a result. A disk that is full only makes the next build slower."""
        path = self._path(key)
        aside = path.with_name(f".{key}.{os.getpid()}.{next(_aside)}")
        if self._old is not None:
            self._old.add(key)
        try:
            path.parent.mkdir(parents=True, exist_ok=True)
            aside.write_bytes(_MAGIC + sha256(result).digest() + result)
            aside.replace(path)
            self.written = True
        except OSError:
            with suppress(OSError):
                aside.unlink()

    def _path(self, key: str) -> Path:
        return self.folder / key[:2] / key

    def trim(self) -> None:
        """Remove what has not been used for longest, and what killed builds have left, until the rest fits."""
        if not self.written:
            return
        entries, room = [], 0
        for path in self.folder.glob("??/*"):
            with suppress(OSError):
                told = path.stat()
                if path.name.startswith("."):
                    if time.time() - told.st_mtime > LEFTOVER:
                        path.unlink()
                    continue
                entries.append((told.st_mtime, path.name, told.st_size, path))
                room += told.st_size
        for used, _, size, path in sorted(entries):
            if room <= self.most or used > self._since:   # the next build needs what this one has used, however much that is
                break
            with suppress(OSError):
                path.unlink()
            room -= size
