"""A rule's docstring, taken apart: the fault, why it matters, and YAML that has it and has not."""

from __future__ import annotations

import re
from dataclasses import dataclass
from textwrap import dedent

from .registry import Rule

_SNIPPET = re.compile(r"^(Bad|Good):\n\n((?:    .*\n|\n)+)", re.MULTILINE)


@dataclass(frozen=True)
class Explanation:
    """What `--explain` prints, in parts."""

    fault: str               # one sentence
    why: str                 # paragraphs
    bad: tuple[str, ...]     # YAML on which the rule fires
    good: tuple[str, ...]    # YAML in which nothing is found


def explanation(rule: Rule) -> Explanation:
    """Take the docstring of a rule apart."""
    text = rule.text.rstrip("\n") + "\n"
    snippets = _SNIPPET.findall(text)
    prose = _SNIPPET.sub("", text).strip()
    fault, _, why = prose.partition("\n\n")
    bad, good = (tuple(dedent(body).strip("\n") + "\n" for kind, body in snippets if kind == wanted) for wanted in ("Bad", "Good"))
    return Explanation(fault.strip(), why.strip(), bad, good)


def explain(rule: Rule) -> str:
    """The text of `booklet lint --explain RULE`."""
    return f"{rule.id} ({rule.severity})\n\n{rule.text.strip()}\n"
