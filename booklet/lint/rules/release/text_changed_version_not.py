"""The words of a pattern have changed since this version was released, but the version has not.

What is stitched is the same, but notes, steps, thread, findings or other texts are not. A buyer who asks about a sentence has
another one than the designer.

Bad:

    # patterns/releases.yaml
    - pattern: morning-cloud
      version: "1.0"
      stitched: cb653c3354b14683
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

ID, SEVERITY, NEEDS = "text-changed-version-not", Severity.WARNING, "release"


def check(subject: Subject) -> Iterator[Finding]:
    """Once, with what else a maker goes by that has changed."""
    pattern, releases = subject.pattern, subject.workspace.releases
    release = releases.at(pattern.slug, pattern.version)
    if release is None or pattern.piece is None:
        return
    from ....source.content import facts, printed, stitched   # loaded here, because most patterns are not yet released

    if printed(pattern) != release.printed and stitched(pattern) == release.stitched:
        now = facts(pattern)
        changed = ", ".join(name for name in sorted({*now, *release.facts}) if now.get(name) != release.facts.get(name)) if release.facts else ""
        yield Finding(pattern.mark("version"), SEVERITY, ID,
                      f"texts have changed since version {release.version} was released, but the version has not" + (f": {changed}" if changed else ""),
                      "raise the version")
