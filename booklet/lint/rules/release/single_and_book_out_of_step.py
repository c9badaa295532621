"""A single was released in a newer version than the one in the released book.

Buyers of the book work from what has been corrected since. `booklet release --book` publishes the book again, with a
list of corrections.

Bad:

    # patterns/releases.yaml
    - pattern: morning-cloud
      version: "0.8"
      stitched: 0123456789abcdef
      printed: 0123456789abcdef
    - book: First edition
      patterns: {morning-cloud: "0.8"}
    - pattern: morning-cloud
      version: "0.9"
      stitched: 0123456789abcdef
      printed: 0123456789abcdef

Good:

    # patterns/releases.yaml
    - pattern: morning-cloud
      version: "1.0"
      stitched: cb653c3354b14683
      printed: ae6784b1e9214a81
    - book: First edition
      patterns: {morning-cloud: "1.0"}
"""

from __future__ import annotations

from collections.abc import Iterator

from ....findings import Finding, Severity
from ...subject import Subject

ID, SEVERITY, NEEDS = "single-and-book-out-of-step", Severity.WARNING, "release"


def check(subject: Subject) -> Iterator[Finding]:
    """The two versions, where the last book that was released and the last single differ."""
    pattern, releases = subject.pattern, subject.workspace.releases
    last = releases.last(pattern.slug)
    in_book = releases.books[-1].patterns.get(pattern.slug) if releases.books else None
    if last and in_book and releases.at(pattern.slug, in_book) != last:
        yield Finding(pattern.mark("version"), SEVERITY, ID,
                      f"version {last.version} was released as a single, but {releases.books[-1].edition} of the book has {in_book}",
                      "booklet release --book publishes the book again")
