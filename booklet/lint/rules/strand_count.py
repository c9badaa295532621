"""There is not one strand under each stitch of the base row."""

from ...findings import Finding, Severity

ID, SEVERITY, NEEDS = "strand-count", Severity.ERROR, "piece"


def check(subject):
    """The two numbers."""
    strands, base = len(subject.piece.strands), len(subject.piece.base.stitches)
    if strands and strands != base:
        yield Finding(subject.pattern.mark("fringe"), SEVERITY, ID, f"the fringe has {strands} strands, but the base row has {base} stitches")
