"""The book file: title, texts, order, page, and what its patterns inherit."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TypeVar

from msgspec import Struct, field

from ..craft.beads import BeadKind
from ..craft.plan import ThreadKind
from ..craft.tally import PACK_GRAMS, SPARE_PERCENT
from ..craft.techniques import LEVELS, USUAL_LEVELS
from ..findings import Finding, Mark, Severity
from .editions import check_editions
from .kinds import shipped_kinds, with_own
from .languages import check_language
from .nodes import MAP, Document, Node, compose
from .reader import Reader, nearest_mark
from .schema import BOOK, BookFile, BookWords, Defaults, EditionEntry, PageEntry, Spare
from .threads import check_threads, shipped_threads, with_own_threads

T = TypeVar("T")
_TEXTS = ("title", "subtitle", "author", "publisher", "edition", "copyright", "licence", "contact")


class Page(Struct, frozen=True):
    """The trimmed page in mm."""

    width: float = 148.0
    height: float = 210.0
    bleed: float = 0.0
    gutter: float = 4.0


class Book(Struct, frozen=True, eq=False):
    """What the book file says; a folder without one has a Book of its defaults."""

    file: str = ""
    title: str = ""
    subtitle: str = ""
    author: str = ""
    publisher: str = ""
    year: int | None = None
    edition: str = ""
    language: str = "en"
    copyright: str = ""
    licence: str = ""
    contact: str = ""
    order: tuple[str, ...] = ()                # slugs
    front: tuple[str, ...] = ()                # names of pages in patterns/pages/, without .md
    back: tuple[str, ...] = ()
    page: Page = Page()
    editions: Mapping[str, EditionEntry] = field(default_factory=dict)     # as written, by name
    translations: Mapping[str, BookWords] = field(default_factory=dict)    # by language
    isbn: str = ""                             # thirteen digits
    levels: Mapping[str, tuple[str, ...]] = field(default_factory=dict)    # techniques by the level where this book places them
    defaults: Defaults = Defaults()
    kinds: Mapping[str, BeadKind] = field(default_factory=shipped_kinds)   # shipped and own
    threads: Mapping[str, ThreadKind] = field(default_factory=shipped_threads)   # shipped and own
    spare_percent: float = float(SPARE_PERCENT)
    least_spare: int = 0
    pack: float = PACK_GRAMS                   # grams
    severities: Mapping[str, str] = field(default_factory=dict)   # by rule: error | warning | note | off
    broken: bool = False                       # something in the file is wrong: what patterns inherit is not known
    marks: Mapping[tuple, Mark] = field(default_factory=dict)

    @property
    def placed(self) -> Mapping[str, str]:
        """The level of every technique, by its id: the usual one where the book names no other."""
        return {**USUAL_LEVELS, **{technique: level for level, names in self.levels.items() for technique in names}}

    def mark(self, *path: str | int) -> Mark:
        """The place of a field, or of what it is part of."""
        return nearest_mark(self.marks, path, self.file)


def read_book(text: str, file: str) -> tuple[Book, list[Finding]]:
    """Read a book file. What is wrong in it has its default in the result."""
    document = compose(text, file)
    reader = Reader(document)
    root = fields_of(document, reader)
    written = BOOK.read(root, reader, ()) if root else BookFile()
    spare, page = written.spare or Spare(), written.page or PageEntry()
    usual = Page()
    width, height = page.size or (usual.width, usual.height)
    texts = {name: getattr(written, name) or "" for name in _TEXTS}
    kinds, threads = with_own(written.kinds or {}, reader), with_own_threads(written.threads or {}, reader)
    check_threads(written.defaults.thread if written.defaults else None, threads, reader, ("defaults", "thread"))
    check_editions(given(written.editions), reader)
    check_language(written.language, reader, ("language",))
    translations = given(written.translations)
    for tag in translations:
        check_language(tag, reader, ("translations", tag))
    return Book(
        file=file, **texts, year=written.year, language=written.language or "en",
        order=_kept(written.order), front=_pages(written.front), back=_pages(written.back),
        page=Page(width, height, _or(page.bleed, usual.bleed), _or(page.gutter, usual.gutter)),
        editions=given(written.editions), translations=translations, isbn=written.isbn or "",
        levels={level: _kept(getattr(written.levels, level)) for level in LEVELS if written.levels},
        defaults=written.defaults or Defaults(), kinds=kinds, threads=threads, spare_percent=_or(spare.percent, float(SPARE_PERCENT)),
        least_spare=spare.least or 0, pack=written.pack or PACK_GRAMS,
        severities=given(written.lint and written.lint.severity), broken=bool(reader.findings), marks=reader.marks,
    ), reader.findings


def fields_of(document: Document, reader: Reader) -> Node | None:
    """The root if it is a mapping; None with a finding if the file is empty or holds something else."""
    root = document.root
    if root is None and not document.findings:
        reader.add([Finding(Mark(document.file), Severity.ERROR, "empty-file", "the file is empty", "begin with title:")])
    elif root is not None and root.kind != MAP:
        what = "a list" if root.kind == "list" else "a text"
        reader.find(root, "not-a-mapping", f"the file holds {what} where fields are expected", "begin with title:")
    return root if root is not None and root.kind == MAP else None


def given(values: Mapping[str, T | None] | None) -> dict[str, T]:
    """The entries of a group of fields that could be read."""
    return {name: value for name, value in (values or {}).items() if value is not None}


def _or(value: float | None, default: float) -> float:
    return default if value is None else value


def _kept(values: tuple[str | None, ...] | None) -> tuple[str, ...]:
    return tuple(value for value in values or () if value)


def _pages(names: tuple[str | None, ...] | None) -> tuple[str, ...]:
    return tuple(name.removesuffix(".md") for name in _kept(names))
