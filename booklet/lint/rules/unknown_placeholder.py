"""A text names something in double braces that booklet cannot fill in.

The number would be missing from the sentence, so the book cannot be built.

Bad:

    notes: |
      The base row has {{ base.stiches }} stitches.

Good:

    notes: |
      The base row has {{ base.stitches }} stitches; a piece takes {{ beads.W.piece }} {{ beads.W.name }}.
"""

from __future__ import annotations

from collections.abc import Iterator

from ...findings import Finding, Mark, Severity
from ...source.files import mark_at
from ...source.wording import did_you_mean, either, quoted
from ..placeholders import ON_PAGES, PLACEHOLDER, names
from ..subject import Subject

ID, SEVERITY, NEEDS = "unknown-placeholder", Severity.ERROR, "prose"


def check(subject: Subject) -> Iterator[Finding]:
    """Every unknown name in the notes and steps of a pattern, or in the pages of the book."""
    yield from _in_pattern(subject) if subject.pattern else _in_pages(subject)


def _in_pattern(subject: Subject) -> Iterator[Finding]:
    pattern, known = subject.pattern, names(subject.pattern.legend)
    prose = {("notes",): pattern.notes}
    prose |= {("steps", name, part): getattr(step, part) for name, step in pattern.steps.items() for part in ("before", "text", "after")}
    for tag, told in pattern.translations.items():
        prose[("translations", tag, "notes")] = told.notes or ""
        prose |= {("translations", tag, "steps", name, part): getattr(step, part) for name, step in (told.steps or {}).items() if step for part in ("before", "text", "after")}
    for path, words in prose.items():
        if "{{" in words:
            yield from _unknown(words, known, subject.text(pattern.file), pattern.mark(*path), "")


def _in_pages(subject: Subject) -> Iterator[Finding]:
    for page in dict.fromkeys((*subject.book.front, *subject.book.back)):
        file = f"patterns/pages/{page}.md"
        words = subject.text(file)
        yield from _unknown(words, tuple(ON_PAGES), words, Mark(file), f"a page may name {either(ON_PAGES)}")


def _unknown(words: str, known: tuple[str, ...], text: str, start: Mark, hint: str) -> Iterator[Finding]:
    """Unknown names in `words`, which stand in the text of a file from the line of `start` on."""
    offset = len("".join(text.splitlines(keepends=True)[:start.line - 1]))
    for match in PLACEHOLDER.finditer(words):
        if match[1] not in known:
            at = text.find(match[0], offset)  # not found where YAML has folded it
            mark = start if at < 0 else mark_at(text, at, start.file, len(match[0]))
            offset = max(offset, at + 1)
            yield Finding(mark, SEVERITY, ID, f"the placeholder {quoted(match[1])} is not known", did_you_mean(match[1], known) or hint)
