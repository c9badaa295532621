"""What the fields of an edition ask of each other."""

from __future__ import annotations

from collections.abc import Mapping

from .languages import check_language
from .reader import Reader
from .schema import EditionEntry

X4 = "PDF/X-4"
TWO_UP = "two-up"


def check_editions(editions: Mapping[str, EditionEntry], reader: Reader) -> None:
    """A finding for each field that another one of the same edition needs or rules out."""
    for name, edition in editions.items():
        path = ("editions", name)
        check_language(edition.language, reader, (*path, "language"))
        if edition.output == X4 and not edition.profile and (*path, "profile") not in reader.marks:
            reader.find_at(reader.marks[(*path, "output")], "missing-field", f"editions.{name}.profile is missing",
                           "PDF/X-4 names the press: ask the printer for its colour profile, an .icc file")
        for why, needless in ((edition.screen and "a screen has one side and no edge to trim", ("bleed", "gutter", "marks", "sheets", "paper", "start")),
                              (edition.sheets == TWO_UP and "two pages share a sheet, which is not trimmed", ("bleed", "marks"))):
            for field in needless if why else ():
                if getattr(edition, field) and (*path, field) in reader.marks:
                    reader.find_at(reader.marks[(*path, field)], "needless-field", f"editions.{name} cannot have {field}: {why}", "delete it")
