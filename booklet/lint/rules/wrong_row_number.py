"""The number before the bar is not the number of the row.

Rows are numbered from the base row, in the order in which they are worked.
"""

from ...findings import Finding, Severity

ID, SEVERITY, NEEDS = "wrong-row-number", Severity.ERROR, "piece"


def check(subject):
    """Every wrong number."""
    numbers = {subject.pattern.marks["row", row.number]: row.number for row in subject.piece.rows}
    for row in subject.pattern.chart.rows:
        if row.written is not None and row.written != numbers[row.mark]:
            yield Finding(row.number_mark, SEVERITY, ID, f"this row is numbered {row.written}, but it is row {numbers[row.mark]}")
