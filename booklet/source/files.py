"""Files of a workspace to text: only regular files inside it, only UTF-8, only so large."""

from __future__ import annotations

import os
import re
import stat
from codecs import BOM_UTF8
from collections.abc import Iterator
from pathlib import Path

from ..findings import Finding, Mark, Severity
from .wording import shown

LARGEST_FILE = 1024 * 1024   # bytes; a long pattern takes about 8,000
MOST_CHARACTERS = 20         # strange characters reported in one file

# What YAML calls not printable, plus the line and paragraph separators that no editor counts as lines.
_STRANGE = "[^\t\n\r\x20-\x7e\xa0-\u2027\u202a-\ud7ff\ue000-\ufefe\uff00-\ufffd\U00010000-\U0010ffff]"


def strange_characters(text: str) -> Iterator[re.Match[str]]:
    """Characters that no text file should hold. None of them is printable, which is quickly asked of a whole text."""
    if text.replace("\n", " ").replace("\r", " ").replace("\t", " ").isprintable():
        return iter(())
    return re.finditer(_STRANGE, text)


def read_file(path: Path, root: Path) -> tuple[str | None, list[Finding]]:
    """The text of a file under `root`; None with findings where it cannot be read."""
    name = name_in(path, root)
    try:
        if not inside(path, root):
            return None, [_finding(Mark(name), "outside-workspace", f"{name} leads outside the workspace",
                                   "put the file itself here, not a link to it")]
        data = _bytes_of(path)
    except (OSError, RuntimeError, ValueError) as error:   # RuntimeError: a loop of links in older Pythons
        reason = getattr(error, "strerror", None) or "it is a loop of links"
        return None, [_finding(Mark(name), "unreadable-file", f"{name} cannot be read: {reason[:1].lower()}{reason[1:]}")]
    if data is None:
        return None, [_finding(Mark(name), "unreadable-file", f"{name} is not a file")]
    return decode(data, name)


def decode(data: bytes, name: str) -> tuple[str | None, list[Finding]]:
    """Bytes to text; a byte order mark is dropped."""
    if len(data) > LARGEST_FILE:
        return None, [_too_large(name)]
    try:
        text = data.removeprefix(BOM_UTF8).decode()
    except UnicodeDecodeError as error:
        before = error.object[:error.start]
        line = before.count(b"\n") + 1
        column = len(before[before.rfind(b"\n") + 1:].decode("utf-8", "replace")) + 1
        return None, [_finding(Mark(name, line, column), "not-utf-8",
                               f"byte 0x{error.object[error.start]:02x} is not UTF-8 text", "save the file as UTF-8")]
    return checked(text, name)


def checked(text: str, name: str) -> tuple[str | None, list[Finding]]:
    """The text without a byte order mark; None with findings where it holds what no text file should."""
    text = text[1:] if text.startswith("\ufeff") else text
    if len(text) > LARGEST_FILE:
        return None, [_too_large(name)]
    found = []
    for match in strange_characters(text):
        found.append(_finding(mark_at(text, match.start(), name), "strange-character",
                              f"the invisible character U+{ord(match.group()):04X} may not stand here", "delete it"))
        if len(found) == MOST_CHARACTERS:
            break
    return (None if found else text), found


def mark_at(text: str, offset: int, name: str, width: int = 1) -> Mark:
    """The place of a character of a text."""
    lines = re.split("\r\n|\r|\n", text[:offset])
    return Mark(name, len(lines), len(lines[-1]) + 1, width)


def inside(path: Path, root: Path) -> bool:
    """Whether a path, with all links followed, stays under `root`."""
    return Path(os.path.realpath(path)).is_relative_to(os.path.realpath(root))


def name_in(path: Path, root: Path) -> str:
    """The path as findings show it: relative to the workspace, with slashes, and printable."""
    try:
        path = path.relative_to(root)
    except ValueError:
        pass
    return shown(path.as_posix(), 400)


def _bytes_of(path: Path) -> bytes | None:
    """Up to one byte more than may be; None if this is not a regular file (a pipe would never end)."""
    if not stat.S_ISREG(path.stat().st_mode):
        return None
    with path.open("rb") as file:
        return file.read(LARGEST_FILE + 1)


def _too_large(name: str) -> Finding:
    return _finding(Mark(name), "too-large", "the file is larger than 1 MiB, the most that is read")


def _finding(mark: Mark, rule: str, message: str, hint: str = "") -> Finding:
    return Finding(mark, Severity.ERROR, rule, message, hint)


