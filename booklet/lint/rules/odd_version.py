"""The version is not written as two numbers with a point, such as 1.0 or 2.1.

The version stands at the foot of every page and in the file's name, and buyers compare it with the list of corrections: "1", "1.0"
and "1.0.0" look like three versions.

Bad:

    version: "1"

Good:

    version: "1.0"
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from ...findings import Finding, Severity
from ..subject import Subject

ID, SEVERITY, NEEDS = "odd-version", Severity.NOTE, "pattern"


def check(subject: Subject) -> Iterator[Finding]:
    """A version of another form; what is no version at all, reading has said."""
    version = subject.pattern.version
    if version and not re.fullmatch(r"(?:0|[1-9][0-9]*)\.(?:0|[1-9][0-9]*)", version):
        parts = [str(int(part)) for part in version.split(".")]
        yield Finding(subject.pattern.mark("version"), SEVERITY, ID, f"the version {version} is not two numbers with a point",
                      f'write "{".".join((parts + ["0"])[:2])}"' if len(parts) < 3 else "")
