"""The words that the scripts of the pages say, in the language of the pages."""

from __future__ import annotations

import json
import re

from ...craft import language

_TEXT = r'("(?:[^"\\]|\\.)*")'
_CALL = re.compile(rf"\b_\({_TEXT}|\bngettext\({_TEXT}, {_TEXT}")


def words_for(script: str) -> str:
    """Declarations that words.js reads: the translation of every text that the script says."""
    spoken, words = language.spoken(), {}
    for text, one, _many in ((json.loads(quoted) if quoted else "" for quoted in found) for found in _CALL.findall(script)):
        forms = spoken.messages.get(("", text or one))
        if forms:
            words[text or one] = list(forms) if one else forms[0]
    return f"var WORDS = {json.dumps(words, ensure_ascii=False, sort_keys=True)};\nfunction PLURAL(n) {{ return {spoken.plural_rule}; }}\n"
