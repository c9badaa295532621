"""The finished view and swatches: beads at their places, in their colours and true proportion."""

import pytest
from msgspec.structs import replace
from tests.draw.builders import LEGEND, diamond, piece, triangle, v_fringe
from tests.draw.reading import Seen

from booklet.craft.piece import LEFT, Hanger, Piece
from booklet.craft.size import size
from booklet.draw.colour import contrast, grey_of, luminance
from booklet.draw.finished import (finished_alt, finished_size, finished_svg, fit_finished, mirrored, pair_alt,
                                   pair_svg)
from booklet.draw.legend import swatch_alt, swatch_svg

LIGHTS = ("lights", "lights-before", "lights-behind")
SKETCH = piece("  B R G\n B W W R\nG W M S B", strands=("WWB>B", "WWWB>B", "WWWWB>B", "WWB>B", "WB>B"), hanger=Hanger("guard"))
PIECES = {
    "slanting with guard": SKETCH, "triangle": triangle(8), "2-drop diamond": diamond(5, 2), "left hand": triangle(5, hand=LEFT),
    "loop": diamond(6, hanger=Hanger("loop", tuple("SWSWSWS"))), "loop on one stitch": triangle(4, hanger=Hanger("loop", tuple("SSSS"))),
    "cannot be worked": piece("W   B\nW B W"), "mixed": triangle(5, strands=("WWo>D", "WW1cW>WWWWW", "W1c>WW", "WWWB>BGB", "W>")),
}


@pytest.mark.parametrize("shown", PIECES.values(), ids=PIECES)
def test_the_body_has_as_many_beads_as_the_piece(shown):
    body = replace(shown, strands=(), hangers=())
    seen = Seen(finished_svg(body, scale=2), without=LIGHTS)
    assert len(seen.blobs({bead.colour for bead in body.legend.values()})) == sum(
        len(stitch.beads) for row in body.rows for stitch in row.stitches)


@pytest.mark.parametrize("shown", PIECES.values(), ids=PIECES)
def test_all_pieces_have_a_picture_that_holds_them(shown):
    seen = Seen(finished_svg(shown, scale=2))
    rim = [seen.pixels[0], seen.pixels[-1], seen.pixels[:, 0], seen.pixels[:, -1]]
    assert all((edge > 245).all() for edge in rim)


def test_beads_stand_in_their_rows():
    seen = Seen(finished_svg(SKETCH, scale=2), without=LIGHTS)
    grid = ["  B R G", " B W W R", "G W M S B"]
    for line, row in enumerate(grid):
        for at, key in enumerate(row):
            if key != " ":
                assert seen.colour((at + 1) * 1.6, (line + 0.5) * 2.6) == LEGEND[key].colour


def test_straight_strands_hang_under_their_stitches():
    seen = Seen(finished_svg(SKETCH, scale=2), without=LIGHTS)
    for strand in SKETCH.strands:
        for index, key in enumerate(strand.beads[:2]):
            assert seen.colour((strand.number - 0.5) * 3.2, 3 * 2.6 + (index + 0.5) * 2.6) == LEGEND[key].colour


def test_size_is_true():
    plain = triangle(9, strands=("WWWWWWWW>B",) * 9)
    width, height = finished_size(plain, 1.0)
    assert width - 1.0 == pytest.approx(size(plain).width, abs=0.6)    # swaying strands may reach out a little
    assert height - 1.0 == pytest.approx(size(plain).length, abs=0.4)
    wide, high = finished_size(plain, 3.0)
    assert (wide - 1, high - 1) == pytest.approx((3 * (width - 1), 3 * (height - 1)), rel=1e-6)


@pytest.mark.parametrize("pieces", [1, 2])
def test_fit_fills_the_box(pieces):
    shown = triangle(9, strands=v_fringe(9))
    scale = fit_finished(shown, 40, 60, pieces)
    width, height = finished_size(shown, scale, pieces)
    assert width <= 40 and height <= 60
    assert max(width / 40, height / 60) > 0.97


def test_the_second_of_a_pair_is_alike_or_turned_over():
    body = replace(SKETCH, strands=(), hangers=())
    step = (size(body).width + 7.0) * 2
    alike, turned = (Seen(pair_svg(body, mirror=mirror, scale=2), without=LIGHTS) for mirror in (False, True))
    grid = ["  B R G", " B W W R", "G W M S B"]
    for line, row in enumerate(grid):
        for at, key in enumerate(row):
            if key != " ":
                x, y = (at + 1) * 1.6, (line + 0.5) * 2.6
                assert alike.colour(step + x, y) == turned.colour(x, y) == LEGEND[key].colour
                assert turned.colour(step + size(body).width * 2 - x, y) == LEGEND[key].colour


@pytest.mark.parametrize("shown", PIECES.values(), ids=PIECES)
def test_turning_over_twice_changes_nothing(shown):
    assert mirrored(mirrored(shown)) == shown


def test_small_pictures_have_fewer_lights():
    large, small = (finished_svg(SKETCH, scale=scale).count('class="lights') for scale in (3, 0.6))
    assert small < large / 2


def test_elements_do_not_grow_with_beads():
    few, many = (finished_svg(triangle(size, keys="WBG", strands=("WBG" * size + ">WBG",) * size), scale=2).count("<") for size in (8, 40))
    assert few == many


def test_hangers():
    bare = finished_size(triangle(5), 1)[1]
    assert finished_size(replace(triangle(5), hangers=(Hanger("guard"),)), 1)[1] > bare + 4
    loop = Seen(finished_svg(PIECES["loop"], scale=2), without=LIGHTS)
    assert len([blob for blob in loop.blobs([LEGEND["S"].colour], least=0.5) if blob[1] < 0]) == 4
    assert 'class="metal"' not in finished_svg(triangle(5))


def test_alternative_text():
    guarded = replace(triangle(11, strands=v_fringe(11)), hangers=(Hanger("guard"),))
    assert finished_alt(guarded) == (
        "The finished piece, 18 mm wide and 44 mm long without the ear wire: a body of 11 rows, a fringe of 11 strands, "
        "a thread guard with a plain ring. Beads: W chalk white, B storm blue, R rowan red, G old gold.")
    assert pair_alt(triangle(2), mirror=True) == (
        "The finished pair, the second the mirror image of the first; each piece, 3 mm wide and 3 mm long without the ear wire: a body of 2 rows. "
        "Beads: W chalk white.")
    assert finished_alt(Piece(LEGEND, 1, "right", ())) == "The finished piece, without rows."
    assert Seen(finished_svg(Piece(LEGEND, 1, "right", ()))).root.get("role") == "img"


@pytest.mark.parametrize("bead", LEGEND.values(), ids=LEGEND)
@pytest.mark.parametrize("grey", [False, True])
def test_a_swatch_is_one_bead_with_a_readable_letter(bead, grey):
    colour = grey_of(bead.colour) if grey else bead.colour
    plain = Seen(swatch_svg(bead, width=8, grey=grey), without=("lights",))
    (blob,) = plain.blobs([colour])
    assert blob[3] / blob[2] == pytest.approx(bead.kind.length / bead.kind.diameter, rel=0.1)
    lettered = Seen(swatch_svg(bead, width=8, grey=grey, lettered=True))
    (letter,) = lettered.spelt("letters")
    assert letter.char == bead.key
    for path in lettered.paths("beads") + lettered.paths("lights"):
        under = path.get("stroke") or path.get("fill")
        assert contrast(letter.ink, under) >= 4.5


@pytest.mark.parametrize("finish", ["matte", "lustre", "metallic", "transparent", "opaque"])
def test_every_finish_has_its_own_light(finish):
    def marks(name):
        paths = Seen(swatch_svg(replace(LEGEND["B"], finish=name))).paths("lights")
        return {(path.get("stroke"), path.get("d")) for path in paths}

    assert marks(finish)
    assert all(marks(finish) != marks(other) for other in ("matte", "lustre", "metallic", "transparent", "opaque") if other != finish)
    lightest = max(luminance(stroke) for stroke, _ in marks(finish))
    assert lightest > luminance(LEGEND["B"].colour)


def test_swatch_text():
    assert swatch_alt(LEGEND["B"]) == "Bead B: storm blue, lustre, cylinder 11/0."
