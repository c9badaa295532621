"""What a pattern's page shows, computed once and ready to print. Templates only place it."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace

from markupsafe import Markup
from msgspec import structs

from ..craft.beads import Bead, finish_said, kind_said
from ..craft.events import Section
from ..craft.language import _, decimal, ngettext, pgettext, plainly, sentences
from ..craft.pair import has_two_faces, is_symmetric
from ..craft.passes import needle_for
from ..craft.piece import Piece
from ..craft.plan import material_said, thread_said
from ..craft.saying import from_to
from ..craft.size import mass, size
from ..craft.steps import reading_the_chart, steps
from ..craft.tally import BeadTally, Tally, tally
from ..craft.techniques import techniques_said
from ..craft.thread import ThreadUse, thread_totals, thread_use
from ..craft.words import RowWords, StrandWords, row_words, strand_words
from ..draw.chart import chart_parts, fit_chart
from ..draw.finished import finished_svg, fit_finished
from ..draw.fringe import fit_fringe, fringe_note, fringe_parts
from ..draw.tiles import Part
from ..source.pattern import Pattern
from .accent import accent
from .artist import Artist, Paper, told
from .geometry import Box, Room
from .numbers import count, grams, metres, mm_and_inches
from .passages import joined
from .pictures import Picture, picture
from .photos import photo_name
from .placeholders import values_of
from .prose import prose
from .qr import qr_svg

HEAVY = 10.0     # grams of one ear; published pages begin to call an earring heavy at 5 to 10 g
WEIGHTY = 5.0
BESIDE_PHOTO = 0.45    # of the height that a view has without a photo
LARGEST_VIEW = 3.0   # times life size
LARGER_BODY = 1.5      # times the scale of the fringe chart
LEAD = 24.0          # mm, what the words over the charts of a second piece take
_THREADED = {"body": lambda: pgettext("thread for", "body"), "fringe": lambda: pgettext("thread for", "fringe"), "warps": lambda: pgettext("thread for", "warps")}


@dataclass(frozen=True)
class Fact:
    """One line of the facts beside the picture."""

    name: str
    text: str


@dataclass(frozen=True)
class Material:
    """One colour of the materials, as printed."""

    swatch: Picture
    key: str
    name: str
    finish: str
    kind: str
    piece: str
    total: str
    to_buy: str
    grams: str
    packs: str


@dataclass(frozen=True)
class Listed:
    """Something to have ready: how many, and what."""

    amount: str
    what: str


@dataclass(frozen=True)
class StepShown:
    id: str
    title: str
    html: Markup
    picture: Picture | None = None   # where the needle does something


@dataclass(frozen=True)
class PartShown:
    """A part of a chart that goes on over several pages, and the map that shows where it lies."""

    chart: Picture
    map: Picture
    said: str


@dataclass(frozen=True)
class Colourway:
    name: str
    view: Picture
    changes: str
    beads: Mapping[str, Bead]   # those that change


@dataclass(frozen=True)
class LinkShown:
    label: str
    url: str
    qr: Markup


@dataclass(frozen=True)
class Shown:
    """A pattern, ready to print."""

    slug: str
    title: str
    version: str
    summary: str
    level: str
    accent: str
    pieces: int
    drop: int
    spare: str
    view: Picture       # one piece, or both of a pair
    small: Picture      # one piece, at one scale in the whole book
    facts: tuple[Fact, ...]
    materials: tuple[Material, ...]
    kinds: tuple[str, ...]
    findings: tuple[Listed, ...]
    threads: tuple[Listed, ...]
    chart: Picture
    start: str
    rows: tuple[RowWords, ...]
    fringe: Picture | None
    fringe_note: str
    strands: tuple[StrandWords, ...]
    steps: tuple[StepShown, ...]
    notes: Markup
    colourways: tuple[Colourway, ...]
    links: tuple[LinkShown, ...]
    photo: str          # its address on a page; empty if there is none
    photo_alt: str
    mark: str
    tools: Listed = Listed("", "")
    chart_parts: tuple[PartShown, ...] = ()     # in place of the chart, where it does not fit a page
    fringe_parts: tuple[PartShown, ...] = ()
    changes: frozenset[Section] = frozenset()   # the thread is changed after these
    second: Shown | None = None   # the second piece, where it has charts and words of its own
    is_second: bool = False
    pair: str = ""                # how the second piece of a mirrored pair is made

    @property
    def body_steps(self) -> tuple[StepShown, ...]:
        """The steps up to the hanger; all of them where there is no fringe."""
        return self.steps[:self._fringe_begins]

    @property
    def fringe_steps(self) -> tuple[StepShown, ...]:
        """The steps from the first of the fringe on, to the ear wire."""
        return self.steps[self._fringe_begins:]

    @property
    def _fringe_begins(self) -> int:
        return next((index for index, step in enumerate(self.steps) if step.id.startswith("fringe")), len(self.steps))


def shown(pattern: Pattern, room: Room, small: float, draw: Artist = Paper(), fits: Mapping[str, float] | None = None) -> Shown:
    """Everything that the page of a pattern shows, drawn for the room there is; `small` is the scale of small views, `fits` what beads_that_fit says, where that is known."""
    piece, slug = pattern.piece, pattern.slug
    body_bead, fringe_bead = chart_scales(piece, room, fits)
    counts = tally(piece, pattern.pieces, pattern.spare_percent, pattern.least_spare, pattern.pack_grams)
    uses = thread_use(piece, pattern.thread)
    values = values_of(pattern, counts)
    view = Shown(
        slug=slug, title=pattern.title, version=pattern.version, summary=pattern.summary, level=_(pattern.level),
        accent=accent(counts), pieces=pattern.pieces, drop=pattern.drop, spare=_spare(pattern),
        view=_view(pattern, room.view, draw), small=draw.small(piece, small, slug), facts=_facts(pattern, counts),
        materials=tuple(_material(line, draw.swatch(line.bead, slug)) for line in counts.lines), kinds=_kinds(counts), findings=_findings(pattern),
        threads=_threads(pattern, uses), tools=_tools(pattern), changes=_changes(uses), pair=_pair(pattern),
        chart=draw.chart(piece, body_bead, slug), start=_start(piece, body_bead),
        rows=row_words(piece), fringe=draw.fringe(piece, fringe_bead, slug) if piece.strands else None,
        fringe_note=fringe_note(piece), strands=strand_words(piece), steps=_steps(pattern, piece, uses, values, draw), notes=prose(pattern.notes, values, top=3),
        colourways=tuple(_colourway(name, changed, piece, room.colourway, draw) for name, changed in pattern.colourways.items()),
        links=tuple(LinkShown(link.label, link.url, qr_svg(link.url, link.label)) for link in pattern.links),
        photo=photo_name(pattern), photo_alt=pattern.photo.alt if pattern.photo else "", mark=mark(pattern.title, pattern.version))
    if not fits or body_bead > fits["body"] or piece.strands and fringe_bead > fits["fringe"]:
        view = _in_parts(view, piece, room, (body_bead, fringe_bead), slug)
    return replace(view, second=_second(view, pattern, room, values, draw)) if pattern.second else view


def _in_parts(view: Shown, piece: Piece, room: Room, beads: tuple[float, float], name: str) -> Shown:
    """The view with those charts in parts that do not fit the room."""
    if not room.tiled:
        return view
    box = room.beside_key(len(piece.legend))
    body = chart_parts(piece, beads[0], box.width, box.height, prefix=f"{name}-chart")
    fringe = fringe_parts(piece, beads[1], box.width, box.height, prefix=f"{name}-fringe") if piece.strands else ()
    return replace(view, chart_parts=_parts(body, view.rows), fringe_parts=_parts(fringe, view.strands))


def _parts(found: Iterable[Part], words: Iterable[RowWords | StrandWords]) -> tuple[PartShown, ...]:
    return tuple(PartShown(told(part.svg, (line for line in words if line.number in part.numbers)), picture(part.map), part.said) for part in found)


def _second(view: Shown, pattern: Pattern, room: Room, values: Mapping[str, str], draw: Artist) -> Shown:
    """The charts and words of the second piece, and the steps that differ; everything else is as for the first."""
    piece, name = pattern.second, f"{pattern.slug}-second"
    uses = thread_use(piece, pattern.thread)
    body_bead, fringe_bead = chart_scales(piece, room)
    body_bead = max(room.least if room.tiled else 0.0, min(body_bead, fit_chart(piece, room.chart.width, room.beside_key(len(piece.legend)).height - LEAD, room.most).bead))
    second = replace(
        view, is_second=True, chart=draw.chart(piece, body_bead, name), start=_start(piece, body_bead),
        rows=row_words(piece), fringe=draw.fringe(piece, fringe_bead, name) if piece.strands else None,
        fringe_note=fringe_note(piece), strands=strand_words(piece), changes=_changes(uses),
        steps=tuple(step for step in _steps(pattern, piece, uses, values, draw) if step not in view.steps))
    return _in_parts(second, piece, replace(room, chart=Box(room.chart.width, room.chart.height - LEAD)), (body_bead, fringe_bead), name)


def finished(piece: Piece, scale: float) -> Picture:
    """The finished piece at a scale of its real size."""
    return picture(finished_svg(piece, scale=scale))


def _view(pattern: Pattern, box: Box, draw: Artist) -> Picture:
    piece = pattern.piece
    if pattern.photo:
        box = Box(box.width, box.height * BESIDE_PHOTO)
    scale = min(fit_finished(piece, box.width, box.height, pattern.pieces), LARGEST_VIEW)
    return draw.pair(piece, pattern.mirror, scale, pattern.slug) if pattern.pieces == 2 else draw.finished(piece, scale, f"{pattern.slug}-one")


def mark(title: str, version: str) -> str:
    """What the foot of a pattern's pages says."""
    return _("{title} · version {version}", title=title, version=version)


def beads_that_fit(piece: Piece, room: Room) -> dict[str, float]:
    """mm from bead to bead at which each chart has all of its room; 0 for one that does not fit."""
    box = room.beside_key(len(piece.legend))
    return {"body": fit_chart(piece, box.width, box.height, room.most).bead,
            **({"fringe": fit_fringe(piece, box.width, box.height, room.most).bead} if piece.strands else {})}


def chart_scales(piece: Piece, room: Room, fits: Mapping[str, float] | None = None) -> tuple[float, float]:
    """mm from stitch to stitch in the body chart and in the fringe chart, each as large as the room allows, but the body's beads at most half as wide again.

    Where charts can go on over several pages, none is drawn with beads narrower than the room's least.
    """
    fits, least = fits or beads_that_fit(piece, room), room.least if room.tiled else 0.0
    body = max(least, fits["body"])
    if not piece.strands:
        return body, body
    fringe = max(least, fits["fringe"])
    return min(body, max(LARGER_BODY * fringe, least)), fringe


def _facts(pattern: Pattern, counts: Tally) -> tuple[Fact, ...]:
    piece, measured, weight = pattern.piece, size(pattern.piece), mass(pattern.piece)
    facts = [Fact(_("Level"), _(pattern.level)), Fact(_("Makes"), _makes(pattern)), Fact(_("Techniques"), techniques_said(piece)),
             Fact(_("Width"), mm_and_inches(measured.width)), Fact(_("Length"), _("{length}, ear wire not counted", length=mm_and_inches(measured.length)))]
    if piece.strands:
        facts.append(Fact(_("Body and fringe"), _("{body} and {fringe}", body=mm_and_inches(measured.body), fringe=mm_and_inches(measured.fringe))))
    beads = _("{number} a piece", number=count(counts.beads))
    if counts.pieces > 1:
        beads = _("{first}, {second}", first=beads, second=_("{number} in all", number=count(counts.beads * counts.pieces)))
    facts += [Fact(_("Mass"), _mass(weight, pattern.pieces)), Fact(_("Beads"), beads)]
    return tuple(Fact(fact.name, fact.text[:1].upper() + fact.text[1:]) for fact in facts)   # style sheets can do this only by tearing the first letter off


def _mass(weight: float, pieces: int) -> str:
    said = _("{grams} g of beads each piece, without the ear wire", grams=grams(weight)) if pieces > 1 else \
        _("{grams} g of beads without the ear wire", grams=grams(weight))
    return _("{mass}; heavy for an ear", mass=said) if weight > HEAVY else _("{mass}; on the heavy side for an ear", mass=said) if weight > WEIGHTY else said


def _makes(pattern: Pattern) -> str:
    if pattern.makes != "pair":
        return _("a single piece")
    if pattern.second:
        return _("a pair; the second piece mirrors the first and has charts and words of its own")
    return _("a pair; the second piece is the first turned over") if pattern.mirror and not is_symmetric(pattern.piece) else _("a pair of equal pieces")


def _pair(pattern: Pattern) -> str:
    """How the second piece of a mirrored pair is made."""
    if not pattern.mirror or pattern.pieces == 1:
        return ""
    if is_symmetric(pattern.piece):
        return _("Work it like the first: left and right are alike, so it is its own mirror image.")
    if pattern.second is None:
        return _("Work it like the first and turn it over: flat beadwork shows the same beads on both faces, so turning is enough. "
                "The side that faced you becomes the back, and the two mirror each other.")
    why = _("The piece has a front, so turning a second one over would not do.") if has_two_faces(pattern.piece) else \
        _("Strands with branches do not lie flat, so turning a second one over would not do.")
    return sentences(why, _("Work it from the charts and words of the second piece, which are the mirror "
            "image of those of the first; the rows are worked in the same order and start at the same side. Steps that name other rows or places "
            "than for the first piece follow the words."))


def _spare(pattern: Pattern) -> str:
    spare = _("{percent} % spare", percent=plainly(pattern.spare_percent))
    return ngettext("{spare}, at least {count} bead a colour", "{spare}, at least {count} beads a colour", pattern.least_spare,
                    spare=spare, count=count(pattern.least_spare)) if pattern.least_spare else spare


def _material(line: BeadTally, swatch: Picture) -> Material:
    bead = line.bead
    return Material(swatch, bead.key, bead.name, finish_said(bead.finish), kind_said(bead.kind.name), count(line.piece), count(line.total), count(line.to_buy),
                    grams(line.grams), str(line.packs))


def _kinds(counts: Tally) -> tuple[str, ...]:
    """What was taken for each kind of bead in sizes and grams."""
    kinds = {line.bead.kind.name: line.bead.kind for line in counts.lines}
    return tuple(_("{kind} is taken as {width} mm wide and {length} mm long, {count} beads a gram", kind=kind_said(kind.name), width=plainly(kind.diameter),
                   length=plainly(kind.length), count=decimal(1000 / kind.mass, 0)) for kind in kinds.values())


def _findings(pattern: Pattern) -> tuple[Listed, ...]:
    return tuple(Listed(count(item.each * pattern.pieces), joined(", ", item.item, item.size) if item.size else item.item) for item in pattern.findings_list)


def _threads(pattern: Pattern, uses: tuple[ThreadUse, ...]) -> tuple[Listed, ...]:
    """One line for each kind of thread, for all pieces."""
    plan, lines = pattern.thread, []
    for total in thread_totals(uses, pattern.pieces, plan):
        known = plan.kinds.get(total.kind)
        kind = thread_said(total.kind)
        if known and known.material:
            kind = _("{thread} ({diameter} mm, {material})", thread=kind, diameter=plainly(known.diameter), material=material_said(known.material))
        cut = ngettext("{count} working length of {length}", "{count} working lengths of {length}", total.lengths, count=count(total.lengths), length=metres(plan.length))
        if total.warps:
            cut = ngettext("{lengths}, {count} warp of {length}", "{lengths}, {count} warps of {length}", total.warps,
                           lengths=cut, count=count(total.warps), length=metres(total.warp))
        what = _("{thread} for {parts}: {lengths} in all", thread=kind, parts=_(" and ").join(_THREADED[part]() for part in total.parts), lengths=cut)
        if total.spools:
            what = ngettext("{what}; {count} spool of {length} m", "{what}; {count} spools of {length} m", total.spools,
                            what=what, count=count(total.spools), length=plainly(known.spool / 1000))
        lines.append(Listed(metres(total.length), what))
    return tuple(lines)


def _tools(pattern: Pattern) -> Listed:
    """Needles of the size that goes through every bead, and what else is needed."""
    needle = needle_for(pattern.piece, pattern.thread)
    size = needle.size if needle else from_to(10, 12)
    return Listed("2", _("beading needles, size {size}; scissors, and two pliers for the ear wires", size=size) if pattern.ear_wire else
                  _("beading needles, size {size}; scissors", size=size))


def _changes(uses: tuple[ThreadUse, ...]) -> frozenset[Section]:
    return frozenset(section for use in uses for section in use.after)


def _start(piece: Piece, bead: float) -> str:
    """How to read this chart, in a sentence."""
    scale = bead / max(piece.legend[key].kind.diameter for stitch in piece.base.stitches for key in stitch.beads)
    return sentences(
        reading_the_chart(piece), "" if piece.drop == 1 else _("A stitch is a set of {count} beads.", count=piece.drop),
        _("Rows {number} and on lie below it and are worked last.", number=piece.lower[0].number) if piece.lower else "",
        _("Drawn {scale} times as large as the piece.", scale=decimal(scale, 1)))


def _steps(pattern: Pattern, piece: Piece, uses: tuple[ThreadUse, ...], values: Mapping[str, str], draw: Artist) -> tuple[StepShown, ...]:
    shown_steps, worked = [], steps(piece, pattern.thread, uses, pattern.ear_wire)
    pictures = draw.scenes(piece, uses, [step.id for step in worked])
    for step in worked:
        own = pattern.steps.get(step.id)
        plain = Markup("<p>{}</p>").format(step.text)
        if own is not None:
            middle = prose(own.text, values, top=4) if own.text else plain
            plain = Markup("").join([prose(own.before, values, top=4), middle, prose(own.after, values, top=4)])
        shown_steps.append(StepShown(step.id, step.title, plain, pictures.get(step.id)))
    return tuple(shown_steps)


def _colourway(name: str, changed: Mapping[str, Bead], piece: Piece, box: Box, draw: Artist) -> Colourway:
    other = structs.replace(piece, legend={**piece.legend, **changed})
    changes = joined("; ", *(joined(" ", key, joined(", ", bead.name, finish_said(bead.finish))) for key, bead in changed.items()))
    plain = "; ".join(f"{key} {bead.name}, {finish_said(bead.finish)}" for key, bead in changed.items())
    view = draw.colourway(other, changed, fit_finished(piece, box.width, box.height), _("The same piece in the colourway {name}: {changes}", name=name, changes=plain))
    return Colourway(name, view, changes, changed)
