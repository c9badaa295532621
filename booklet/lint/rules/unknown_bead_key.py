"""A bead key stands in the chart, a strand or the hanger, but not in the legend.

A maker would look for a pile of beads that the materials do not list.
"""

from ...findings import Finding, Severity

ID, SEVERITY, NEEDS = "unknown-bead-key", Severity.ERROR, "pattern"


def check(subject):
    """Every such bead, at its place."""
    pattern = subject.pattern
    beads = [bead for row in pattern.chart.rows for line in row.lines for bead in line]
    beads += [bead for strand in pattern.written_strands for bead in (*strand.beads, *strand.end)]
    for bead in dict.fromkeys((*beads, *pattern.hanger_beads)):
        if bead.key not in pattern.legend and ("beads", bead.key) not in pattern.marks:
            yield Finding(bead.mark, SEVERITY, ID, f"the bead key {bead.key} is not in the legend", f"the legend has {', '.join(pattern.legend)}")
