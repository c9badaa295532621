"""The pictures and the table of the page on techniques, computed from a small piece and from the kinds of beads."""

from __future__ import annotations

import re
from functools import lru_cache

from markupsafe import Markup

from ..craft.beads import Bead, kind_said
from ..craft.language import pgettext, spoken
from ..craft.pair import in_hand
from ..craft.piece import RIGHT, Hanger, Piece, Stitch, piece_rows
from ..craft.plan import ThreadPlan
from ..craft.strand import Strand
from ..craft.thread import thread_use
from ..draw.steps import Stage, scene_svg
from ..source.kinds import shipped_kinds
from .numbers import mm_and_inches
from .pictures import Picture, picture, step_box

TECHNIQUES = "techniques"
KIND = "cylinder 11/0"
SHOWN = ("cylinder 15/0", KIND, "cylinder 10/0", "cylinder 8/0", "round 15/0", "round 11/0", "round 8/0")
COUNTED = 11    # stitches and rows in the table
BASE, ROWS = 6, 4
_PICTURE = re.compile(r"<p>\{picture: ([a-z-]+)\}</p>")
_TABLE = "{table: sizes}"


def with_sizes(text: str) -> str:
    """The page's Markdown with its table of bead sizes."""
    return text.replace(_TABLE, _sizes())


def with_pictures(html: Markup, hand: str = "", times: float = 1.0) -> Markup:
    """The page with its pictures, for this hand, so many times as large as in small type."""
    drawn = _pictures(spoken().tag, hand or RIGHT)
    return Markup(_PICTURE.sub(lambda match: f'<div class="{step_box(drawn[match[1]])}">{drawn[match[1]].enlarged(times).svg}</div>', html))


def _sizes() -> str:
    kinds = shipped_kinds()
    lines = ["| " + " | ".join((pgettext("table", "bead"), pgettext("table", "width"), pgettext("table", "height"))) + " |", "| --- | --- | --- |"]
    return "\n".join([*lines, *(f"| {kind_said(name)} | {mm_and_inches(COUNTED * kinds[name].diameter)} | {mm_and_inches(COUNTED * kinds[name].length)} |" for name in SHOWN)])


@lru_cache
def _pictures(language: str, hand: str) -> dict[str, Picture]:
    """A picture of every step that the small piece has, with its text in the language of the moment."""
    piece = in_hand(_piece(), hand)
    stage, uses = Stage(piece), thread_use(piece, ThreadPlan(length=400.0))
    names = ("first-pick-up", "ladder", "row-start-in", "row-stitches", "thread-change", "finishing", "fringe", "hanger")
    return {name: picture(scene_svg(stage, stage.scenes.of(name, uses))) for name in names}


def _piece() -> Piece:
    """Sets of a light bead over a dark one, so that it is seen which is picked up first."""
    kind = shipped_kinds()[KIND]
    legend = {"L": Bead("L", "light", "#d8c9a6", "matte", kind), "D": Bead("D", "dark", "#3b5568", "matte", kind)}
    drawn = [[Stitch(row + 2 * index, ("D", "L")) for index in range(BASE - row)] for row in range(ROWS)]
    strands = tuple(Strand(number, tuple("DDDLLLLDDD"), ("L", "D", "L")) for number in range(1, BASE + 1))
    return Piece(legend, 2, RIGHT, piece_rows(drawn, 0, RIGHT), strands, (Hanger("guard"),))
