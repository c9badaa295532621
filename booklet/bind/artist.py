"""Who draws the pictures of a page: for paper, or for a screen; or has them from someone who drew them before."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator

from markupsafe import Markup

from ..craft.beads import Bead
from ..craft.language import _
from ..craft.piece import Piece
from ..craft.scenes import Scene
from ..craft.thread import ThreadUse
from ..craft.words import RowWords, StrandWords, row_words, strand_words
from ..draw.chart import chart_svg
from ..draw.finished import finished_svg, pair_svg
from ..draw.fringe import fringe_svg
from ..draw.legend import swatch_svg
from ..draw.screen import screen_chart, screen_file, screen_fringe, screen_pair, screen_swatch, screen_view
from ..draw.steps import Moving, Stage, scene_svg
from .pictures import NO_PICTURE, Picture, alt_of, picture, picture_of, said_of


class Paper:
    """Pictures with every colour written into them. `name` tells one picture of a kind from another; `steps` is how much larger than usual steps are drawn."""

    def __init__(self, with_small: bool = True, steps: float = 1.0) -> None:
        self.with_small, self.steps = with_small, steps

    def chart(self, piece: Piece, bead: float, name: str) -> Picture:
        return told(chart_svg(piece, bead=bead, prefix=f"{name}-chart"), row_words(piece))

    def fringe(self, piece: Piece, bead: float, name: str) -> Picture:
        return told(fringe_svg(piece, bead=bead, prefix=f"{name}-fringe"), strand_words(piece))

    def finished(self, piece: Piece, scale: float, name: str) -> Picture:
        return picture(finished_svg(piece, scale=scale))

    def small(self, piece: Piece, scale: float, name: str) -> Picture:
        """A picture for contents and galleries, where it is wanted."""
        return self.finished(piece, scale, name) if self.with_small else NO_PICTURE

    def pair(self, piece: Piece, mirror: bool, scale: float, name: str) -> Picture:
        return picture(pair_svg(piece, mirror=mirror, scale=scale))

    def swatch(self, bead: Bead, name: str) -> Picture:
        return picture(swatch_svg(bead))

    def scenes(self, piece: Piece, uses: tuple[ThreadUse, ...], steps: Iterable[str]) -> dict[str, Picture]:
        """Pictures of those of these steps that have something to show."""
        return {step: picture(scene_svg(stage, scene)).enlarged(self.steps) for step, stage, scene in _scenes(piece, uses, steps)}

    def colourway(self, piece: Piece, changed: dict[str, Bead], scale: float, alt: str) -> Picture:
        """The piece in other colours."""
        return picture(finished_svg(piece, scale=scale), alt)


def _scenes(piece: Piece, uses: tuple[ThreadUse, ...], steps: Iterable[str]) -> Iterator[tuple[str, Stage, Scene]]:
    stage = Stage(piece)
    for step in steps:
        scene = stage.scenes.of(step, uses)
        if scene:
            yield step, stage, scene


class Noting:
    """An artist whose pictures are noted, in the order in which they are asked for, as plain values."""

    def __init__(self, artist: Paper) -> None:
        self.artist = artist
        self.noted: list[list] = []

    def __getattr__(self, kind: str) -> Callable:
        def drawn(*asked):
            made = getattr(self.artist, kind)(*asked)
            self.noted.append([kind, {step: said_of(one) for step, one in made.items()} if isinstance(made, dict) else said_of(made)])
            return made

        return drawn


class Noted:
    """Has the pictures that were noted, for who asks for the same ones in the same order."""

    def __init__(self, noted: Iterable[list]) -> None:
        self._left = iter(noted)

    def __getattr__(self, kind: str) -> Callable:
        def drawn(*asked):
            was, said = next(self._left)
            if was != kind:
                raise ValueError(f"a picture of the kind {kind!r} is asked for, and the one that was drawn next is of the kind {was!r}")
            return {step: picture_of(one) for step, one in said.items()} if isinstance(said, dict) else picture_of(said)

        return drawn


def told(svg: str, words: Iterable[RowWords | StrandWords]) -> Picture:
    """A chart whose alternative text ends with its words, so that it tells every bead."""
    return picture(svg, _("{chart} In words: {words}.", chart=alt_of(svg), words=". ".join(line.line for line in words)))


class Screen:
    """Pictures whose beads the page colours. Their ids begin with `prefix`, so that variants can stand on one page, and are short: they are many."""

    def __init__(self, prefix: str = "", with_small: bool = False) -> None:
        self.prefix, self.with_small = prefix, with_small

    def _id(self, kind: str, name: str) -> str:
        return f"{self.prefix}{kind}{'2' if name.endswith('-second') else ''}"

    def chart(self, piece: Piece, bead: float, name: str) -> Picture:
        return picture(screen_chart(piece, bead, self._id("c", name)))

    def fringe(self, piece: Piece, bead: float, name: str) -> Picture:
        return picture(screen_fringe(piece, bead, self._id("f", name)))

    def finished(self, piece: Piece, scale: float, name: str) -> Picture:
        return picture(screen_view(piece, scale, self._id("w", name)))

    def small(self, piece: Piece, scale: float, name: str) -> Picture:
        """A picture that stands in a file of its own and is drawn for the first variant alone."""
        return picture(screen_file(piece, scale)) if self.with_small else NO_PICTURE

    def pair(self, piece: Piece, mirror: bool, scale: float, name: str) -> Picture:
        return picture(screen_pair(piece, mirror, scale, self._id("p", name)))

    def swatch(self, bead: Bead, name: str) -> Picture:
        return picture(screen_swatch(bead, f"{self._id('k', name)}-{ord(bead.key)}"))

    def scenes(self, piece: Piece, uses: tuple[ThreadUse, ...], steps: Iterable[str]) -> dict[str, Picture]:
        """Pictures that stand in files of their own, and can be shown action by action."""
        return {step: picture(scene_svg(stage, scene, on=Moving)) for step, stage, scene in _scenes(piece, uses, steps)}

    def colourway(self, piece: Piece, changed: dict[str, Bead], scale: float, alt: str) -> Picture:
        """Swatches of the beads that change; the page itself can show the piece in them."""
        swatches = [picture(swatch_svg(bead)) for bead in changed.values()]
        return Picture(Markup("").join(one.svg for one in swatches), sum(one.width for one in swatches), max(one.height for one in swatches))


Artist = Paper | Screen | Noting | Noted
