"""The JSON Schemas for editors: up to date, and of one mind with the reading."""

import json
from pathlib import Path

import pytest
import yaml
from jsonschema import Draft202012Validator
from tests.source.test_source_book import FULL
from tests.source.test_source_pattern import INHERITING
from tests.source.test_source_values import CHANGES
from tests.source.texts import SMALL, with_change

from booklet.source.json_schema import FILES, schema_text
from booklet.source.kinds import DATA

PATTERNS = Path(__file__).parents[2] / "patterns"

# Not in reach of a JSON Schema: what YAML itself decides, what needs the legend or the book, and run text.
BEYOND = ("duplicate-key", "merge-key", "unknown-kind", "unknown-thread", "unknown-bead-key", "bad-run-text", "needless-field", "strange-character")


def validator(file):
    schema = json.loads((DATA / file).read_text("utf-8"))
    Draft202012Validator.check_schema(schema)
    return Draft202012Validator(schema)


def as_an_editor(text):
    """What a YAML editor hands to its validator: JSON types, names as texts."""
    def json_like(value):
        if isinstance(value, dict):
            return {str(key): json_like(item) for key, item in value.items()}
        return [json_like(item) for item in value] if isinstance(value, list) else value
    return json_like(yaml.safe_load(text))


@pytest.mark.parametrize("file", FILES)
def test_schemas_are_up_to_date(file):
    """Refresh with: python -m booklet.source.json_schema"""
    assert (DATA / file).read_text("utf-8") == schema_text(file)


@pytest.mark.parametrize("path", sorted(PATTERNS.glob("*.yaml")), ids=lambda path: path.stem)
def test_the_demo_is_valid(path):
    if path.stem != "releases":
        file = "book.schema.json" if path.stem == "book" else "pattern.schema.json"
        assert list(validator(file).iter_errors(as_an_editor(path.read_text("utf-8")))) == []


def test_small_files_are_valid():
    assert list(validator("pattern.schema.json").iter_errors(as_an_editor(SMALL))) == []
    for text in (FULL, INHERITING):
        assert list(validator("book.schema.json").iter_errors(as_an_editor(text))) == []


def test_every_field_is_explained():
    def unexplained(schema, path):
        for name, field in schema.get("properties", {}).items():
            if not field.get("description"):
                yield (*path, name)
            yield from unexplained(field, (*path, name))

    for file in FILES:
        assert list(unexplained(json.loads(schema_text(file)), ())) == []


# Where YAML 1.1 of the test's reader and the schema differ from what we read: on is text to us, level and makes may come from the book.
LOOSE = ("mirror: on", "mirror: True", "title: ' '", "level: beginner\n", "makes: pair\n", "drop: 02", "  é: {", "title: |",
         "140 m", "/etc/secret", "../secret", "C:")


@pytest.mark.parametrize(("old", "new"), [
    (old, new) for old, new, line in CHANGES
    if not any(f"[{rule}]" in line for rule in BEYOND) and "[a]: b" not in new and not any(part in new or part == old for part in LOOSE)])
def test_error_what_reading_refuses_the_schema_refuses(old, new):
    assert list(validator("pattern.schema.json").iter_errors(as_an_editor(with_change(old, new)))) != []
