"""A document in parts: where it is cut, and what grows together again at the join."""

import io
import json
import re

import pypdf

from booklet.bind.press.join import FIRST_KEY, FIRST_OBJECT, Join
from booklet.bind.press.link import KEYS, STEP, extent, linked
from booklet.bind.press.fragment import Fragment
from booklet.bind.press.metadata import About
from booklet.bind.press.outline import Outline
from booklet.bind.press.parts import CUT, Part, cut, folio, held, known, known_of

HEAD = '<html lang="en"><head><title>Two skies</title></head><body class="book">'


def test_parts_that_are_held_elsewhere_stand_where_the_document_names_them():
    loaded = []

    def load():
        loaded.append(1)
        return f'<div class="sky more">two <a href="#dawn">{folio("dusk")}</a></div>'

    told = [Part(list, known('<article class="sky" id="dawn">one</article>')), Part(load, known(load()))]
    loaded.clear()
    document = cut(f'{HEAD}<section id="dusk">before</section>{held("0")}</body></html>', {"0": told})
    assert [part.known.opening for part in document.parts] == ["<section>", '<article class="sky">', '<div class="sky more">']
    assert [part.known.id for part in document.parts] == ["dusk", "dawn", ""]
    assert [part.known.folios for part in document.parts] == [(), (), ("dusk",)] and [part.known.links for part in document.parts] == [(), (), ("dawn",)]
    assert loaded == []
    assert document.parts[2].printed({"dawn": "Dawn"}, {"dusk": 7}) == '<div class="sky more">two <a href="book:dawn?Dawn">7</a></div>'


def test_what_is_known_of_a_part_can_be_kept_as_json():
    told = known(f'<div class="sky" id="dawn"><img src="photos/a.png"><a href="#dusk">{folio("dusk")}</a></div>')
    assert known_of(json.loads(json.dumps(told))) == told and told.files == ("photos/a.png",)


def test_a_document_may_hold_all_parts_itself():
    inner = f'<article class="sky" id="dawn">one</article>{CUT}<div class="sky more">two</div>'
    assert [part.html for part in cut(f"{HEAD}{inner}</body></html>").parts] == inner.split(CUT)


def tree(bookmarks):
    return [(one.title, tree(one.below)) for one in bookmarks]


def test_bookmarks_of_one_part_hang_under_those_of_the_part_before():
    outline = Outline()
    for level, title in ((1, "Dawn"), (2, "Materials"), (2, "Chart"), (3, "Key"), (1, "Dusk"), (3, "Key"), (2, "Chart")):
        outline.add(level, title, "[3 0 R /XYZ 0 0 0]", False)
    assert tree(outline.top) == [("Dawn", [("Materials", []), ("Chart", [("Key", [])])]), ("Dusk", [("Key", []), ("Chart", [])])]


def page(text):
    """A fragment of one page."""
    return Fragment(objects=[b"<</Type /Page/Parent \xffG;/MediaBox [0 0 100 100]/Resources <</Font \xffF;>>/Contents \xffo1;/StructParents \xffk0;>>", b"<</Length %d>>" % len(text),
                             b"<</Type /StructElem/S /P/P \xffD;/Pg \xffo0;/K 0>>"],
                    streams={1: text}, pages=[{"object": 0, "side": "right", "name": "", "blank": False}], tops=[2], owners=[b"[\xffo2;]"],
                    names={"here": [0, 10, 90]}, outline=[[1, "Here", 0, 10, 90, False]])


def test_parts_behind_a_longer_one_keep_their_numbers():
    short, long = page(b"q Q"), page(b"q Q")
    long.objects += [b"null"] * 20
    assert extent(short) == extent(long) and extent(short).objects == STEP and extent(short).keys == KEYS
    long.objects += [b"null"] * STEP
    assert extent(long).objects == 2 * STEP


def test_linked_parts_make_a_pdf_whatever_their_numbers():
    made = io.BytesIO()
    join, fonts = Join(made), Fragment(objects=[b"<<>>"])
    for at in range(3):
        join.add(linked(page(b"q %d 0 0 1 0 0 cm Q" % (at + 1)), FIRST_OBJECT + 3 * at * STEP, FIRST_KEY + at * KEYS), [b""])
    join.finish(fonts, About("Three pages", language="en"))
    reader = pypdf.PdfReader(made, strict=True)
    assert [re.search(rb"q (\d)", one.get_contents().get_data())[1] for one in reader.pages] == [b"1", b"2", b"3"]
    assert [entry.title for entry in reader.outline] == ["Here"] * 3
    nums = reader.trailer["/Root"]["/StructTreeRoot"]["/ParentTree"]["/Nums"]
    assert nums[::2] == [0, KEYS, 2 * KEYS] == [one["/StructParents"] for one in reader.pages]
    assert [owner[0].get_object()["/Pg"]["/StructParents"] for owner in nums[1::2]] == nums[::2]
