"""Twigs, loops, twisted pairs, charms and all places, read back from the fringe chart and the finished view."""

import pytest
from msgspec.structs import replace
from tests.draw.builders import CYLINDER, LEGEND, diamond, piece, triangle
from tests.draw.reading import Seen

from booklet.craft.drape import loop
from booklet.craft.places import places
from booklet.craft.size import size
from booklet.craft.strand import LOOP, TWIST, Charm, Strand, Twig
from booklet.draw.finished import finished_alt, finished_size, finished_svg, mirrored
from booklet.draw.fringe import fringe_alt, fringe_note, fringe_svg
from booklet.draw.fringe_plan import fringe_plan

BEAD = 3.2
MARKS = ("letters", "fives", "guides", "thread", "charms", "strand-numbers", "place-numbers", "strand-totals", "bead-numbers")
LIGHTS = ("lights", "lights-before", "lights-behind", "lights-twigs")
BRANCHED = Strand(2, tuple("WWWWWWWWWW"), tuple("BBB"), hung=(Twig(3, tuple("GG"), ("R",)), Twig(5, tuple("GGG"), tuple("RRR")), Twig(7, tuple("GG"), ("R",))))
LOOPED = Strand(4, tuple("WWWBBBBWWWW"), (), LOOP, 1)
TWISTED = Strand(6, tuple("WWWWWWo"), ("D",), TWIST, second=tuple("BBBBBBo"))
CHARMED = Strand(7, tuple("WWWBBB"), tuple("BGGB"), hung=(Charm(3, "ring"),), turned=(Charm(2, "star"),))
ALL = (Strand(1, tuple("W1co"), ("D",)), BRANCHED, LOOPED, TWISTED, CHARMED)


def fringed(*strands, **more):
    return replace(triangle(7), legend=LEGEND, strands=strands, charms={"ring": 4.0, "star": 9.0}, **more)


@pytest.mark.parametrize("shown", [fringed(*ALL), fringed(*ALL, hand="left"), replace(fringed(*ALL), strands=tuple(
    strand.turned_over(7) for strand in reversed(ALL)))], ids=["right", "left", "turned over"])
def test_the_chart_shows_every_bead_once_and_nothing_overlaps(shown):
    seen = Seen(fringe_svg(shown, bead=BEAD), without=MARKS)
    count = sum(len(strand.all) for strand in shown.strands)
    assert len(Seen(fringe_svg(shown, bead=BEAD)).spelt("letters")) == count
    assert len(seen.blobs({bead.colour for bead in shown.legend.values()}, least=1.0)) == count


@pytest.mark.parametrize("hand", ["right", "left"])
def test_columns_are_read_from_the_top_down(hand):
    shown = fringed(BRANCHED, LOOPED, TWISTED, hand=hand)
    letters = Seen(fringe_svg(shown, bead=BEAD)).spelt("letters")
    plan, columns = fringe_plan(shown, BEAD), {}
    for letter in sorted(letters, key=lambda letter: letter.y):
        columns.setdefault(round(letter.x, 1), []).append(letter.char)
    across = ["".join(columns[x]) for x in sorted(columns)]
    assert {"WWWWWWWWWWB", "GGR", "GGGR"} <= set(across)                  # the strand with its lowest end bead, and twigs
    assert "WWWBB" in across and "WWWWB" in across                      # both sides of the loop; its lowest bead between them
    assert across.index("WWWWWWo") + 2 == across.index("BBBBBBo")     # the drop between the two
    assert plan.pitch > BEAD


def test_places_have_their_numbers():
    seen = Seen(fringe_svg(fringed(LOOPED, Strand(1, ("W",), ("B",))), bead=BEAD))
    assert sorted(number for number, _, _ in seen.numbers("strand-numbers")) == [1, 4]
    assert sorted(number for number, _, _ in seen.numbers("place-numbers")) == [2, 3, 5, 5, 6, 7]   # 5 is the other side of the loop


@pytest.mark.parametrize(("hang", "stitches"), [("base", 5), ("edge", 9), ("lowest", 1)])
def test_the_chart_shows_the_stitches_that_strands_hang_from(hang, stitches):
    shown = replace(diamond(5), hang=hang)
    shown = replace(shown, strands=tuple(Strand(n, ("W",), ("B",)) for n in range(1, len(places(shown)) + 1)))
    assert len(list(fringe_plan(shown, BEAD).stitches())) == stitches == len(shown.strands)
    bridges = replace(fringed(*(Strand(n, ("W",), ("B",)) for n in range(1, 7))), hang="bridges")
    assert len(list(fringe_plan(bridges, BEAD).stitches())) == 7


@pytest.mark.parametrize(("hang", "stitches", "steps"), [("lowest", 5, [1, 1, 1.5, 1]), ("bridges", 5, [1, 2.5])])
def test_a_gap_of_the_row_is_a_gap_over_the_strands(hang, stitches, steps):
    """Two parts of three and two stitches: five places under them, or three on their bridges."""
    legs = replace(piece("W W W W W W W\n W W W   W W", base=1), legend=LEGEND, hang=hang)
    shown = replace(legs, strands=tuple(Strand(n, ("W",), ("B",)) for n in range(1, len(places(legs)) + 1)))
    plan = fringe_plan(shown, BEAD)
    across = [plan.x(column) / plan.pitch for column in range(plan.columns)]
    assert [right - left for left, right in zip(across, across[1:])] == pytest.approx(steps)
    assert len(list(plan.stitches())) == stitches
    assert len({(row.name, index) for row, index, _ in plan.stitches()}) == stitches
    numbers = sorted((x, number) for number, x, _ in Seen(fringe_svg(shown, bead=BEAD)).numbers("strand-numbers"))
    assert [number for _, number in numbers] == list(range(1, len(shown.strands) + 1))


def test_strands_hang_where_their_places_are():
    shown = replace(diamond(4), hang="edge")
    seen = Seen(finished_svg(replace(shown, legend=LEGEND, strands=tuple(Strand(n, tuple("SS"), ("S",)) for n in (1, 4, 7))), scale=2), without=LIGHTS)
    rows = {1: 4, 4: 7, 7: 4}   # rows above the strand's place
    for number, above in rows.items():
        assert seen.colour(number * 1.6, above * 2.6 + 1.3) == LEGEND["S"].colour


def test_a_loop_is_round_at_its_foot_and_hangs_from_both_places():
    seen = Seen(finished_svg(fringed(Strand(3, ("S",) * 21, (), LOOP, 2)), scale=4), without=LIGHTS)
    top = 7 * 1.3 * 4
    beads = loop((2.5 * 6.4, top), (4.5 * 6.4, top), [1.3 * 4] * 21, 4)
    assert all(seen.colour(bead.x, bead.y) == LEGEND["S"].colour for bead in beads)
    assert max(beads, key=lambda bead: bead.y) is beads[10] and beads[10].x == pytest.approx(3.5 * 6.4, abs=0.01)
    assert [bead.x + other.x for bead, other in zip(beads, beads[::-1])] == pytest.approx([7 * 6.4] * 21, abs=0.01)
    assert seen.colour(3.5 * 6.4, beads[10].y - 8) == "#ffffff"     # nothing hangs in its middle


def test_every_kind_of_bead_has_its_size_in_a_twig():
    seen = Seen(finished_svg(fringed(Strand(4, ("W",) * 8, ("B",), hung=(Twig(3, ("S",), ("D",)),))), scale=4), without=LIGHTS)
    (drop,) = seen.blobs([LEGEND["D"].colour])
    across = 4 * LEGEND["D"].kind.diameter
    assert 0.8 * across < min(drop[2:]) <= max(drop[2:]) < 1.3 * across and CYLINDER.diameter < LEGEND["D"].kind.diameter


def test_the_picture_holds_everything_and_is_as_long_as_the_piece():
    shown = fringed(*ALL)
    seen = Seen(finished_svg(shown, scale=2))
    rim = [seen.pixels[0], seen.pixels[-1], seen.pixels[:, 0], seen.pixels[:, -1]]
    assert all((edge > 245).all() for edge in rim)
    assert finished_size(shown, 1.0)[1] - 1.0 == pytest.approx(size(shown).length, abs=2.0)
    assert mirrored(mirrored(shown)) == shown and [strand.number for strand in mirrored(shown).strands] == [1, 2, 4, 6, 7]


def test_elements_do_not_grow_with_beads():
    def elements(count):
        strands = tuple(Strand(2 * n + 1, ("W",) * count, ("B",), LOOP if n % 2 else "straight", n % 2,
                               hung=() if n % 2 else (Twig(2, ("G",) * count, ("R",)),)) for n in range(3))
        return finished_svg(fringed(*strands), scale=2).count("<"), fringe_svg(fringed(*strands), bead=BEAD).count("<")
    assert elements(8) == elements(40)


def test_words_of_the_pictures():
    shown = fringed(*ALL, hang="lowest")
    assert fringe_alt(shown).startswith("Fringe chart: 5 strands, numbered from the left, under the lowest row. ")
    assert "a fringe of 5 strands with 2 charms" in finished_alt(shown)
    assert fringe_note(fringed(*(Strand(n, ("W",), ("B",)) for n in range(1, 8)))) == "Strand 1 hangs at the left. Read each strand from the top down."
    assert fringe_note(shown) == (
        "Strand 1 hangs at the left. Strands are numbered by their places under the lowest row, from the left. Read each strand from the top down. "
        "A twig stands beside its strand. The two sides of a loop stand together, each under the number of its place. "
        "So do the two lines of a twisted pair, the first one at the left. A ring stands for a charm or ring.")
