"""The fringe chart: every strand at its place, spread so far apart that the letters can be read."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from itertools import groupby
from math import pi

from ..craft.language import _, message, ngettext, sentences
from ..craft.piece import Piece, Row
from ..craft.places import places
from ..craft.saying import from_to
from ..craft.strand import LOOP, TWIST, Strand
from . import alphabet, tone
from .beads import OUTLINED, Track, corner, ellipse, lay, outline
from .chart import FIVE, letter_cap, put_letter
from .colour import WHITE
from .columns import Placed, PlacedCharm
from .fit import LEAST_BEAD, Fit, largest
from .fringe_plan import Plan, foot_between, fringe_plan, label_aside, side_marks
from .labels import pen
from .picture import Picture, Style, polyline
from .said import beads_counted, beads_named, span
from .tiles import Margins, Part, map_svg, shown_part, tiles

LAYERS = ("guides", "thread", "ground", "beads", "fives", "letters", "charms", "strand-numbers", "place-numbers", "strand-totals", "bead-numbers", "cut")
UNDER = {"base": message("under the base row"), "lowest": message("under the lowest row"), "edge": message("along the lower edge"),
         "bridges": message("on the thread bridges under the lowest row")}


def fringe_svg(piece: Piece, *, bead: float = LEAST_BEAD, grey: bool = False, blank: bool = False,
               prefix: str = "fringe", on: Callable[[Iterable[str]], Picture] = Picture) -> str:
    """Fringe chart at the scale of `chart_svg`: `bead` mm for the diameter of a body bead."""
    plan = fringe_plan(piece, bead)
    box = plan.box
    return _drawn(plan, tone.tone_of(grey, blank), on).svg(box.left, box.top, *box.size, alt=fringe_alt(piece), prefix=prefix)


def fringe_parts(piece: Piece, bead: float, width: float, height: float, *, prefix: str = "fringe") -> tuple[Part, ...]:
    """The fringe chart in as many parts as pages with room of width x height mm need. No part for one that fits one page."""
    plan = fringe_plan(piece, bead)
    box, strands = plan.box, plan.piece.strands
    margins = Margins(2.2 * plan.cap, 2.4 * plan.cap)
    across = [box.left, *(x for x in (plan.x(column) - plan.pitch / 2 for column in range(plan.columns)) if box.left < x < box.right), box.right]
    step = max(plan.length(key) for strand in strands for key in strand.all)
    down = [box.top, *(plan.start + step * count for count in range(1, int((box.bottom - plan.start - 0.5 * step) / step))), box.bottom]
    found = tiles(across, down, width, height, margins, lambda left, right: foot_between(plan, left, right))
    bars = [(plan.x(strand.number - 1) - 0.3 * plan.pitch, plan.start, plan.x(strand.number - 1) + 0.3 * plan.pitch, plan.foot(strand)) for strand in strands]
    numbers = [(str(strand.number), plan.x(strand.number - 1)) for strand in strands]
    counts = [(str(count), y) for count, y in side_marks(plan)]
    parts = []
    for index, tile in enumerate(found if len(found) > 1 else ()):
        inside = [number for number, x in numbers if tile.left < x < tile.right]
        which = ngettext("strand {numbers}", "strands {numbers}", len(inside), numbers=inside[0] if len(inside) == 1 else from_to(inside[0], inside[-1])) \
            if inside else _("beside the strands")
        level = _(", middle") if tile.cut_top and tile.cut_bottom else _(", lower end") if tile.cut_top else _(", upper end") if tile.cut_bottom else ""
        said = _("Part {number} of {count}: {which}{side}.", number=index + 1, count=len(found), which=which, side=level)
        svg = shown_part(_drawn(plan, "colour"), tile, margins, plan.cap, counts, numbers, alt=f"{fringe_alt(piece)} {said}", prefix=f"{prefix}-{index + 1}")
        parts.append(Part(svg, map_svg(bars, found, index), said, tuple(map(int, inside))))
    return tuple(parts)


def _drawn(plan: Plan, shade: str, on: Callable[[Iterable[str]], Picture] = Picture) -> Picture:
    picture, piece = on(LAYERS), plan.piece
    for row, index, x in plan.stitches():
        _stitch(picture, plan, row, index, x, shade)
    for column in range(plan.columns):
        _place(picture, plan, column)
    for strand in piece.strands:
        picture.part(f"strand-{strand.number}")
        _strand(picture, plan, strand, shade)
    picture.part("")
    _marks_at_side(picture, plan)
    return picture


def fringe_size(piece: Piece, bead: float) -> tuple[float, float]:
    """Width and height in mm of the fringe chart."""
    return fringe_plan(piece, bead).box.size


def fit_fringe(piece: Piece, width: float, height: float, most: float = 6.0) -> Fit:
    """The largest scale at which the fringe chart fits width x height mm, and whether its beads are wide enough to print."""
    return largest(lambda bead: fringe_size(piece, bead), width, height, most)


def fringe_alt(piece: Piece) -> str:
    """What the fringe chart shows, in words."""
    if not piece.strands:
        return _("Fringe chart, without strands.")
    ends = {len(strand.end) for strand in piece.strands}
    keys = [key for strand in piece.strands for key in strand.all]
    has = span((len(strand.all) for strand in piece.strands), beads_counted)
    if len(ends) == 1 and ends != {0}:
        has = ngettext("{beads}, the last {count} of each being end beads", "{beads}, the last {count} of each being end beads", ends.pop(), beads=has)
    return sentences(
        ngettext("Fringe chart: {count} strand, numbered from the left, {place}.", "Fringe chart: {count} strands, numbered from the left, {place}.",
                 len(piece.strands), place=_(UNDER[piece.hang])),
        _("It has {beads}.", beads=has) if len(piece.strands) == 1 else _("Each has {beads}.", beads=has), _("Beads: {beads}.", beads=beads_named(piece, keys)))


def fringe_note(piece: Piece) -> str:
    """How to read this fringe chart, in a few sentences."""
    kinds = {strand.kind for strand in piece.strands}
    parts = [_("Strand 1 hangs at the left.")] if any(strand.number == 1 for strand in piece.strands) else []
    if piece.hang != "base" or len(piece.strands) < len(places(piece)):
        parts.append(_("Strands are numbered by their places {places}, from the left.", places=_(UNDER[piece.hang])))
    parts.append(_("Read each strand from the top down."))
    if any(strand.twigs for strand in piece.strands):
        parts.append(_("A twig stands beside its strand."))
    if LOOP in kinds:
        parts.append(_("The two sides of a loop stand together, each under the number of its place."))
    if TWIST in kinds:
        parts.append(_("So do the two lines of a twisted pair, the first one at the left.") if LOOP in kinds else
                     _("The two lines of a twisted pair stand together, the first one at the left."))
    if any(strand.charms for strand in piece.strands):
        parts.append(_("A ring stands for a charm or ring."))
    return sentences(*parts)


def _stitch(picture: Picture, plan: Plan, row: Row, index: int, x: float, shade: str) -> None:
    """A stitch of the body, far back."""
    y, beads = plan.top, row.stitches[index].beads
    if plan.lying:
        x -= sum(map(plan.length, beads)) / 2
    for key in beads if row.level >= 0 else beads[::-1]:
        fill, length = tone.pale(tone.shown(plan.piece.legend[key].colour, shade)), plan.length(key)
        if plan.lying:
            _lying(picture, plan, fill, Placed(key, x + length / 2, y - plan.kind(key).diameter * plan.scale / 2))
            x += length
        else:
            y -= length
            _run(picture, plan, tone.pale(tone.GAP), fill, [Placed(key, x, y + length / 2)])


def _place(picture: Picture, plan: Plan, column: int) -> None:
    """The number of a place; quieter where no strand hangs."""
    strand = next((strand for strand in plan.piece.strands if strand.number == column + 1), None)
    x, y = plan.x(column), plan.top + 1.25 * plan.cap
    if strand is None:
        if any(strand.number + strand.to == column + 1 for strand in plan.piece.strands) or plan.piece.strands and len(plan.places) != len(plan.piece.strands):
            picture.add("place-numbers", pen(tone.QUIET, 0.7 * plan.cap), alphabet.word(str(column + 1), x, y, 0.7 * plan.cap, "middle"))
        return
    picture.add("thread", Style(stroke=tone.THREAD, width=0.25), polyline([(x, plan.top), (x, plan.top + 0.55 * plan.cap)]))
    aside = label_aside(plan, strand)
    away = 0.0 if strand.kind != LOOP else aside if strand.to < 0 else -aside
    picture.add("strand-numbers", pen(tone.TEXT, plan.cap), alphabet.word(str(column + 1), x + away, y, plan.cap, "middle"))
    if strand.kind == LOOP:   # where its other side hangs
        picture.add("place-numbers", pen(tone.QUIET, plan.cap), alphabet.word(str(column + 1 + strand.to), x - away, y, plan.cap, "middle"))


def _lying(picture: Picture, plan: Plan, fill: str, bead: Placed) -> None:
    """One bead of the base row that lies along it, far back."""
    kind = plan.kind(bead.key)
    width, height = plan.length(bead.key) - plan.gap, kind.diameter * plan.scale - plan.gap
    for layer, colour, spread in (("ground", tone.pale(tone.GAP), 1.6 * plan.gap), ("beads", fill, 0.0)):
        if kind.shape in OUTLINED:
            picture.add(layer, Style(fill=colour, stroke=colour, width=spread, round=True), outline(kind, bead.x, bead.y, height, width, pi / 2))
        else:
            lay(picture, layer, colour, Track.across(bead.x, bead.y, plan.length(bead.key), 1), width + spread, height + spread,
                corner(kind, width, height) + spread / 2)


def _strand(picture: Picture, plan: Plan, strand: Strand, shade: str) -> None:
    x, y, shown = plan.x(strand.number - 1), plan.start, plan.strands[strand.number]
    thread = Style(stroke=tone.THREAD, width=0.25)
    for line in shown.threads:
        points = [(x + px, y + py) for px, py in line]
        if line[0][1] == 0:
            points[0] = (points[0][0], y - 0.4 * plan.cap)
        picture.add("thread", thread, polyline(points))
    moved = [[Placed(bead.key, x + bead.x, y + bead.y, bead.end, bead.number) for bead in run] for run in (*shown.runs, *([bead] for bead in shown.ends))]
    for run in moved:
        for key, same in groupby(run, lambda bead: bead.key):
            _run(picture, plan, tone.GAP, tone.shown(plan.piece.legend[key].colour, shade), list(same))
        for bead in run:
            _letter(picture, plan, bead, shade)
        for bead, after in zip(run, run[1:]):
            if bead.number and min(bead.number, after.number) % FIVE == 0:
                _five(picture, plan, bead, after)
    for charm in shown.charms:
        _charm(picture, plan, PlacedCharm(charm.name, x + charm.x, y + charm.y))
    _total(picture, str(len(strand.all)), x, plan.foot(strand) + 1.1 * plan.cap, 0.8 * plan.cap)


def _letter(picture: Picture, plan: Plan, bead: Placed, shade: str) -> None:
    kind = plan.kind(bead.key)
    low = 0.12 * plan.length(bead.key) if kind.shape == "drop" else 0.0
    put_letter(picture, bead.key, tone.shown(plan.piece.legend[bead.key].colour, shade), bead.x, bead.y + low,
               min(0.62 * plan.bead, letter_cap(kind.diameter * plan.scale, plan.length(bead.key))))


def _five(picture: Picture, plan: Plan, bead: Placed, after: Placed) -> None:
    half = max(plan.kind(key).diameter for key in (bead.key, after.key)) * plan.scale / 2 + 0.09 * plan.bead
    y = bead.y + plan.length(bead.key) / 2
    picture.add("fives", Style(stroke=tone.TEXT, width=0.85 * plan.gap), polyline([(bead.x - half, y), (bead.x + half, y)]))


def _charm(picture: Picture, plan: Plan, charm: PlacedCharm) -> None:
    """A ring, whatever the charm looks like; the words name it."""
    size = 0.74 * plan.bead
    picture.add("charms", Style(fill=WHITE, stroke=tone.TEXT, width=1.4 * plan.gap), ellipse(charm.x, charm.y, size, size))


def _total(picture: Picture, number: str, x: float, y: float, cap: float) -> None:
    """The count below a strand, on a bit of paper of its own that keeps the light lines away from it."""
    half = alphabet.width(number, cap) / 2
    picture.add("thread", Style(stroke=WHITE, width=1.5 * cap, round=True), polyline([(x - half, y), (x + half, y)]))
    picture.add("strand-totals", pen(tone.QUIET, cap), alphabet.word(number, x, y, cap, "middle"))


def _run(picture: Picture, plan: Plan, ground: str, fill: str, beads: list[Placed]) -> None:
    """Equal beads one below the other, with the ground that shows round them."""
    first, kind = beads[0], plan.kind(beads[0].key)
    pitch = plan.length(first.key)
    width, length = kind.diameter * plan.scale - plan.gap, pitch - plan.gap
    for layer, colour, spread in (("ground", ground, 1.6 * plan.gap), ("beads", fill, 0.0)):
        if kind.shape in OUTLINED:
            style = Style(fill=colour, stroke=colour, width=spread, round=True)
            for bead in beads:
                picture.add(layer, style, outline(kind, bead.x, bead.y, width, length))
        else:
            track = Track.down(first.x, first.y - pitch / 2, pitch, len(beads))
            lay(picture, layer, colour, track, length + spread, width + spread, corner(kind, width, length) + spread / 2)


def _marks_at_side(picture: Picture, plan: Plan) -> None:
    """Bead counts at the left, with light lines behind the strands."""
    small = 0.8 * plan.cap
    for count, y in side_marks(plan):
        picture.add("guides", Style(stroke=tone.GUIDE, width=0.15),
                    polyline([(-0.3 * plan.cap, y), (plan.width, y)]))
        picture.add("bead-numbers", pen(tone.QUIET, small), alphabet.word(str(count), -0.8 * plan.cap, y, small, "end"))
