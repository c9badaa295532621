"""Texts in other languages, in pattern files and in the book file."""

import pytest

from booklet.source.book import read_book
from booklet.source.resolve import read_pattern
from tests.source.texts import SMALL

GERMAN = """\
translations:
  de:
    title: Wolkenschatten
    beads: {W: kreideweiß}
    findings: {thread guard: Fadenschutz}
    photo: Ein Ohrring.
    links: {film of the row start: Film}
    steps: {fringe: {after: Gut.}}
    colourways: {dusk: {name: Dämmerung, beads: {B: Pflaume}}}
"""


def pattern(text, book=""):
    found, findings = read_pattern(text, "x.yaml", "x", read_book("title: Book\n" + book, "book.yaml")[0])
    return found, [finding.one_line() for finding in findings]


def test_texts_of_a_pattern_in_another_language():
    made, wrong = pattern(SMALL + GERMAN, "language: en-GB\n")
    words = made.translations["de"]
    assert wrong == [] and made.language == "en-GB"
    assert (words.title, words.beads, words.findings, words.photo, words.summary) == ("Wolkenschatten", {"W": "kreideweiß"}, {"thread guard": "Fadenschutz"}, "Ein Ohrring.", None)
    assert (words.steps["fringe"].after, words.colourways["dusk"].name, words.colourways["dusk"].beads) == ("Gut.", "Dämmerung", {"B": "Pflaume"})
    assert pattern(SMALL + "language: de\n")[0].language == "de"


@pytest.mark.parametrize(("lines", "message"), [
    ("language: fr", "52:11: error: booklet prints in en or de; found 'fr' [unknown-language]"),
    ("translations: {fr: {title: Ombre}}", "52:16: error: booklet prints in en or de; found 'fr' [unknown-language]"),
    ("translations: {German!: {}}", "52:16: error: a language is named by a tag such as de; found 'German!' [bad-name]"),
    ("translations: {de: {titel: x}}", "52:21: error: the field 'titel' is not known in translations.de (did you mean title?) [unknown-field]"),
    ("translations: {de: {beads: {X: x}}}", "52:29: error: the pattern has no bead key 'X' to translate [unknown-name]"),
    ("translations: {de: {findings: {thread gard: x}}}", "52:32: error: the pattern has no finding 'thread gard' to translate (did you mean thread guard?) [unknown-name]"),
    ("translations: {de: {links: {film: x}}}", "52:29: error: the pattern has no link 'film' to translate [unknown-name]"),
    ("translations: {de: {colourways: {dawn: {name: x}}}}", "52:34: error: the pattern has no colourway 'dawn' to translate [unknown-name]"),
    ("translations: {de: {colourways: {dusk: {beads: {W: x}}}}}", "52:49: error: the pattern has no bead key 'W' to translate [unknown-name]")])
def test_error_translations_of_a_pattern(lines, message):
    assert pattern(SMALL + lines + "\n")[1] == [f"x.yaml:{message}"]


@pytest.mark.parametrize(("lines", "message"), [
    ("language: fr", "2:11: error: booklet prints in en or de; found 'fr' [unknown-language]"),
    ("editions: {a: {language: fr-CA}}", "2:26: error: booklet prints in en or de; found 'fr-CA' [unknown-language]"),
    ("translations: {nl: {title: Boek}}", "2:16: error: booklet prints in en or de; found 'nl' [unknown-language]")])
def test_error_languages_of_a_book(lines, message):
    _book, findings = read_book("title: Book\n" + lines + "\n", "book.yaml")
    assert [finding.one_line() for finding in findings] == [f"book.yaml:{message}"]


def test_languages_of_a_book():
    made, findings = read_book("title: Book\nlanguage: de-AT\neditions: {en: {language: en}}\ntranslations: {en: {title: Book, findings: {Ohrhaken: ear wire}}}\n", "book.yaml")
    assert not findings and (made.language, made.editions["en"].language, made.translations["en"].findings) == ("de-AT", "en", {"Ohrhaken": "ear wire"})
