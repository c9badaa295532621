"""The file of the photo is there, but it is no picture that can be printed.

It may be damaged, or another sort of file with the name of a picture. The page would have a hole where the buyer looks first.
The path is counted from patterns/; photos are JPEG, PNG or WebP.

Bad:

    photo: {file: book.yaml, alt: Two white earrings on slate.}

Good:

    title: Morning Cloud
"""

from __future__ import annotations

from collections.abc import Iterator

from ....findings import Finding, Severity
from ...photos import photo_path, pixels
from ...subject import Subject

ID, SEVERITY, NEEDS = "unreadable-photo", Severity.ERROR, "photo"


def check(subject: Subject) -> Iterator[Finding]:
    """A photo that is a file but no picture."""
    path = photo_path(subject)
    if path and pixels(path) is None:
        yield Finding(subject.pattern.mark("photo", "file"), SEVERITY, ID, f"patterns/{subject.pattern.photo.file} is not a picture that can be read",
                      "save it as JPEG, PNG or WebP")
