"""Which languages booklet prints in: English, and those of the folders of booklet/locale/."""

from __future__ import annotations

from pathlib import Path

from .reader import Reader
from .wording import either, quoted

LOCALE = Path(__file__).parent.parent / "locale"
ENGLISH = "en"


def languages() -> tuple[str, ...]:
    """English first, then the others by name."""
    return (ENGLISH, *sorted(path.name for path in LOCALE.iterdir() if path.is_dir() and not path.name.startswith("_")))


def base_of(tag: str) -> str:
    """The language itself: "de" of "de-AT"."""
    return tag.split("-")[0].lower()


def is_known(tag: str) -> bool:
    return base_of(tag) in languages()


def catalogue_of(tag: str) -> str | None:
    """The folder of a language's catalogue; None for English, whose texts stand in the code."""
    name = base_of(tag)
    return None if name == ENGLISH else name


def check_language(tag: str | None, reader: Reader, path: tuple) -> None:
    """A finding for a language that booklet does not print in."""
    if tag and base_of(tag) != ENGLISH and not is_known(tag) and path in reader.marks:
        reader.find_at(reader.marks[path], "unknown-language", f"booklet prints in {either(languages())}; found {quoted(tag)}")
