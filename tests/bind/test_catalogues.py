"""The catalogues of words: whole, with the same values, and in step with code and templates."""

import ast
import re
from string import Formatter

import pytest
from babel.messages.extract import extract_from_dir
from babel.messages.pofile import read_po

from booklet.bind.catalogue import PO
from booklet.bind.templates import own_folder
from booklet.craft.language import GENDERS
from booklet.craft.reading import GRAMMARS
from booklet.draw.alphabet import GLYPHS
from booklet.source.languages import ENGLISH, LOCALE, languages

PACKAGE = LOCALE.parent
KEYWORDS = {"_": None, "message": None, "ngettext": (1, 2), "noun": (1, 2), "numbered": (1, 2), "pgettext": ((1, "c"), 2)}
COUNTED = {"rows", "strands", "places"}   # values that decide other words by their number
NOUNS = {"stitch", "set", "bead", "bridge"}
OTHERS = [name for name in languages() if name != ENGLISH]


def catalogue(name):
    with open(LOCALE / name / PO, "rb") as file:
        return read_po(file, locale=name)


def forms(value):
    return (value,) if isinstance(value, str) else tuple(value)


@pytest.fixture(scope="module")
def marked():
    """Every message that code and templates mark: its context, and its English forms."""
    found = {}
    for folder, methods in ((PACKAGE, [("**.py", "python")]), (own_folder(), [("**.jinja", "jinja2"), ("**.js", "javascript")])):
        for _file, _line, text, _comments, context in extract_from_dir(str(folder), methods, {}, keywords=KEYWORDS):
            assert found.setdefault((context or "", forms(text)[0]), forms(text)) == forms(text), "a text goes by a number everywhere or nowhere"
    return found


@pytest.mark.parametrize("name", OTHERS)
def test_the_catalogue_has_the_messages_of_code_and_templates(name, marked):
    assert {(one.context or "", forms(one.id)[0]): forms(one.id) for one in catalogue(name) if one.id} == marked


@pytest.mark.parametrize("name", OTHERS)
def test_every_message_is_translated_with_the_same_values(name):
    for one in catalogue(name):
        if not one.id:
            continue
        assert not one.fuzzy and all(forms(one.string)), one.id
        wanted = values(*forms(one.id))
        for number, form in enumerate(forms(one.string)):
            told = values(form)
            assert told <= wanted, (one.id, form)
            assert told == wanted or number == 0 and not isinstance(one.id, str), (one.id, form)   # one thing can be told without its number
            assert (form[0] == " ", form[-1] == " ") == (forms(one.id)[0][0] == " ", forms(one.id)[0][-1] == " "), form


def values(*texts):
    """The names of the values, with the forms of words that go by one of them looked at too."""
    names = set()
    for text in texts:
        for _before, name, spec, _how in Formatter().parse(text):
            names |= {name} if name else set()
            assert not spec or spec.count("|") == (1 if name in COUNTED else len(GENDERS) - 1), text
    return names


@pytest.mark.parametrize("name", OTHERS)
def test_nouns_have_a_gender_and_the_word_in_a_chart_has_letters(name):
    messages = {(one.context or "", forms(one.id)[0]): forms(one.string) for one in catalogue(name) if one.id}
    assert all(re.fullmatch(rf"\w+\|[{GENDERS}]", form) for noun in NOUNS for form in messages["", noun])
    assert set(messages["chart", "base"][0]) <= set(GLYPHS)


@pytest.mark.parametrize("name", OTHERS)
def test_a_language_has_a_grammar_and_pages(name):
    assert name in GRAMMARS
    pages = own_folder() / "pages"
    assert {path.name for path in (pages / name).glob("*.md")} == {path.name for path in pages.glob("*.md")}
    for path in pages.glob("*.md"):
        told = [re.findall(r"^#+|\{[a-z]+: [a-z-]+\}", file.read_text("utf-8"), re.MULTILINE) for file in (path, pages / name / path.name)]
        assert told[0] == told[1], path.name


def test_every_text_that_is_said_can_be_found(marked):
    """Texts in expressions inside other texts are not found by extraction; this reads the code itself."""
    for path in PACKAGE.rglob("*.py"):
        for call in ast.walk(ast.parse(path.read_text("utf-8"))):
            if isinstance(call, ast.Call) and isinstance(call.func, ast.Name) and call.func.id in KEYWORDS and call.args and isinstance(call.args[0], ast.Constant):
                texts = [argument.value for argument in call.args[:2] if isinstance(argument, ast.Constant) and isinstance(argument.value, str)]
                key = (texts[0], texts[1]) if call.func.id == "pgettext" else ("", texts[0])
                assert key in marked, f"{path.name}: {key}"
