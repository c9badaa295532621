"""booklet draw: the pictures of a pattern as files."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import click

from ..source.pattern import Pattern
from .reading import some

HELP = """Draw a pattern: charts and pictures as files in build/draw/SLUG/.

\b
  chart           the chart of the body
  fringe          the chart of the fringe, if there is one
  finished        a finished piece
  pair            both pieces, if the pattern makes a pair
  swatch-1-W ...  a swatch of every bead of the legend

SVG files can be printed at any size; PNG files have 300 dots an inch. The names of the files are printed, one a line.

\b
Examples:
  booklet draw cloud-shadow
  booklet draw cloud-shadow --as png

Exit code: 0 drawn, 1 errors found and nothing written, 2 wrong use, or a file that cannot be read or written.
"""


@click.command(help=HELP)
@click.argument("slug")
@click.option("--as", "form", type=click.Choice(["svg", "png"]), default="svg", show_default=True, help="The kind of file.")
@click.pass_obj
def draw(folder: Path, slug: str, form: str) -> None:
    pattern = some(folder, [slug], to_print=False).patterns[slug]
    from ..bind.files import write_folder

    files = {f"{name}.{form}": _content(svg, form) for name, svg in pictures(pattern)}
    made = write_folder(folder / "build" / "draw" / slug, files)
    for name in files:
        click.echo((made / name).relative_to(folder).as_posix())


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


def _content(svg: str, form: str) -> bytes:
    if form == "svg":
        return svg.encode("utf-8")
    from ..draw.png import png_bytes

    return png_bytes(svg)
