"""What the translations of a pattern name, held against the pattern."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from .languages import check_language
from .reader import Reader
from .schema import PatternWords
from .wording import did_you_mean, quoted


def check_translations(translations: Mapping[str, PatternWords], keys: Iterable[str], ways: Mapping[str, Iterable[str]], items: Iterable[str],
                       labels: Iterable[str], reader: Reader) -> None:
    """A finding for each language that there is not, and for each bead, colourway, finding and link that the pattern does not have."""
    keys, items, labels = tuple(keys), tuple(items), tuple(labels)
    for tag, words in translations.items():
        path = ("translations", tag)
        check_language(tag, reader, path)
        _check(words.beads, keys, "bead key", (*path, "beads"), reader)
        _check(words.findings, items, "finding", (*path, "findings"), reader)
        _check(words.links, labels, "link", (*path, "links"), reader)
        _check(words.colourways, ways, "colourway", (*path, "colourways"), reader)
        for name, way in (words.colourways or {}).items():
            if way and name in ways:
                _check(way.beads, tuple(ways[name]), "bead key", (*path, "colourways", name, "beads"), reader)


def _check(named: Mapping[str, object] | None, known: Iterable[str], what: str, path: tuple, reader: Reader) -> None:
    for name in named or ():
        if name not in known and (*path, name) in reader.marks:
            reader.find_at(reader.marks[(*path, name)], "unknown-name", f"the pattern has no {what} {quoted(name)} to translate", did_you_mean(name, known))
