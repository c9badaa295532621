"""What is stitched has changed since this version was released, but the version has not.

Two buyers with the same version on the page would stitch two different pieces, and nobody could tell which file is
right. Raise the version; `booklet release` then writes the list of corrections.

Bad:

    # patterns/releases.yaml
    - pattern: morning-cloud
      version: "1.0"
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

ID, SEVERITY, NEEDS = "chart-changed-version-not", Severity.ERROR, "release"


def check(subject: Subject) -> Iterator[Finding]:
    """Once, with the counts that have changed."""
    pattern, releases = subject.pattern, subject.workspace.releases
    release = releases.at(pattern.slug, pattern.version)
    if release is None or pattern.piece is None:
        return
    from ....craft.tally import hand_counts, tally   # loaded here, because most patterns are not yet released
    from ....source.content import stitched

    if stitched(pattern) != release.stitched:
        now = {**hand_counts(pattern.piece), **{line.key: line.piece for line in tally(pattern.piece).lines}}
        was = {**release.counted, **release.beads}
        changed = ", ".join(f"{name} {was[name]}, now {now[name]}" for name in now if name in was and was[name] != now[name])
        yield Finding(pattern.mark("version"), SEVERITY, ID,
                      f"chart, fringe or beads have changed since version {release.version} was released, but the version has not"
                      + (f": {changed}" if changed else ""), "raise the version")
