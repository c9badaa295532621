"""A rule's docstring, taken apart: the fault, why it matters, and YAML that has it and YAML that has not."""

from __future__ import annotations

import re
from collections.abc import Iterable
from textwrap import dedent

from msgspec import Struct

from ..errors import WrongUse
from ..source.wording import did_you_mean
from .page_rules import PAGE_RULES
from .registry import Rule, rules

_SNIPPET = re.compile(r"^(Bad|Good):\n\n((?:    .*\n|\n)+)", re.MULTILINE)


class Explanation(Struct, frozen=True):
    """What `--explain` prints, in parts."""

    fault: str               # one sentence
    why: str                 # paragraphs
    bad: tuple[str, ...]     # YAML on which the rule fires
    good: tuple[str, ...]    # YAML in which nothing is found


def explanation(rule: Rule) -> Explanation:
    """Take the docstring of a rule apart."""
    text = rule.text + "\n"
    snippets = _SNIPPET.findall(text)
    fault, _, why = _SNIPPET.sub("", text).strip().partition("\n\n")
    return Explanation(fault, why.strip(), _bodies(snippets, "Bad"), _bodies(snippets, "Good"))


def _bodies(snippets: Iterable[tuple[str, str]], wanted: str) -> tuple[str, ...]:
    return tuple(dedent(body).strip("\n") + "\n" for kind, body in snippets if kind == wanted)


def explain(name: str) -> str:
    """The text of `booklet lint --explain RULE`. Raises WrongUse for a rule that is not there."""
    known = rules()
    if name in PAGE_RULES:
        return f"{name}\n\n{PAGE_RULES[name]}\n"
    if name not in known:
        raise WrongUse(f"there is no rule {name!r} with an explanation",
                       did_you_mean(name, [*known, *PAGE_RULES]) or f"the rules are: {', '.join([*known, *PAGE_RULES])}")
    rule = known[name]
    return f"{rule.id} ({rule.severity})\n\n{rule.text}\n"
