"""The lines of one row do not have their beads in the same columns.

A set with a bead missing, or one too many, cannot be counted or worked.
"""

from ...findings import Finding, Severity

ID, SEVERITY, NEEDS = "ragged-set", Severity.ERROR, "pattern"


def check(subject):
    """The first stitch of each row that is not whole."""
    for row in subject.pattern.chart.rows:
        first = {bead.at for bead in row.lines[0]}
        for line in row.lines[1:]:
            odd = sorted(first ^ {bead.at for bead in line})
            if odd:
                mark = next((bead.mark for one in row.lines for bead in one if bead.at == odd[0]), row.mark)
                yield Finding(mark, SEVERITY, ID, f"this stitch has fewer than {len(row.lines)} beads: the lines of its row do not match")
                break
