"""The findings list no guard or ring for the hanger, or a ring of another size.

The list of findings is what a buyer shops from. What it forgets is missed when the body is done and the ear wire is to be hung.

Bad:

    hanger: {kind: guard}
    findings:
      - {item: ear wire, each: 1}

Good:

    hanger: {kind: guard}
    findings:
      - {item: thread guard, size: 4 mm, each: 1}
      - {item: ear wire, each: 1}
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from ...findings import Finding, Severity
from ...source.measures import millimetres
from ...source.pattern import WrittenHanger
from ..subject import Subject

ID, SEVERITY, NEEDS = "hanger-not-in-findings", Severity.WARNING, "pattern"

_CALLED = {"guard": ("thread guard", r"guard|protector"), "ring": ("closed ring", r"\b(?:ring|link|connector)s?\b")}
_NEAR = 0.5   # mm between the sizes of one ring: across its outside, or from middle to middle of its wire


def check(subject: Subject) -> Iterator[Finding]:
    """Each such hanger, where the pattern or its book list findings at all."""
    pattern = subject.pattern
    for written in pattern.hangers if pattern.findings_list and subject.is_english else ():
        if written.hanger.kind in _CALLED:
            yield from _missing(subject, written)


def _missing(subject: Subject, written: WrittenHanger) -> Iterator[Finding]:
    pattern, hanger = subject.pattern, written.hanger
    name, words = _CALLED[hanger.kind]
    listed = [item for item in pattern.findings_list if re.search(words, item.item, re.IGNORECASE)]
    sizes = [millimetres(item.size) for item in listed]
    if not listed:
        yield Finding(pattern.mark(*written.path), SEVERITY, ID, f"the hanger is a {name}, but the findings list none", f"add {name} under findings:")
    elif (*written.path, "size") in pattern.marks and all(size is not None and abs(size - hanger.size) > _NEAR for size in sizes):
        yield Finding(pattern.mark(*written.path, "size"), SEVERITY, ID, f"the ring of the hanger is {hanger.size:g} mm across, but the findings list {listed[0].item}, {listed[0].size}")
