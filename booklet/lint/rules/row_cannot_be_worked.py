"""A row cannot be hung on the row before it.

Every edge moves by half a stitch a row, and a row hangs on the thread bridges of the one under it.
"""

from ...findings import Finding, Severity

ID, SEVERITY, NEEDS = "row-cannot-be-worked", Severity.ERROR, "piece"


def check(subject):
    """Every reason, at its row."""
    for fault in subject.faults:
        yield Finding(subject.pattern.mark("row", fault.row), SEVERITY, ID, fault.what, fault.cure)
