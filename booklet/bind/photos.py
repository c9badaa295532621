"""Photos of finished pieces: found and read once, and named after their pattern in every output."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path, PurePosixPath

from ..errors import FindingsError
from ..findings import Finding, Severity
from ..source.files import inside
from ..source.pattern import Pattern

LARGEST_PHOTO = 40 * 1024 * 1024   # bytes
KINDS = (".jpg", ".jpeg", ".png", ".webp")


def photo_name(pattern: Pattern) -> str:
    """The address of a pattern's photo on a page; empty if it has none. Nothing of the author's own folders is in it."""
    return f"photos/{pattern.slug}{PurePosixPath(pattern.photo.file).suffix.lower()}" if pattern.photo else ""


def photos(root: Path, patterns: Iterable[Pattern]) -> dict[str, bytes]:
    """The photos by their names. Raises FindingsError for those that cannot be used."""
    found, wrong = {}, []
    for pattern in patterns:
        if pattern.photo:
            path = root / "patterns" / pattern.photo.file
            reason = _reason(path, root)
            if reason:
                wrong.append(Finding(pattern.mark("photo", "file"), Severity.ERROR, "unusable-photo", f"the photo {pattern.photo.file} {reason}"))
            else:
                found[photo_name(pattern)] = path.read_bytes()
    if wrong:
        raise FindingsError(wrong)
    return found


def _reason(path: Path, root: Path) -> str:
    if not inside(path, root):
        return "lies outside the workspace"
    if path.suffix.lower() not in KINDS:
        return f"is not one of {', '.join(KINDS)}"
    if not path.is_file():
        return "is not there"
    return "is larger than 40 MiB" if path.stat().st_size > LARGEST_PHOTO else ""
