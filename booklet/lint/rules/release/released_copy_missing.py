"""The file of an earlier release is not there, so nobody can tell what has changed since.

`booklet release` keeps a copy of every file that it releases in patterns/releases/. The page of corrections is made from it.

Bad:

    # patterns/releases.yaml
    - pattern: morning-cloud
      version: "0.9"
      stitched: 0123456789abcdef
      printed: 0123456789abcdef

Good:

    # patterns/book.yaml
    title: Weather for Wearing
    order: [morning-cloud]
"""

from __future__ import annotations

from collections.abc import Iterator

from ....findings import Finding, Severity
from ...subject import Subject

ID, SEVERITY, NEEDS = "released-copy-missing", Severity.ERROR, "release"


def check(subject: Subject) -> Iterator[Finding]:
    """The copy of the release before this version, where it is not a file."""
    pattern, releases = subject.pattern, subject.workspace.releases
    before = releases.before(pattern.slug, pattern.version) if pattern.version else None
    if before and not (subject.workspace.root / before.copy).is_file():
        yield Finding(before.mark, SEVERITY, ID, f"there is no file {before.copy}, the copy of what was released",
                      "bring it back, or take this release out of the file")
