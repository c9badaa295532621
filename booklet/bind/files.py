"""Writing results: all at once, aside first and then renamed, so that a failed build leaves the earlier files."""

from __future__ import annotations

import os
import re
import shutil
import unicodedata
from collections.abc import Mapping
from contextlib import suppress
from pathlib import Path

from ..errors import UnwritableOutput
from .press.scratch import Scratch

COPIED = 1 << 20   # bytes at a time


def file_name(title: str) -> str:
    """A title as a file name: small letters, digits and hyphens."""
    plain = unicodedata.normalize("NFKD", title).encode("ascii", "ignore").decode().lower()
    return re.sub("[^a-z0-9]+", "-", plain).strip("-") or "book"


def write_file(path: Path, content: bytes | Scratch) -> Path:
    """Write one file aside and rename it into place. One that was there keeps its permissions."""
    aside = path.with_name(f".{path.name}.{os.getpid()}")
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        if isinstance(content, bytes):
            aside.write_bytes(content)
        else:
            content.file.seek(0)
            with aside.open("wb") as written:
                shutil.copyfileobj(content.file, written, COPIED)
        if path.exists():
            shutil.copymode(path, aside)
        aside.replace(path)
    except OSError as error:
        with suppress(OSError):
            aside.unlink()
        raise unwritable(path, error) from None
    return path


def write_folder(folder: Path, contents: Mapping[str, bytes]) -> Path:
    """Write a whole folder aside and put it in the place of the earlier one. Names are relative, with slashes."""
    aside, old = (folder.with_name(f".{folder.name}.{what}.{os.getpid()}") for what in ("new", "old"))
    try:
        for name, content in contents.items():
            target = aside / name
            target.parent.mkdir(parents=True, exist_ok=True)
            target.write_bytes(content)
        if folder.exists():
            folder.replace(old)
        aside.replace(folder)
    except OSError as error:
        if old.exists() and not folder.exists():
            old.replace(folder)
        raise unwritable(folder, error) from None
    finally:
        for leftover in (aside, old):
            shutil.rmtree(leftover, ignore_errors=True)
    return folder


def update_folder(folder: Path, contents: Mapping[str, bytes]) -> list[str]:
    """Write the files of a folder that differ, delete what else is in it, and give the names of both. For pages that are looked at meanwhile."""
    changed = []
    try:
        for path in sorted(folder.rglob("*")) if folder.is_dir() else ():
            name = path.relative_to(folder).as_posix()
            if name not in contents and not path.is_dir():
                path.unlink()
                changed.append(name)
    except OSError as error:
        raise unwritable(path, error) from None
    for name, content in contents.items():
        path = folder / name
        if path.is_symlink() or not path.is_file() or path.read_bytes() != content:
            write_file(path, content)
            changed.append(name)
    return changed


def unwritable(path: Path, error: OSError) -> UnwritableOutput:
    """The error to raise when a result has no place to go."""
    return UnwritableOutput(f"{path.name} cannot be written: {(error.strerror or str(error)).lower()}",
                            "close programs that have it open, and check the folder build/")
