"""The photo has too few pixels for the size at which it is printed.

Printers ask for 300 dots an inch in photos; with fewer, beads turn to mush. This is the photo as the book's page shows it.
"""

from __future__ import annotations

from collections.abc import Iterator

from ....findings import Finding, Severity
from ...photos import photo_path, pixels, printed_width
from ...subject import Subject

ID, SEVERITY, NEEDS = "photo-too-coarse", Severity.WARNING, "photo"

LEAST = 300   # dots an inch; published: a printer's table asks 300 for halftones, 200 at the least


def check(subject: Subject) -> Iterator[Finding]:
    """A photo under that resolution."""
    path = photo_path(subject)
    size = pixels(path) if path else None
    if size:
        width = printed_width(size, subject.book.page)
        found = size[0] / width * 25.4
        if found < LEAST - 0.5:
            yield Finding(subject.pattern.mark("photo", "file"), SEVERITY, ID,
                          f"the photo has {size[0]} x {size[1]} pixels and is printed {width:.0f} mm wide, at {found:.0f} dots an inch; {LEAST} are needed",
                          f"take one that is {_needed(size, subject)} pixels wide or more")


def _needed(size: tuple[int, int], subject: Subject) -> int:
    """Pixels across with which a photo of this shape is printed as large as the page allows."""
    large = (size[0] * 1000, size[1] * 1000)
    return round(printed_width(large, subject.book.page) / 25.4 * LEAST)
