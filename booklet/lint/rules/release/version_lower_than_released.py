"""The version of a pattern is lower than one that was released.

A buyer with the higher version would take the new file for the older one. Mostly an old copy of the file has come back.

Bad:

    # patterns/releases.yaml
    - pattern: morning-cloud
      version: "1.1"
      stitched: 0123456789abcdef
      printed: 0123456789abcdef

Good:

    # patterns/releases.yaml
    - pattern: morning-cloud
      version: "1.0"
      stitched: cb653c3354b14683
      printed: ae6784b1e9214a81
"""

from __future__ import annotations

from collections.abc import Iterator

from ....findings import Finding, Severity
from ...subject import Subject

ID, SEVERITY, NEEDS = "version-lower-than-released", Severity.ERROR, "release"


def check(subject: Subject) -> Iterator[Finding]:
    """The two versions, where the released one is higher."""
    pattern, releases = subject.pattern, subject.workspace.releases
    last = releases.last(pattern.slug) if pattern.version else None
    if last and last.is_newer_than(pattern.version):
        yield Finding(pattern.mark("version"), SEVERITY, ID, f"the version is {pattern.version}, but {last.version} was released already",
                      "raise the version above it")
