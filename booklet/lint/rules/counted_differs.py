"""What the author counted by hand is not what the chart has."""

from ...craft.tally import tally
from ...findings import Finding, Severity

ID, SEVERITY, NEEDS = "counted-differs", Severity.ERROR, "piece"


def check(subject):
    """Every count that differs."""
    piece = subject.piece
    found = {"base": len(piece.base.stitches), "rows": len(piece.rows), "strands": len(piece.strands), "beads": tally(piece).beads}
    for name, counted in subject.pattern.counted.items():
        if counted != found[name]:
            yield Finding(subject.pattern.mark("counted", name), SEVERITY, ID, f"counted.{name} is {counted}, but the pattern has {found[name]}")
