"""The format of a pattern file and of the book file, as one table each."""

from __future__ import annotations

from .shapes import GRAMS, MM, PERCENT, Fields, Flag, ListOf, MapOf, Measure, Number, OneOf, Text, Whole

FINISHES = ("matte", "lustre", "metallic", "transparent", "opaque")
LEVELS = ("beginner", "intermediate", "advanced")
HANDS = ("right", "left")
TRIMS = {"A4": (210.0, 297.0), "A5": (148.0, 210.0), "Letter": (215.9, 279.4), "half letter": (139.7, 215.9), "5x8": (127.0, 203.2),
         "6x9": (152.4, 228.6), "7x10": (177.8, 254.0), "8.5x8.5": (215.9, 215.9)}   # mm: ISO 216, and inches x 25.4
KEY = "[A-Za-z0-9]"
SLUG = "[a-z0-9]+(?:-[a-z0-9]+)*"

_LENGTH = Measure(MM, 100_000.0)
_COLOUR = Text(pattern="#(?:[0-9A-Fa-f]{3}|[0-9A-Fa-f]{6})", called='a colour such as "#3d5a80"', rule="bad-colour")
_BEAD = {"name": Text(), "colour": _COLOUR, "finish": Text(FINISHES), "kind": Text(), "pack": Measure(GRAMS, 1000.0, 0.1)}
_KEYS = {"names": KEY, "named": "one letter or digit"}
_THREAD = Fields({"body": Fields({"kind": Text()}, ("kind",)), "fringe": Fields({"kind": Text()}, ("kind",)),
                  "length": Measure(MM, 100_000.0, 400.0)})
_ITEMS = ListOf(Fields({"item": Text(), "size": Text(), "each": Whole(1, 1000)}, ("item",)), 50)
_STEP = OneOf(Text(), Fields({"before": Text(), "after": Text(), "text": Text()}))

PATTERN = Fields({
    "title": Text(), "summary": Text(), "version": Text(), "level": Text(LEVELS), "makes": Text(("pair", "single")),
    "mirror": Flag(), "hand": Text(HANDS),
    "beads": MapOf(Fields(_BEAD, ("name", "colour", "finish", "kind")), **_KEYS),
    "body": Fields({"stitch": Text(("brick",)), "drop": Whole(1, 4),
                    "base": Text(pattern="bottom|widest|[1-9][0-9]{0,2}", called="bottom, widest or the number of a row counted from the bottom"),
                    "chart": Text()}, ("chart",)),
    "fringe": Fields({"end": Text(), "mirror": Flag(), "strands": ListOf(Text()), "chart": Text()}),
    "hanger": Fields({"kind": Text(("guard", "loop", "none")), "beads": Text()}, ("kind",)),
    "findings": _ITEMS, "thread": _THREAD,
    "photo": Fields({"file": Text(), "alt": Text()}, ("file", "alt")),
    "links": ListOf(Fields({"label": Text(), "url": Text(pattern=r"https?://[^\s\"'<>]{3,300}", called="a web address that begins with https://")},
                           ("label", "url")), 20),
    "notes": Text(may_be_empty=True), "steps": MapOf(_STEP, "[a-z-]{1,40}", "the name of a step"),
    "colourways": MapOf(MapOf(Fields(_BEAD, ("name", "colour", "finish")), **_KEYS), most=12),
    "counted": Fields({name: Whole(0, 1_000_000) for name in ("base", "rows", "strands", "beads")}),
}, ("title", "summary", "version", "level", "makes", "beads", "body"))

_PAGES = ListOf(Text(pattern=r"[a-z0-9-]+(?:\.md)?", called="the name of a page in patterns/pages"), 50)
BOOK = Fields({
    **{name: Text() for name in ("title", "subtitle", "author", "publisher", "edition", "copyright", "licence", "contact")},
    "year": Whole(1000, 9999), "language": Text(pattern="[a-z]{2,3}(?:-[A-Za-z0-9]{2,8})*", called="a language such as en"),
    "order": ListOf(Text(pattern=SLUG, called="the name of a pattern file without its ending"), 5000),
    "front": _PAGES, "back": _PAGES,
    "page": Fields({"size": Text(pattern="|".join(TRIMS) + r"|[0-9.]{1,6} x [0-9.]{1,6} (?:mm|in)",
                                 called="a trim such as A5, or a size such as 148 x 210 mm"), "bleed": _LENGTH, "gutter": _LENGTH}),
    "defaults": Fields({"thread": _THREAD, "findings": _ITEMS, "level": Text(LEVELS), "hand": Text(HANDS), "makes": Text(("pair", "single")),
                        "hanger": Fields({"kind": Text(("guard", "loop", "none")), "beads": Text()}, ("kind",))}),
    "kinds": MapOf(Fields({"shape": Text(("cylinder", "round", "bugle", "drop", "bicone")),
                           **{name: Measure(MM, 50.0, 0.05) for name in ("diameter", "length", "hole")},
                           "per_gram": Number(5000), "source": Text()})),
    "spare": OneOf(Measure(PERCENT, 100.0), Fields({"percent": Measure(PERCENT, 100.0), "least": Whole(0, 1000)})),
    "pack": Measure(GRAMS, 1000.0, 0.1),
}, ("title",))


def json_schema(block: Fields, title: str) -> dict:
    """The JSON Schema (2020-12) of a file, for editors."""
    return {"$schema": "https://json-schema.org/draft/2020-12/schema", "title": title, **block.schema()}
