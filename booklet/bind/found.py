"""What lint found in a pattern, kept beside the parts of a book: a pattern whose file has not changed is not looked at again.

Only what most rules find is kept. Rules in the folders of registry.SELDOM read other files, or other patterns, and always run.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Iterable
from hashlib import sha256

from ..findings import Finding, Mark, Severity
from ..lint.subject import Subject
from .press.cache import Cache
from .press.versions import code_digest


class Found:
    """Findings of patterns, in a cache; what booklet.lint.run calls `kept`."""

    def __init__(self, cache: Cache) -> None:
        self.cache = cache

    def __call__(self, subject: Subject, look: Callable[[Subject], Iterable[Finding]]) -> list[Finding]:
        """What was found in the pattern of a subject; where that is not known, what `look` finds."""
        key = _key(subject)
        content = self.cache.get(key)
        if content is not None:
            return [Finding(Mark(*mark), Severity(severity), *rest) for mark, severity, *rest in json.loads(content)]
        found = list(look(subject))
        self.cache.put(key, json.dumps([[list(one.mark), int(one.severity), *one[2:]] for one in found]).encode())
        return found


def _key(subject: Subject) -> str:
    """A digest of all that those rules look at: the pattern, the book, and what else is called by which title."""
    pattern, book = subject.pattern, subject.book
    titles = sorted((slug, other.title) for slug, other in subject.workspace.patterns.items())
    return sha256(repr(("lint", code_digest(), pattern.file, pattern.slug, subject.text(pattern.file), subject.text(book.file) if book.file else "", titles)).encode()).hexdigest()
