"""A strand has no end bead: the needle has nothing to turn on."""

from ...findings import Finding, Severity

ID, SEVERITY, NEEDS = "strand-without-end-bead", Severity.ERROR, "pattern"


def check(subject):
    """Every such strand."""
    for number, strand in enumerate(subject.pattern.written_strands, 1):
        if not strand.end:
            yield Finding(strand.mark, SEVERITY, ID, f"strand {number} has no end bead", "write fringe.end, or > and the end beads after the strand")
