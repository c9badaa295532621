"""The thread and the needle that a maker works with, and what is added to every length of thread."""

from __future__ import annotations

from collections.abc import Mapping

from msgspec import Struct, field

from .language import _, message

TAIL = 150.0      # mm left at the start; published advice runs from 4 in to 8 in
WEAVE_IN = 150.0  # mm kept at the end; a published pattern keeps 6 in
WARP_END = 200.0  # mm of warp beyond either end of loom work, to tie and to weave in; common practice, no source


class ThreadKind(Struct, frozen=True):
    """A kind of thread. Its diameter is a figure of its own: a strength in pounds does not tell it."""

    name: str
    diameter: float             # mm
    material: str = ""
    spool: float | None = None  # mm of thread on one spool; None where that is not known
    source: str = ""            # where the figures come from


class Needle(Struct, frozen=True):
    """A size of beading needle."""

    size: str         # as sold: "12"
    diameter: float   # mm
    thread: float     # mm, the thickest thread that it is usually sold for
    eye: float        # mm, the thickest thread that can be forced through the eye
    source: str = ""


class ThreadPlan(Struct, frozen=True):
    """Which thread a maker works with."""

    body: str = "braided 6 lb"
    fringe: str = "nylon B"
    length: float = 1400.0   # comfortable working length, mm
    kinds: Mapping[str, ThreadKind] = field(default_factory=dict)   # that there are, by name
    needles: tuple[Needle, ...] = ()                                # thickest first

    def kind(self, part: str) -> ThreadKind | None:
        """The thread of "body" or "fringe"; None where nothing is known of it but the name."""
        return self.kinds.get(getattr(self, part))


_SORTS = (message("braided"), message("monofilament"), message("nylon"))
_MATERIALS = (message("gel-spun polyethylene"), message("nylon"))


def thread_said(name: str) -> str:
    """The name of a thread, whose first word is translated where it is one of ours: "braided 6 lb"."""
    sort, gap, size = name.partition(" ")
    return f"{_(sort)}{gap}{size}" if sort in _SORTS else name


def material_said(material: str) -> str:
    """What a thread is made of."""
    return _(material) if material in _MATERIALS else material
