"""The file of the photo is not there.

The page would have a hole where the buyer looks first. The path is counted from patterns/.

Bad:

    photo: {file: photos/morning-cloud.jpg, alt: Two white earrings on slate.}

Good:

    title: Morning Cloud
"""

from __future__ import annotations

from collections.abc import Iterator

from ....findings import Finding, Severity
from ...subject import Subject

ID, SEVERITY, NEEDS = "missing-photo", Severity.ERROR, "photo"


def check(subject: Subject) -> Iterator[Finding]:
    """A photo that is named but is not a file."""
    photo = subject.pattern.photo
    if not (subject.workspace.root / "patterns" / photo.file).is_file():
        yield Finding(subject.pattern.mark("photo", "file"), SEVERITY, ID, f"there is no file patterns/{photo.file}")
