"""The languages in which booklet can print: English, and every catalogue in booklet/locale/."""

from __future__ import annotations

from functools import lru_cache

from ..craft.language import Language
from ..source.languages import LOCALE, catalogue_of

PO = "LC_MESSAGES/booklet.po"


@lru_cache(maxsize=None)
def language(tag: str) -> Language:
    """The language of a tag that `source.languages.is_known`. English loads nothing."""
    name = catalogue_of(tag)
    return Language(tag) if name is None else _read(tag, name)


def _read(tag: str, name: str) -> Language:
    from gettext import c2py

    from babel import Locale
    from babel.messages.pofile import read_po

    with open(LOCALE / name / PO, "rb") as file:
        catalogue = read_po(file, locale=name)
    symbols = Locale.parse(name).number_symbols["latn"]
    messages = {(message.context or "", message.id if isinstance(message.id, str) else message.id[0]):
                (message.string,) if isinstance(message.string, str) else tuple(message.string)
                for message in catalogue if message.id and message.string}
    rule = catalogue.plural_expr.strip("()") or "0"
    return Language(tag, messages, c2py(rule), rule, symbols["decimal"], symbols["group"])
