"""The article of one pattern: everything that a page, or a file of its own, shows of it."""

from __future__ import annotations

import json
from base64 import b64encode
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import groupby
from pathlib import PurePosixPath

from markupsafe import Markup, escape

from ...craft.beads import Bead, finish_said, kind_said
from ...craft.events import row_section
from ...craft.language import _, message
from ...craft.needle import path
from ...craft.piece import Piece
from ...craft.stitches import stitch_of
from ...source.pattern import Pattern
from ..artist import Screen
from ..context import Shown, shown
from ..files import file_name
from ..geometry import Room
from ..html import Setter
from ..pictures import Picture, alt_of
from ..replayed import check_words
from .colours import bead_colours, on_dark, on_light
from .variants import Variant, beside, variants

PX = 96 / 25.4           # of a mm
LARGER = 1.7             # a step picture, than on paper
STEPS = "steps"          # folder of step pictures
KINDS = {".svg": "image/svg+xml", ".jpg": "image/jpeg", ".jpeg": "image/jpeg", ".png": "image/png", ".webp": "image/webp"}
HANDS = {"right": message("Right hand"), "left": message("Left hand")}
TURNED = {False: message("As drawn"), True: message("Mirror image")}


@dataclass(frozen=True)
class Way:
    """How this article is worked. Its ids begin with `prefix`."""

    prefix: str
    is_mirrored: bool


@dataclass(frozen=True)
class Link:
    """A way from one variant to another, or to itself."""

    href: str
    label: str
    hand: str
    is_here: bool


@dataclass(frozen=True)
class Article:
    """One variant of a pattern, ready to stand on a page."""

    variant: Variant
    view: Shown
    html: Markup
    files: Mapping[str, str]   # what lies beside its page, by the name in build/html/


@dataclass(frozen=True)
class StepPicture:
    """Where the picture of a step is found, what it shows, its size in px, and how many actions it can show one by one."""

    source: str
    alt: str
    width: int
    height: int
    moves: int


def articles(setter: Setter, pattern: Pattern, room: Room, small: float, title: str, held: Mapping[str, bytes] | None = None,
             fits: Mapping[str, float] | None = None) -> tuple[Article, ...]:
    """The article of every variant, its words read back. `title` is that of the book. `held`: the photos, where all of them will stand in one file. `fits`: how wide beads can be, if known."""
    every = variants(pattern)
    return tuple(_article(setter, variant, every, room, small, title, held, None if variant.name else fits) for variant in every)


def _article(setter: Setter, variant: Variant, every: tuple[Variant, ...], room: Room, small: float, title: str,
             held: Mapping[str, bytes] | None, fits: Mapping[str, float] | None) -> Article:
    together = held is not None
    pattern, prefix = variant.pattern, f"{variant.name}-" if together and variant.name else ""
    view = shown(pattern, room, small, Screen(f"v{every.index(variant)}" if prefix else "", with_small=not variant.name), fits)
    drawn = {name: step.picture for prefix_of, one in (("", view), ("second-", view.second)) if one
             for step in one.steps if step.picture for name in [f"{prefix_of}{step.id}"]}
    photo = "" if not view.photo else variant.up + view.photo if held is None else data_address(view.photo, held[view.photo])
    html = setter.fill(
        "web/article.html.jinja", p=view, way=Way(prefix, variant.is_mirrored), ways=links(variant, every, together), store=f"{file_name(title)}/{pattern.slug}",
        legend=pattern.legend, colours=bead_colours(pattern.legend), light_accent=on_light(view.accent), dark_accent=on_dark(view.accent),
        ways_in_colour={name: {key: _told_bead(bead) for key, bead in changed.items()} for name, changed in pattern.colourways.items()},
        steps_script="" if together or not drawn else f"{STEPS}/{pattern.slug}.js",
        picks=picks(pattern.piece), second_picks=picks(pattern.second) if pattern.second else {}, also=also(view), second_also=also(view.second) if view.second else {}, photo=photo,
        pictures={name: _step_picture(one, data_address(".svg", ascii_of(one).encode()) if together else f"{STEPS}/{pattern.slug}/{name}.svg") for name, one in drawn.items()})
    check_words(pattern, html)
    folder = f"{variant.name}/{STEPS}" if variant.name else STEPS
    return Article(variant, view, html, {} if together or not drawn else _beside(f"{folder}/{pattern.slug}", {name: ascii_of(one) for name, one in drawn.items()}))


def _step_picture(drawn: Picture, source: str) -> StepPicture:
    return StepPicture(source, alt_of(drawn.svg), round(drawn.width * LARGER * PX), round(drawn.height * LARGER * PX), drawn.svg.count('<g id="p'))


def _told_bead(bead: Bead) -> tuple[str, str, str]:
    """Its colour; its name and what it is, as HTML."""
    return bead.colour, str(escape(bead.name)), str(escape(f"{finish_said(bead.finish)}, {kind_said(bead.kind.name)}"))


def ascii_of(drawn: Picture) -> str:
    """The picture in ASCII alone, as scripts of a page make data addresses of it."""
    return drawn.svg.encode("ascii", "xmlcharrefreplace").decode()


def _beside(folder: str, drawn: Mapping[str, str]) -> dict[str, str]:
    """The step pictures, and a script that holds them all: the page loads it to show them in other colours, because from a disk it may read no other file."""
    return {f"{folder}/{name}.svg": svg for name, svg in drawn.items()} | {f"{folder}.js": f"var STEPS = {json.dumps(drawn)};\n"}


def data_address(name: str, content: bytes) -> str:
    """An address that holds the content of a picture itself."""
    return f"data:{KINDS[PurePosixPath(f'x{name}').suffix.lower()]};base64,{b64encode(content).decode()}"


def links(variant: Variant, every: tuple[Variant, ...], together: bool) -> list[list[Link]]:
    """Links between the variants that differ in one thing from this one, those of one thing together."""
    found = []
    for labels, hand in ((HANDS, True), (TURNED, False)):
        other = beside(variant, every, hand)
        if other:
            told = [_(label) for label in labels.values()]
            found.append(sorted((_link(one, variant, _(labels[one.hand if hand else one.is_mirrored]), together) for one in (variant, other)),
                                key=lambda link: told.index(link.label)))
    return found


def _link(to: Variant, here: Variant, label: str, together: bool) -> Link:
    slug = to.pattern.slug
    href = f"#{to.name}-{slug}" if together and to.name else f"#{slug}" if together else here.up + to.address
    return Link(href, label, to.hand, to is here)


def picks(piece: Piece) -> dict[tuple[str, str | int], str]:
    """By row and strand, the beads in the order of picking up: "2W 1B". Rows that are told together stand under the first of them."""
    needle = path(piece)
    stitches = {(row.number, row.before + index): stitch for row in piece.rows for index, stitch in enumerate(row.stitches)}
    rows = {("row", rows[0].name): [stitches[place.line, place.index].beads[place.level] for place in needle.picked_up(*map(row_section, rows))]
            for rows in stitch_of(piece).told_together(piece)}
    return {section: _runs(keys) for section, keys in (rows | {("strand", strand.number): strand.all for strand in piece.strands}).items()}


def also(view: Shown) -> dict[int, str]:
    """By the number of a told row, the charted row that is told in the same line and picked up together with it, if there is one."""
    told = {row.number for row in view.rows}
    return {number: f"row-{number + 1}" if number + 1 not in told and number < max(told) else "" for number in told}


def _runs(keys: Sequence[str]) -> str:
    return " ".join(f"{len(list(same))}{key}" for key, same in groupby(keys))
