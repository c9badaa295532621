"""Findings as SARIF 2.1.0 (OASIS Standard), which code hosts and editors read."""

from __future__ import annotations

import json
from typing import Any
from urllib.parse import quote

from .. import __version__
from ..findings import Finding
from ..source.wording import shown
from .explain import explanation
from .registry import rules
from .run import Checked

SCHEMA = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"
ROOT = "SRCROOT"   # what the files' addresses are counted from; where that is, the reader of the log knows


def as_sarif(checked: Checked) -> str:
    """One log of one run. What the patterns allow is in it too, as suppressed, with the reason."""
    every = [(finding, None) for finding in checked.findings] + list(checked.allowed)
    every.sort(key=lambda entry: entry[0])
    ids = sorted({finding.rule for finding, _ in every})
    results = [_result(finding, reason, ids.index(finding.rule)) for finding, reason in every]
    driver = {"name": "booklet", "version": __version__, "rules": [_rule(name) for name in ids]}
    run = {"tool": {"driver": driver}, "columnKind": "unicodeCodePoints", "results": results}
    return json.dumps({"$schema": SCHEMA, "version": "2.1.0", "runs": [run]}, ensure_ascii=False, indent=1)


def _rule(name: str) -> dict[str, Any]:
    """What a log says about a rule; the faults of reading have a name alone."""
    rule = rules().get(name)
    if rule is None:
        return {"id": name}
    told = explanation(rule)
    return {"id": name, "shortDescription": {"text": told.fault}, "fullDescription": {"text": " ".join(told.why.split())},
            "help": {"text": rule.text}, "defaultConfiguration": {"level": str(rule.severity)}}


def _result(finding: Finding, reason: str | None, index: int) -> dict[str, Any]:
    mark = finding.mark
    text = f"{finding.message}. {finding.hint[:1].upper()}{finding.hint[1:]}" if finding.hint else finding.message
    place = {"artifactLocation": {"uri": quote(mark.file), "uriBaseId": ROOT},
             "region": {"startLine": mark.line, "startColumn": mark.column, "endColumn": mark.column + mark.width}}
    result = {"ruleId": finding.rule, "ruleIndex": index, "level": str(finding.severity), "message": {"text": shown(text, 2000)},
              "locations": [{"physicalLocation": place}]}
    return result if reason is None else {**result, "suppressions": [{"kind": "inSource", "justification": reason}]}
