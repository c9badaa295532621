"""The text for those who cannot see the photo says nothing of it.

A file name, the title or one word is read out to a maker who uses a screen reader, and leaves her with nothing.

Bad:

    photo: {file: photos/cloud.jpg, alt: IMG_2041.jpg}

Good:

    title: Morning Cloud
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from ....findings import Finding, Severity
from ....source.wording import quoted
from ...subject import Subject

ID, SEVERITY, NEEDS = "useless-alt-text", Severity.WARNING, "photo"

_FILE = re.compile(r"\.(?:jpe?g|png|webp|gif|tiff?|heic)$|^(?:img|dsc|dscn|pxl)[_-]?[0-9]+", re.IGNORECASE)


def check(subject: Subject) -> Iterator[Finding]:
    """An alternative text that is one word, a file name or the title."""
    pattern = subject.pattern
    alt = pattern.photo.alt
    if alt and (" " not in alt.strip() or _FILE.search(alt) or alt.casefold().strip(". ") == pattern.title.casefold()):
        yield Finding(pattern.mark("photo", "alt"), SEVERITY, ID, f"the alternative text {quoted(alt)} does not say what the photo shows",
                      "say what is seen: two white earrings with a blue fringe, on slate")
