"""What pages run to follow their sources, in the language of each page."""

from __future__ import annotations

from pathlib import Path

from ..bind.web.files import script_in
from ..source.languages import ENGLISH, is_known

SCRIPTS = ("words.js", "live.js")


def following(root: Path, tag: str) -> str:
    """The script for pages in a language; in English for one that booklet does not speak."""
    return script_in(tag if is_known(tag) else ENGLISH, root, SCRIPTS)
