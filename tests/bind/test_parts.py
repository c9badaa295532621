"""A document in parts: where it is cut, and what grows together again at the join."""

import io
import re

import pypdf

from booklet.bind.press.join import FIRST_KEY, FIRST_OBJECT, Join
from booklet.bind.press.link import KEYS, STEP, extent, linked
from booklet.bind.press.fragment import Fragment
from booklet.bind.press.metadata import About
from booklet.bind.press.outline import Outline
from booklet.bind.press.parts import CUT, cut, folio, held, written

HEAD = '<html lang="en"><head><title>Two skies</title></head><body class="book">'


def test_what_is_held_elsewhere_comes_in_as_many_parts_as_it_is_cut_into():
    loaded = []

    def load():
        loaded.append(1)
        return f'<article class="sky" id="dawn">one</article>{CUT}\n<div class="sky more">two {folio("dusk")}</div>'

    document = cut(f'{HEAD}<section id="dusk">before</section>{held("0")}</body></html>', {"0": load})
    assert [part.known.opening for part in document.parts] == ["<section>", '<article class="sky">', '<div class="sky more">']
    assert [part.known.id for part in document.parts] == ["dusk", "dawn", ""]
    assert [part.known.folios for part in document.parts] == [(), (), ("dusk",)]
    assert len(loaded) == 1
    assert document.parts[2].printed({}, {"dusk": 7}) == '<div class="sky more">two 7</div>'


def test_a_document_that_holds_everything_itself_has_the_same_parts():
    inner = f'<article class="sky" id="dawn">one</article>{CUT}<div class="sky more">two</div>'
    apart, whole = (cut(f"{HEAD}{text}</body></html>", {"0": lambda: inner}) for text in (held("0"), inner))
    assert [part.html for part in apart.parts] == [part.html for part in whole.parts] == [written(part.html).html for part in whole.parts]


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
