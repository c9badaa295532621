"""A pattern: everything that its file says, with what it inherits from the book, its piece, and the place of every part."""

from __future__ import annotations

import re
from collections.abc import Mapping

from msgspec import Struct, field

from ..craft.beads import Bead
from ..craft.piece import Hanger, Piece
from ..craft.plan import ThreadPlan
from ..findings import Mark
from .chart import DrawnBead, DrawnChart, DrawnRow
from .reader import nearest_mark
from .schema import Item, Link, PatternWords, Photo, StepText
from .written_strand import WrittenStrand

__all__ = ["DrawnBead", "DrawnChart", "DrawnRow", "Item", "Link", "Pattern", "Photo", "StepText", "WrittenHanger", "WrittenStrand"]

# Items that are ear wires, in the languages in which a pattern can be written.
_EAR_WIRE = r"\bear[- ]?(wire|hook|post|stud|clip)s?\b|\bohr(haken|stecker|clip|brisur|hänger)|brisuren?\b"


class WrittenHanger(Struct, frozen=True):
    """A hanger, the places of its beads, and its path in the file: ("hanger",), or ("hanger", 2) in a list."""

    hanger: Hanger
    beads: tuple[DrawnBead, ...] = ()
    path: tuple[str | int, ...] = ("hanger",)


class Pattern(Struct, frozen=True):
    """A pattern, resolved. A field that is missing or wrong in the file has its default here, and a finding."""

    slug: str
    file: str                                   # as findings show it
    title: str = ""
    summary: str = ""
    version: str = ""
    level: str = ""                             # beginner | intermediate | advanced
    makes: str = "single"                       # pair | single
    mirror: bool = False
    front: bool = False                         # it cannot be turned over
    hand: str = "right"
    legend: Mapping[str, Bead] = field(default_factory=dict)      # in printing order
    drop: int = 1
    base: str | int = "bottom"                  # as written
    chart: DrawnChart = DrawnChart()
    hang: str = "base"                          # where the fringe hangs
    fringe_places: int = 0                      # entries of the fringe, empty ones and mirrored ones included
    written_strands: tuple[WrittenStrand, ...] = ()               # left to right, mirrored ones included
    hangers: tuple[WrittenHanger, ...] = ()
    findings_list: tuple[Item, ...] = ()
    thread: ThreadPlan = ThreadPlan()
    photo: Photo | None = None
    links: tuple[Link, ...] = ()
    notes: str = ""                             # Markdown
    steps: Mapping[str, StepText] = field(default_factory=dict)
    colourways: Mapping[str, Mapping[str, Bead]] = field(default_factory=dict)   # the changed beads
    counted: Mapping[str, int] = field(default_factory=dict)
    pack_grams: Mapping[str, float] = field(default_factory=dict)                # by bead key
    spare_percent: float = 10.0
    least_spare: int = 0
    piece: Piece | None = None                  # None where the chart or the fringe cannot be read
    written_findings: tuple[str, ...] = ()      # items as the file names them, where findings_list names them in another language
    language: str = "en"                        # of the texts
    translations: Mapping[str, PatternWords] = field(default_factory=dict)       # by language
    allowed: Mapping[str, str] = field(default_factory=dict)      # rules that do not hold here, with the reason
    marks: Mapping[tuple, Mark] = field(default_factory=dict)

    @property
    def pieces(self) -> int:
        """Pieces that the pattern makes."""
        return 2 if self.makes == "pair" else 1

    @property
    def hanger_beads(self) -> tuple[DrawnBead, ...]:
        """The beads of all hangers."""
        return tuple(bead for written in self.hangers for bead in written.beads)

    @property
    def second(self) -> Piece | None:
        """The second piece of a pair, where it has words of its own because the first cannot be turned over."""
        piece = self.piece
        if piece is None or self.makes != "pair" or not self.mirror:
            return None
        from ..craft.pair import has_two_faces, is_symmetric, mirrored   # loaded here, because most pairs are two of the same

        if is_symmetric(piece):
            return None
        return mirrored(piece) if self.front or not has_two_faces(piece) else None

    @property
    def ear_wire(self) -> bool:
        """Whether an ear wire with a loop to be opened is among the findings."""
        return any(re.search(_EAR_WIRE, name, re.IGNORECASE) for name in (*self.written_findings, *(item.item for item in self.findings_list)))

    def mark(self, *path: str | int) -> Mark:
        """The place of a field such as ("counted", "beads"), of ("row", 3) or ("strand", 2), or of what it is part of.

        Rows have their working number; strands count from the left as the piece hangs.
        """
        return nearest_mark(self.marks, path, self.file)
