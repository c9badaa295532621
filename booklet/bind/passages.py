"""Texts of the author's that stand on a page in another language than that of the page."""

from __future__ import annotations

from markupsafe import Markup


class Passage(str):
    """A text in a language of its own; as markup it says which, for readers that speak."""

    lang = ""

    def __html__(self) -> Markup:
        return Markup('<span lang="{}">{}</span>').format(self.lang, str(self))


def passage(text: str, lang: str) -> Passage:
    """A text in the language of a tag."""
    made = Passage(text)
    made.lang = lang
    return made


def joined(between: str, *parts: str) -> str:
    """The parts as one text. Where one of them is in a language of its own the text is markup."""
    if not any(hasattr(part, "__html__") for part in parts):
        return between.join(parts)
    return Markup(between).join(parts)


def lang_attribute(text: str) -> Markup:
    """What an element whose attributes hold a text says of its language."""
    return Markup(' lang="{}"').format(text.lang) if isinstance(text, Passage) else Markup("")
