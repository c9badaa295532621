"""The language of what is printed: English as it stands in the code, or another one, from a catalogue.

The English texts are the messages of the catalogue. Values stand in braces and have names, so that a translation can place them
otherwise. Who prints something says `speaking(language)` round it; the catalogues are read by `bind.catalogue`.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from contextvars import ContextVar

from msgspec import Struct, field

GENDERS = "mfn"


class Language(Struct, frozen=True, eq=False):
    """What is needed to print in a language."""

    tag: str = "en"                                                                          # of BCP 47
    messages: Mapping[tuple[str, str], tuple[str, ...]] = field(default_factory=dict)       # forms by context and English text
    plural: Callable[[int], int] = lambda count: int(count != 1)                           # index of the form for a number
    plural_rule: str = "n != 1"                                                             # the same as scripts of a page write it
    point: str = "."
    comma: str = ","                                                                       # at the thousands


ENGLISH = Language()
_spoken: ContextVar[Language] = ContextVar("language", default=ENGLISH)


class Noun(str):
    """Words that decide the form of others: of "{unit:den|die|das}" is printed what goes with the gender of a noun, by the order of GENDERS,
    and of "{rows:|den }" what goes with the number of what is counted."""

    gender = 0

    def __format__(self, forms: str) -> str:
        return forms.split("|")[self.gender] if forms else str(self)


def spoken() -> Language:
    """The language of the moment."""
    return _spoken.get()


@contextmanager
def speaking(language: Language) -> Iterator[None]:
    """Everything that is made meanwhile is in this language."""
    before = _spoken.set(language)
    try:
        yield
    finally:
        _spoken.reset(before)


def message(text: str) -> str:
    """Mark a text for the catalogue that is translated later, where it is printed."""
    return text


def _(text: str, /, **values: object) -> str:
    """A text in the language of the moment, its values filled in."""
    return _filled(_forms("", text, text)[0], values)


def pgettext(context: str, text: str, /, **values: object) -> str:
    """A text that is translated in more than one way; the context tells which."""
    return _filled(_forms(context, text, text)[0], values)


def ngettext(one: str, many: str, number: int, /, **values: object) -> str:
    """A text whose form goes by a number, which fills {count} unless a value of that name is given."""
    return _filled(form(one, many, number), {"count": number, **values})


def noun(one: str, many: str, number: int = 1, /) -> Noun:
    """A noun by number. Where a language has genders the catalogue writes it as "Stich|m"."""
    word, _bar, gender = form(one, many, number).partition("|")
    made = Noun(word)
    made.gender = GENDERS.index(gender) if gender else 0
    return made


def numbered(one: str, many: str, number: int, /, **values: object) -> Noun:
    """As `ngettext`, for words on which others depend by their number."""
    made = Noun(ngettext(one, many, number, **values))
    made.gender = _spoken.get().plural(number)
    return made


def form(one: str, many: str, number: int) -> str:
    """The form of a text that goes by a number, its values not filled in."""
    return _forms("", one, one, many)[_spoken.get().plural(number)]


def _forms(context: str, text: str, *english: str) -> tuple[str, ...]:
    return _spoken.get().messages.get((context, text)) or english


def _filled(text: str, values: Mapping[str, object]) -> str:
    return text.format(**values) if values else text


def decimal(value: float, places: int) -> str:
    """A number with so many decimal places."""
    return f"{value:.{places}f}".replace(".", _spoken.get().point)


def plainly(value: float) -> str:
    """A number as short as it can be written: "4", "1.5"."""
    return f"{value:g}".replace(".", _spoken.get().point)


def in_figures(size: str) -> str:
    """A size in words of a shop, such as "3.4" or "6 mm", with the point of the language."""
    return size.replace(".", _spoken.get().point)


def whole(value: int) -> str:
    """A whole number, parted at the thousands."""
    return f"{value:,}".replace(",", _spoken.get().comma)


def listed(things: Sequence[str]) -> str:
    """"a", "a and b", "a, b and c"."""
    return things[0] if len(things) == 1 else _("{most} and {last}", most=", ".join(things[:-1]), last=things[-1])


def sentences(*parts: str | None) -> str:
    """What there is of the parts, with a space between two."""
    return " ".join(part for part in parts if part)
