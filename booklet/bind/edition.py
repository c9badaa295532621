"""An edition: everything in which one way of binding the book differs from another, as one value.

It goes to geometry, style sheets, templates and charts, and it is all that they know of an edition; so its hash
stands for them.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from ..errors import WrongUse
from ..source.book import Book
from ..source.editions import TWO_UP
from ..source.schema import BY_PAGES, EditionEntry
from ..source.wording import did_you_mean, quoted

ALL = "all"
SMALL_TYPE, TYPE, LEADING = 9.6, 11.0, 1.45    # points, points, sizes of the type
NARROW = 165.0                                 # mm; narrower pages have the small type
LARGE_TYPE, LARGE_LEADING = 18.0, 1.5          # "Guidelines for Large Print": 18 pt or more, line spacing 1.5 or more
PHONE = (90.0, 160.0)                          # mm, 9:16; a phone shows it at three quarters of its size
PHONE_TYPE = 13.0
MARK_ROOM = 10.0                               # mm outside the trimmed page for crop marks


@dataclass(frozen=True)
class Edition:
    """One way of binding. Lengths in mm, type in points."""

    name: str = ""                 # empty: as page in the book file says
    width: float = 148.0
    height: float = 210.0
    bleed: float = 0.0
    gutter: float = 4.0
    by_pages: bool = False         # the gutter is what the number of pages asks for, and `gutter` what is taken for now
    marks: bool = False
    start: str = "left"            # of patterns: left | right | any
    type: float = SMALL_TYPE
    leading: float = LEADING
    large: bool = False
    grey: bool = False
    hand: str = ""                 # empty: as each pattern says
    screen: bool = False
    two_up: bool = False
    paper: float = 0.0             # thickness of a sheet; 0: no cover of its own
    output: str = "PDF/UA-1"
    profile: str = ""              # a file under patterns/
    language: str = "en"

    @property
    def suffix(self) -> str:
        """What the name of a file of this edition gains."""
        return f"-{self.name}" if self.name else ""

    @property
    def spare(self) -> float:
        """mm of the sheet beyond the trimmed page on each side."""
        return max(self.bleed, MARK_ROOM) if self.marks else self.bleed

    def __str__(self) -> str:
        return self.name or "the book"


def edition(book: Book, name: str = "") -> Edition:
    """An edition of the book by its name. Raises WrongUse for one that it does not have."""
    if not name:
        return _of(book, "", EditionEntry())
    if name not in book.editions:
        hint = did_you_mean(name, book.editions) or (f"there are {', '.join(book.editions)}" if book.editions else "name editions in book.yaml")
        raise WrongUse(f"there is no edition {quoted(name)}", hint)
    return _of(book, name, book.editions[name])


def editions(book: Book, name: str = "") -> tuple[Edition, ...]:
    """The edition of this name; for "all" every one, the book as its page says first."""
    names = ("", *book.editions) if name == ALL else (name,)
    return tuple(edition(book, one) for one in names)


def web_editions(book: Book, name: str = "") -> tuple[Edition, ...]:
    """The editions, as `editions` gives them, that differ on the web: those in a language of their own. Raises WrongUse where one is asked for that does not."""
    found = {on.language: on for on in reversed(editions(book, name if name == ALL else ""))}
    if name in ("", ALL):
        return tuple(reversed(found.values()))
    on = edition(book, name)
    if on.language == book.language:
        raise WrongUse(f"the edition {quoted(name)} differs on paper alone: web pages are for every size and either hand", "make them without --edition")
    return (on,)


def _of(book: Book, name: str, said: EditionEntry) -> Edition:
    page = book.page
    width, height = said.size or (PHONE if said.screen else (page.width, page.height))
    gutter = page.gutter if said.gutter in (None, BY_PAGES) else said.gutter
    bare = said.screen or said.sheets == TWO_UP
    made = Edition(
        name, width, height, 0.0 if bare else page.bleed if said.bleed is None else said.bleed, gutter, said.gutter == BY_PAGES, bool(said.marks),
        said.start or "left", _type(said, width), said.leading or (LARGE_LEADING if said.large else LEADING), bool(said.large), bool(said.grey),
        said.hand or "", bool(said.screen), said.sheets == TWO_UP, said.paper or 0.0, said.output or "PDF/UA-1", said.profile or "", said.language or book.language)
    return replace(made, gutter=0.0, start="any") if made.screen else made


def _type(said: EditionEntry, width: float) -> float:
    if said.type:
        return said.type
    return LARGE_TYPE if said.large else PHONE_TYPE if said.screen else SMALL_TYPE if width < NARROW else TYPE
