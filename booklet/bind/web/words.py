"""What the scripts of the pages say, in the language of the pages: the build writes it into the scripts in place of the English."""

from __future__ import annotations

import json
import re

from ...craft import language

_TEXT = r'("(?:[^"\\]|\\.)*")'
_SAID = re.compile(rf"\b_\({_TEXT}")
_COUNTED = re.compile(rf"\bngettext\({_TEXT}, {_TEXT}")
_RULE = re.compile(r"\bPLURAL\b")


def said_by(script: str) -> str:
    """The script with its texts in the language of the moment, and the rule by which that chooses the form for a number `n`."""
    spoken = language.spoken()

    def said(found: re.Match) -> str:
        text = json.loads(found[1])
        return f"_({_quoted(*spoken.messages.get(('', text)) or [text])}"

    def counted(found: re.Match) -> str:
        one, many = map(json.loads, found.groups())
        return f"ngettext([{_quoted(*spoken.messages.get(('', one)) or (one, many))}]"

    return _RULE.sub(lambda _: f"+({spoken.plural_rule})", _COUNTED.sub(counted, _SAID.sub(said, script)))


def _quoted(*texts: str) -> str:
    return ", ".join(json.dumps(text, ensure_ascii=False) for text in texts)
