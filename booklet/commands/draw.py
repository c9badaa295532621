"""booklet draw: the pictures of a pattern as files."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import click

from ..errors import WrongUse
from ..source.pattern import Pattern
from .reading import some

HELP = """Draw a pattern: charts and pictures as files in build/draw/SLUG/.

\b
  chart           the chart of the body
  fringe          the chart of the fringe, if there is one
  finished        a finished piece
  pair            both pieces, if the pattern makes a pair
  swatch-1-W ...  a swatch of every bead of the legend
  step-1-... ...  how the needle goes in every step, numbered as in the pattern

With --row or --strand only the way of the needle through that row or strand is drawn, with its pick-ups numbered.

SVG files can be printed at any size; PNG files have 300 dots an inch. The names of the files are printed, one a line.

\b
Examples:
  booklet draw cloud-shadow
  booklet draw cloud-shadow --as png
  booklet draw cloud-shadow --row 7
  booklet draw cloud-shadow --strand 3

Exit code: 0 drawn, 1 errors found and nothing written, 2 wrong use, or a file that cannot be read or written.
"""


@click.command(help=HELP)
@click.argument("slug")
@click.option("--as", "form", type=click.Choice(["svg", "png"]), default="svg", show_default=True, help="The kind of file.")
@click.option("--row", type=int, help="Draw the needle's way through this row only.")
@click.option("--strand", type=int, help="Draw the needle's way through this strand only.")
@click.pass_obj
def draw(folder: Path, slug: str, form: str, row: int | None, strand: int | None) -> None:
    pattern = some(folder, [slug], to_print=False).patterns[slug]
    from ..bind.files import write_file, write_folder

    target = folder / "build" / "draw" / slug
    wanted = [(kind, number) for kind, number in (("row", row), ("strand", strand)) if number is not None]
    if wanted:
        for name, content in _files({f"{kind}-{number}": _way(pattern, kind, number) for kind, number in wanted}, form, folder).items():
            click.echo(write_file(target / name, content).relative_to(folder).as_posix())
        return
    files = _files(dict(pictures(pattern)), form, folder)
    made_folder = write_folder(target, files)
    for name in files:
        click.echo((made_folder / name).relative_to(folder).as_posix())


def _way(pattern: Pattern, kind: str, number: int) -> str:
    """The needle's way through a whole row or strand, as SVG. Raises WrongUse where there is none of that number."""
    from ..draw.steps import Stage, scene_svg

    stage = Stage(pattern.piece)
    scene = stage.scenes.whole(kind, number)
    if scene is None:
        count = len({row.number for row in pattern.piece.rows} if kind == "row" else pattern.piece.strands)
        has = f"{pattern.slug} has {count} {kind}{'' if count == 1 else 's'}" if count else f"{pattern.slug} has no {kind}s"
        raise WrongUse(f"there is no {kind} {number}", has)
    return scene_svg(stage, scene, prefix=f"{kind}-{number}", crop=False)


def pictures(pattern: Pattern) -> Iterator[tuple[str, str]]:
    """Every picture of a pattern, by name, as SVG."""
    from ..draw.chart import chart_svg
    from ..draw.finished import finished_svg, pair_svg
    from ..draw.fringe import fringe_svg
    from ..draw.legend import swatch_svg

    piece = pattern.piece
    yield "chart", chart_svg(piece)
    if piece.strands:
        yield "fringe", fringe_svg(piece)
    yield "finished", finished_svg(piece)
    if pattern.pieces == 2:
        yield "pair", pair_svg(piece, mirror=pattern.mirror)
    for number, bead in enumerate(pattern.legend.values(), 1):  # numbered, because some file systems take W for w
        yield f"swatch-{number}-{bead.key}", swatch_svg(bead, lettered=True)
    yield from _steps(pattern)


def _steps(pattern: Pattern) -> Iterator[tuple[str, str]]:
    """A picture of every step in which the needle goes somewhere, with the step's number in the pattern."""
    from ..craft.steps import steps
    from ..craft.thread import thread_use
    from ..draw.steps import Stage, scene_svg

    stage, uses = Stage(pattern.piece), thread_use(pattern.piece, pattern.thread)
    for number, step in enumerate(steps(pattern.piece, pattern.thread, uses, pattern.ear_wire), 1):
        scene = stage.scenes.of(step.id, uses)
        if scene is not None:
            yield f"step-{number}-{step.id}", scene_svg(stage, scene)


def _files(drawn: dict[str, str], form: str, folder: Path) -> dict[str, bytes]:
    """The files of pictures by their names, which get an ending."""
    if form == "svg":
        made = {name: svg.encode("utf-8") for name, svg in drawn.items()}
    else:
        from ..bind.raster import rasters

        made = rasters(drawn, folder)
    return {f"{name}.{form}": content for name, content in made.items()}
