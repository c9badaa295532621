"""JSON Schemas of the two file formats, for editors. Written to booklet/data/ by `python -m booklet.source.json_schema`."""

from __future__ import annotations

import json

from .kinds import DATA
from .schema import BOOK, PATTERN

FILES = {"pattern.schema.json": (PATTERN, "A bead pattern"), "book.schema.json": (BOOK, "A book of bead patterns")}


def schema_text(file: str) -> str:
    """The text of one of FILES."""
    record, title = FILES[file]
    about = {"$schema": "https://json-schema.org/draft/2020-12/schema", "title": title}
    return json.dumps({**about, **record.schema()}, ensure_ascii=False, indent=1) + "\n"


def main() -> None:
    """Write the schemas that the package ships."""
    for file in FILES:
        (DATA / file).write_text(schema_text(file), "utf-8")


if __name__ == "__main__":
    main()
