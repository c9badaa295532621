"""Whatever changes, the parts of the book that show it are set anew, and no others: seen from the keys, without setting a page."""

import asyncio
import json
import shutil
from dataclasses import is_dataclass, replace
from functools import lru_cache

import pytest
from msgspec import Struct, structs

from booklet.bind import book, pages
from booklet.bind.artist import Noted, Paper
from booklet.bind.context import shown
from booklet.bind.edition import Edition, edition
from booklet.bind.geometry import Room, print_room
from booklet.bind.pdf import copy_of as bound_copy
from booklet.bind.pdf import working_in
from booklet.bind.photos import photos
from booklet.bind.prose import prose as pages_prose
from booklet.bind.press.binding import _Placing
from booklet.bind.press.orders import key_of
from booklet.bind.press.workshop import HereAndNow, Workshop
from booklet.bind.sections import PicturesOrder, SectionOrder, Stationery, pictured, printed, stationery, web_stationery
from booklet.bind.templates import own_folder
from booklet.bind.translated import printing
from booklet.bind.web.orders import ArticlesOrder, CutOrder, PhotoOrder
from booklet.source.records import Form
from booklet.source.schema import BookFile, PatternFile
from booklet.source.workspace import load
from tests.bind.copies import TINY, copy_of

CLOUD, STAR = "morning-cloud", "evening-star"
UNSHOWN = {"file", "base", "chart", "hang", "fringe_places", "written_strands", "hangers", "counted", "allowed", "translations", "marks"}   # of a pattern: read by no page
PROSE = {"title", "summary", "version", "notes", "links", "steps"}   # of a pattern: on no picture
FOR_THE_PRINTER = {"name", "by_pages", "marks", "hand", "two_up", "paper", "output", "profile"}   # of an edition: told to no section


@pytest.fixture(scope="module")
def shop():
    """Keeps what was made for all tests of this file."""
    read = lru_cache(maxsize=None)(lambda text, values, top: pages_prose(text, dict(values), top))
    with pytest.MonkeyPatch.context() as patch, Workshop(start=HereAndNow) as workshop:
        patch.setattr(pages, "prose", lambda text, values, top=1: read(text, tuple(values.items()), top))
        yield workshop


def part_keys(root, shop):
    """The key of every part of the book by its name, before anything is set."""
    workspace = load(root)
    assert not [finding for finding in workspace.findings if finding.is_error]
    on = edition(workspace.book)

    async def made():
        with printing(workspace, on.language) as told:
            whole = await book.gathered(told, on)
            return bound_copy(book.book_html(told, whole, on), root, {**photos(root, workspace.patterns.values()), **whole.drawings}, whole.titles)

    with working_in(shop):
        copy = asyncio.run(made())
    placing = _Placing(copy, shop)
    placing.places = placing.wanted()
    return dict(zip(names(copy.document.parts), (key_of(placing.order(at)) for at in range(len(copy.document.parts)))))


def names(parts):
    """The id or class of each part; what goes on with a pattern has its id and a number."""
    before, count = "", 1
    for known in (part.known for part in parts):
        goes_on = known.opening == '<div class="pattern more">'
        before, count = (before, count + 1) if goes_on else (known.id or known.opening.split('"')[1], 1)
        yield f"{before} {count}" if goes_on else before


@pytest.fixture(scope="module")
def before(shop):
    return part_keys(TINY, shop)


def changed(root, shop, before):
    """Names of the parts that would be set anew."""
    after = part_keys(root, shop)
    return {name for name in before | after if before.get(name) != after.get(name)}


def leaves(value, path=()):
    """Every way to change one thing in a value: where, and the changed value."""
    if isinstance(value, (Struct, Form)) or is_dataclass(value) or hasattr(value, "_replace"):
        names = value.fields if isinstance(value, Form) else getattr(value, "__struct_fields__", None) or getattr(value, "_fields", None) or value.__dataclass_fields__
        for name in names:
            for where, new in leaves(getattr(value, name), (*path, name)):
                yield where, with_field(value, name, new)
    elif isinstance(value, dict):
        yield (*path, "order"), {**value, "~": 0}
        for key, one in value.items():
            for where, new in leaves(one, (*path, key)):
                yield where, {**value, key: new}
    elif isinstance(value, tuple):
        yield (*path, "length"), (*value, "x")
        for where, new in leaves(value[0], (*path, 0)) if value else ():
            yield where, (new, *value[1:])
    else:
        yield path, not value if isinstance(value, bool) else value + 1 if isinstance(value, (int, float)) else f"{value}x"


def with_field(value, name, new):
    if isinstance(value, Form):
        return type(value)(**{**{one: getattr(value, one) for one in value.fields}, name: new})
    if hasattr(value, "_replace"):
        return value._replace(**{name: new})
    return (structs.replace if isinstance(value, Struct) else replace)(value, **{name: new})


def test_every_value_of_a_pattern_is_in_the_key_of_its_pages_or_on_none_of_them():
    workspace = load(TINY)
    pattern, common = workspace.patterns[CLOUD], stationery(workspace, edition(workspace.book))

    def keys(one):
        return [key_of(SectionOrder(printed(one), common, b"")), key_of(ArticlesOrder(printed(one), common, 1.0, "A Small Sky"))]

    before, seen = keys(pattern), set()
    for path, other in leaves(pattern):
        seen.add(path[0])
        for key, was in zip(keys(other), before):
            assert (key == was) == (path[0] in UNSHOWN), path
    assert seen == set(pattern.__struct_fields__)


def test_pages_read_nothing_of_a_pattern_that_its_order_leaves_out():
    workspace = load(TINY)
    common = stationery(workspace, edition(workspace.book))
    for pattern in workspace.patterns.values():
        pictures = PicturesOrder(pictured(pattern), common.room, common.language).fill()
        assert pictures == PicturesOrder(pattern, common.room, common.language).fill()
        assert SectionOrder(printed(pattern), common, pictures).fill() == SectionOrder(pattern, common, pictures).fill()


def test_every_value_of_a_pattern_but_its_prose_is_in_the_key_of_its_pictures():
    workspace = load(TINY)
    pattern, room = workspace.patterns[CLOUD], print_room(edition(workspace.book))
    key = key_of(PicturesOrder(pictured(pattern), room, "en"))
    for path, other in leaves(pattern):
        assert (key_of(PicturesOrder(pictured(other), room, "en")) == key) == (path[0] in UNSHOWN | PROSE), path
    assert key not in {key_of(PicturesOrder(pictured(pattern), other, "en")) for _, other in leaves(room)} | {key_of(PicturesOrder(pictured(pattern), room, "de"))}


def test_noted_pictures_are_those_that_are_drawn():
    workspace = load(TINY)
    room = print_room(edition(workspace.book))
    for pattern in workspace.patterns.values():
        drawn = json.loads(PicturesOrder(pictured(pattern), room, "en").fill())
        assert shown(pattern, room, 1.0, Noted(drawn["pictures"]), drawn["fits"]) == shown(pattern, room, 1.0, Paper(with_small=False, steps=room.steps), drawn["fits"])
    with pytest.raises(ValueError, match="of the kind 'chart' is asked for, and the one that was drawn next is of the kind 'finished'"):
        Noted(drawn["pictures"]).chart(pattern.piece, 1.0, "x")
    pattern, common = workspace.patterns[STAR], web_stationery(workspace)
    assert ArticlesOrder(printed(pattern), common, 1.0, "A Small Sky", {}).fill() == ArticlesOrder(pattern, common, 1.0, "A Small Sky", {}).fill()


def test_every_value_that_sections_have_in_common_is_in_their_keys():
    workspace = load(TINY)
    pattern, common = printed(workspace.patterns[STAR]), stationery(workspace, edition(workspace.book))
    key = key_of(SectionOrder(pattern, common, b""))
    for path, other in leaves(replace(common, own=(("a.jinja", "text"),))):
        assert key_of(SectionOrder(pattern, other, b"")) != key, path
    assert {path[0] for path, _ in leaves(common)} == set(Stationery.__dataclass_fields__)


def test_every_value_is_in_the_keys_of_what_web_pages_are_made_of():
    workspace = load(TINY)
    articles = ArticlesOrder(printed(workspace.patterns[STAR]), replace(web_stationery(workspace), own=(("a.jinja", "text"),)), 1.0, "A Small Sky", {"photos/a.png": b"a"})
    for path, other in [*leaves(articles), (("held", "none"), replace(articles, held=None)), (("held", "content"), replace(articles, held={"photos/a.png": b"b"}))]:
        assert key_of(other) != key_of(articles), path
    cut = CutOrder("BookletSans-400", "abc", "digest")
    keys = [key_of(PhotoOrder(b"a")), key_of(PhotoOrder(b"b")), key_of(cut), *(key_of(other) for _, other in leaves(cut))]
    assert len(set(keys)) == len(keys) == 6


def test_every_value_of_an_edition_reaches_sections_or_style_unless_it_is_for_the_printer():
    workspace = load(TINY)
    on, pattern = edition(workspace.book), printed(workspace.patterns[STAR])

    def made(other):
        return key_of(SectionOrder(pattern, stationery(workspace, other), b"")), book.style(workspace.root, other)

    for path, other in leaves(on):
        other = replace(other, start="right") if path == ("start",) else other
        section, style = made(other)
        assert (section == made(on)[0]) == (path[0] in FOR_THE_PRINTER), path
        assert (style != made(on)[1]) or path[0] not in {"width", "height", "bleed", "gutter", "start", "type", "leading", "large", "screen"}, path
    assert {path[0] for path, _ in leaves(on)} == set(Edition.__dataclass_fields__) and isinstance(print_room(on), Room)


def own(*numbers, slug=CLOUD):
    """The parts of a pattern: 1 opens it, 2 is its body, 3 its fringe and what closes it. All three if none is named."""
    return {slug if number == 1 else f"{slug} {number}" for number in numbers or (1, 2, 3)}


EVERY = own() | own(1, 2, slug=STAR)
CLOSING = own(3) | own(2, slug=STAR)   # one has no fringe
PATTERN_EDITS = {   # by field of a pattern file: what is written instead of what, and the parts that show it
    "title": ("title: Morning Cloud", "title: Noon Cloud", own() | {"imprint", "contents", "find-a-pattern", "back"}),
    "summary": ("six stitches", "6 stitches", own(1)),
    "version": ('"1.2"', '"1.3"', own() | {"imprint"}),
    "level": ("level: intermediate", "level: advanced", own(1) | {"contents", "find-a-pattern"}),
    "makes": ("makes: pair", "makes: single", own(1)),
    "mirror": ("makes: pair", "makes: pair\nmirror: true", own(1, 3)),
    "front": ("makes: pair", "makes: pair\nmirror: true\nfront: true", own(1, 3, 4, 5)),
    "hand": ("hanger:", "hand: left\nhanger:", own(2, 3)),
    "beads": ('"#3d5a80"', '"#3d5a81"', own() | {"cover", "contents", "back"}),
    "body": ("    1 | W B W W B W", "    1 | W B B W B W", own() | {"cover", "contents"}),
    "fringe": ("    - 6W 2B > 3B", "    - 7W 2B > 3B", own(1, 3) | {"cover", "contents", "find-a-pattern"}),
    "hanger": ("{kind: guard}", "{kind: ring}", own() | {"cover", "contents"}),
    "findings": ("size: 4 mm", "size: 5 mm", own(1)),
    "thread": ("hanger:", "thread: {length: 1.2 m}\nhanger:", own()),
    "photo": ("hanger:", "photo: {file: a.png, alt: a cloud}\nhanger:", own(1)),
    "links": ("label: film", "label: a film", own(3)),
    "notes": ("The base row has", "The first row has", own(3)),
    "steps": ("hanger:", "steps: {ladder: {before: Breathe.}}\nhanger:", own(2)),
    "colourways": ("name: plum", "name: damson", own(3)),
    "language": ("hanger:", "language: de\nhanger:", own() | {"imprint", "contents", "find-a-pattern", "back"}), "translations": ("hanger:", "translations: {de: {title: Wolke}}\nhanger:", None),
    "counted": ("hanger:", "counted: {rows: 3}\nhanger:", None),
    "lint": ("The last strand has", "Its last strand has", None)}


def test_every_field_of_a_pattern_file_sets_anew_what_shows_it(tmp_path, shop, before):
    assert PATTERN_EDITS.keys() == PatternFile.fields.keys()
    root = copy_of(TINY, tmp_path / "book")
    (root / "patterns" / "a.png").write_bytes(b"png")
    path = root / "patterns" / f"{CLOUD}.yaml"
    text = path.read_text("utf-8")
    for field, (old, new, parts) in PATTERN_EDITS.items():
        assert text.count(old) == 1, field
        path.write_text(text.replace(old, new), "utf-8")
        assert changed(root, shop, before) == (parts or set()), field
    path.write_text(f"# a comment\n\n{text}", "utf-8")
    assert changed(root, shop, before) == set()


def test_a_photo_is_in_the_key_of_its_own_part(tmp_path, shop):
    root = copy_of(TINY, tmp_path / "book")
    path = root / "patterns" / f"{CLOUD}.yaml"
    path.write_text(path.read_text("utf-8") + "photo: {file: a.png, alt: a cloud}\n", "utf-8")
    (root / "patterns" / "a.png").write_bytes(b"one")
    one = part_keys(root, shop)
    (root / "patterns" / "a.png").write_bytes(b"two")
    assert changed(root, shop, one) == {CLOUD}


BOOK_EDITS = {   # by field of the book file: what is written instead of what, and the parts that show it; None for all parts
    "title": ("title: A Small Sky", "title: A Sky", {"cover", "imprint"}), "subtitle": ("Two pieces", "Some pieces", {"cover"}),
    "author": ("author: Isobar Bead Studio", "author: Isobar", {"cover", "imprint", "hello"}), "year": ("year: 2026", "year: 2027", {"imprint"}),
    "publisher": ("publisher: Isobar Bead Studio", "publisher: Isobar", {"imprint"}), "edition": ("First", "Second", {"imprint"}),
    "copyright": ("© 2026", "© 2027", {"imprint", *CLOSING, "back"}), "licence": ("make these", "make all", {"imprint"}),
    "contact": ("corrections@", "errors@", {"imprint", *CLOSING}), "isbn": ("order:", "isbn: 978-3-16-148410-0\norder:", set()),
    "language": ("language: en", "language: en-GB", None), "page": ("gutter: 4 mm", "gutter: 5 mm", None),
    "editions": ("order:", "editions: {large: {large: true}}\norder:", set()),
    "order": ("[morning-cloud, evening-star]", "[evening-star, morning-cloud]", {"cover", "imprint", "contents", *own(1, 2, slug=STAR), "find-a-pattern", "back"}),
    "front": ("front: [hello]", "front: []", {"hello", "contents", "before-you-begin", "techniques", *EVERY, "thanks", "glossary", "find-a-pattern", "back"}),
    "back": ("back: [thanks]", "back: []", {"thanks", "contents", "glossary", "find-a-pattern", "back"}),   # what stands behind may change sides
    "spare": ("order:", "spare: 20 %\norder:", {CLOUD, STAR}), "pack": ("order:", "pack: 0.1 g\norder:", own(1, 3)),
    "levels": ("order:", "levels: {beginner: [2-drop]}\norder:", set()), "defaults": ("order:", "defaults: {hand: left}\norder:", own(2, 3) | own(2, slug=STAR)),
    "kinds": ("order:", "kinds: {cylinder 11/0: {shape: cylinder, diameter: 1.7 mm, length: 1.3 mm, hole: 0.8 mm}}\norder:",
              {"cover", "contents", *EVERY, "find-a-pattern"}),
    "threads": ("order:", "threads: {silk: {diameter: 0.2 mm}}\norder:", set()), "lint": ("order:", "lint: {severity: {lone-bead: off}}\norder:", set()),
    "translations": ("order:", "translations: {de: {title: Himmel}}\norder:", set())}


def test_every_field_of_the_book_file_sets_anew_what_shows_it(tmp_path, shop, before):
    assert BOOK_EDITS.keys() == BookFile.fields.keys()
    root = copy_of(TINY, tmp_path / "book")
    path = root / "patterns" / "book.yaml"
    text = path.read_text("utf-8")
    for field, (old, new, parts) in BOOK_EDITS.items():
        path.write_text(text.replace(old, new, 1), "utf-8")
        assert changed(root, shop, before) == (set(before) if parts is None else parts), field


WORKED = own(2, 3) | own(2, slug=STAR)
SHOWN_BY = {   # by template or style sheet: the parts that it makes; None for all. Those that are not named here make none of this book
    "common.css": None, "print.css": None, "page.css.jinja": None, "parts/finder.html.jinja": {"find-a-pattern"}, "parts/imprint.html.jinja": {"imprint"},
    "parts/back.html.jinja": {"back"}, "parts/front.html.jinja": {"cover"}, "parts/pattern.html.jinja": EVERY, "parts/body.html.jinja": own(2) | own(2, slug=STAR),
    **{f"parts/{name}.html.jinja": {CLOUD, STAR} for name in ("opening", "materials")}, **{f"parts/{name}.html.jinja": WORKED for name in ("steps", "key")},
    **{f"parts/{name}.html.jinja": CLOSING for name in ("closing", "web-links")}, **{f"parts/{name}.html.jinja": own(3) for name in ("fringe", "about", "colours")}}


def with_changed(root, names):
    """Let the workspace have these of our templates and style sheets itself, each with small changes."""
    shutil.rmtree(root / "templates", ignore_errors=True)
    for name in names:
        theirs, text = root / "templates" / name, (own_folder() / name).read_text("utf-8")
        old = "</section>" if "</section>" in text else "</"
        theirs.parent.mkdir(parents=True, exist_ok=True)
        theirs.write_text(f"{text}\np {{ color: red }}" if ".css" in name else text.replace(old, f"x{old}"), "utf-8")


def test_every_template_and_style_sets_anew_the_parts_that_it_makes(tmp_path, shop, before):
    root = copy_of(TINY, tmp_path / "book")
    for name, wanted in SHOWN_BY.items():
        with_changed(root, [name])
        assert changed(root, shop, before) == (set(before) if wanted is None else wanted), name
    ours = {path.relative_to(own_folder()).as_posix() for path in own_folder().rglob("*") if path.suffix in (".jinja", ".css")}
    with_changed(root, ours - SHOWN_BY.keys() - {"book.html.jinja", "parts/work.html.jinja"})   # these two only name the others
    assert changed(root, shop, before) == set()


def test_other_fonts_set_all_parts_anew(shop, before, monkeypatch):
    monkeypatch.setattr("booklet.bind.pdf.faces_digest", lambda: "other")
    assert changed(TINY, shop, before) == set(before)
