"""A workspace with its texts in the language of an edition: translated where there is a translation, else marked as being in their own."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from contextlib import contextmanager
from typing import TypeVar

from msgspec.structs import replace

from ..craft.beads import Bead
from ..craft.language import speaking
from ..craft.piece import Piece
from ..craft.strand import Charm, Strand, Twig
from ..source.book import Book
from ..source.languages import base_of
from ..source.pattern import Pattern
from ..source.schema import BookWords, Item, Link, PatternWords, Photo, StepText, WayWords
from ..source.workspace import Workspace
from .catalogue import language
from .passages import passage

Words = TypeVar("Words")
Say = Callable[[str, "str | None"], str]   # a text and its translation to what is printed


@contextmanager
def printing(workspace: Workspace, tag: str) -> Iterator[Workspace]:
    """The workspace as it is printed in a language; everything that is made meanwhile is in that language."""
    with speaking(language(tag)):
        yield in_language(workspace, tag)


def in_language(workspace: Workspace, tag: str) -> Workspace:
    """The workspace as it is printed in a language."""
    book = workspace.book
    return replace(workspace, book=_book(book, tag), patterns={slug: pattern_in(pattern, tag, book) for slug, pattern in workspace.patterns.items()})


def pattern_in(pattern: Pattern, tag: str, book: Book) -> Pattern:
    """A pattern of the book as it is printed in a language."""
    if base_of(pattern.language) == base_of(tag):
        return pattern
    words, say = _words(pattern.translations, tag, PatternWords()), _say(pattern.language)
    legend = _legend(pattern.legend, words.beads or {}, say)
    items = {**(_words(book.translations, tag, BookWords()).findings or {}), **(words.findings or {})}
    return replace(
        pattern, title=say(pattern.title, words.title), summary=say(pattern.summary, words.summary), notes=say(pattern.notes, words.notes), legend=legend,
        written_findings=tuple(item.item for item in pattern.findings_list),
        findings_list=tuple(Item(say(item.item, items.get(item.item)), item.size, item.each) for item in pattern.findings_list),
        photo=Photo(pattern.photo.file, say(pattern.photo.alt, words.photo)) if pattern.photo else None,
        links=tuple(Link(say(link.label, (words.links or {}).get(link.label)), link.url) for link in pattern.links),
        steps=_steps(pattern.steps, words.steps or {}, say), colourways=_ways(pattern.colourways, words.colourways or {}, say),
        piece=_piece(pattern.piece, legend, items) if pattern.piece else None)


def _words(translations: Mapping[str, Words], tag: str, none: Words) -> Words:
    """The translation for a tag, or for its language."""
    return translations.get(tag) or next((words for name, words in translations.items() if base_of(name) == base_of(tag)), none)


def _say(lang: str) -> Say:
    return lambda text, own: own or (passage(text, lang) if text else text)


def _book(book: Book, tag: str) -> Book:
    if base_of(book.language) == base_of(tag):
        return book
    words, say = _words(book.translations, tag, BookWords()), _say(book.language)
    return replace(book, **{name: say(getattr(book, name), getattr(words, name)) for name in ("title", "subtitle", "edition", "copyright", "licence")})


def _legend(beads: Mapping[str, Bead], names: Mapping[str, str | None], say: Say) -> dict[str, Bead]:
    return {key: replace(bead, name=say(bead.name, names.get(key))) for key, bead in beads.items()}


def _steps(written: Mapping[str, StepText], own: Mapping[str, StepText | None], say: Say) -> dict[str, StepText]:
    """The author's own steps; a translation may have some that the original does not need."""
    kept = {name: StepText(*(say(text, None) for text in (step.text, step.before, step.after))) for name, step in written.items()}
    return {**kept, **{name: step for name, step in own.items() if step}}


def _ways(written: Mapping[str, Mapping[str, Bead]], own: Mapping[str, WayWords | None], say: Say) -> dict[str, Mapping[str, Bead]]:
    words = {name: own.get(name) or WayWords() for name in written}
    return {say(name, words[name].name): _legend(beads, words[name].beads or {}, say) for name, beads in written.items()}


def _piece(piece: Piece, legend: Mapping[str, Bead], items: Mapping[str, str | None]) -> Piece:
    """The piece with the names of beads and charms."""
    names = {name: items.get(name) or name for name in piece.charms}
    return replace(piece, legend=legend, charms={names[name]: size for name, size in piece.charms.items()},
                   strands=tuple(_renamed(strand, names) for strand in piece.strands))


def _renamed(line: Strand | Twig, names: Mapping[str, str]) -> Strand | Twig:
    return replace(line, hung=_charms(line.hung, names), turned=_charms(line.turned, names))


def _charms(things: Iterable[Twig | Charm], names: Mapping[str, str]) -> tuple[Twig | Charm, ...]:
    return tuple(replace(thing, name=names.get(thing.name, thing.name)) if isinstance(thing, Charm) else _renamed(thing, names) for thing in things)
