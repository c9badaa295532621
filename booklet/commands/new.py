"""booklet new: a pattern file to start from."""

from __future__ import annotations

import re
from pathlib import Path

import click

from ..craft.shapes import FRINGES, SHAPES, ImpossibleShape
from ..errors import UnreadableInput, UnwritableOutput, WrongUse
from ..lint.run import lint
from ..source.book import Book
from ..source.files import inside
from ..source.starter import FRINGE_ROOM, start
from ..source.starter_text import pattern_text
from ..source.values import SLUG
from ..source.wording import quoted
from ..source.workspace import BOOK_FILE, FOLDER, OTHER_FILES, load
from .terminal import show_findings, tell

MOST_STITCHES, MOST_ROWS, MOST_BEADS = 60, 120, 300


def _listed(names: dict[str, str]) -> str:
    return "\n".join(f"  {name:<11}{about}" for name, about in names.items())


HELP = f"""Write a pattern file to start from: patterns/SLUG.yaml.

SLUG is the name of the file, in small letters with hyphens: cloud-shadow. The file is complete. It has a chart in three colours, the
strands, the counts, and a remark beside each part that says what it is for. It passes lint, and can be drawn, counted and bound
as it is; recolour it, redraw it, and make it yours. Where the numbers give a piece that is too heavy for an ear, it says so. A file that is there already is never overwritten.

\b
Shapes:
{_listed({name: shape.about for name, shape in SHAPES.items()})}

\b
Fringes, one strand under each stitch of the base row:
{_listed(dict(FRINGES))}

The pattern is not put into the book: the command says which line to add to patterns/book.yaml.

\b
Examples:
  booklet new breeze                                        a triangle on 11 stitches, with a fringe to a point
  booklet new breeze --shape triangle --base 7              a smaller one
  booklet new hail --shape diamond --base 9 --drop 2        a diamond, 9 sets of two beads across
  booklet new squall --shape trapezoid --base 13 --rows 5 --fringe slant --longest 40

Exit code: 0 written, 2 wrong use, or the file is there already or cannot be written.
"""


@click.command(help=HELP)
@click.argument("slug")
@click.option("--shape", type=click.Choice(list(SHAPES)), default="triangle", show_default=True, help="The outline of the body.")
@click.option("--base", metavar="N", type=click.IntRange(max=MOST_STITCHES),
              help=f"Stitches of the base row; if left out, {', '.join(f'{shape.base} for a {name}' for name, shape in SHAPES.items())}.")
@click.option("--rows", metavar="N", type=click.IntRange(max=MOST_ROWS), help="Rows of the body; if left out, as many as suit the shape.")
@click.option("--drop", metavar="N", type=click.IntRange(1, 4), default=1, show_default=True, help="Beads in a stitch, 1 to 4.")
@click.option("--fringe", type=click.Choice(list(FRINGES)), help="How the fringe hangs; if left out, v, and none for a diamond.")
@click.option("--longest", metavar="N", type=click.IntRange(max=MOST_BEADS),
              help=f"Beads of the longest strand, end beads counted; if left out, {FRINGE_ROOM}, or more for a broad base.")
@click.pass_obj
def new(folder: Path, slug: str, shape: str, base: int | None, rows: int | None, drop: int, fringe: str | None, longest: int | None) -> None:
    _check_name(slug)
    path = folder / FOLDER / f"{slug}.yaml"
    _check_place(folder, path)
    book = load(folder, only=[]).book
    try:
        planned = start(slug, shape, SHAPES[shape].base if base is None else base, rows, drop, fringe or _usual_fringe(shape), longest)
    except ImpossibleShape as error:
        raise WrongUse(error.what, error.cure) from None
    write_new(path, pattern_text(planned, book))
    click.echo(f"{FOLDER}/{path.name}")
    show_findings(lint(load(folder, only=[path]), with_book=False), folder, err=True)   # such as that it is heavy
    _tell_of_book(book, slug)


def _usual_fringe(shape: str) -> str:
    return "none" if SHAPES[shape].from_middle else "v"


def _check_name(slug: str) -> None:
    if not re.fullmatch(SLUG.pattern, slug) or len(slug) > SLUG.longest:
        like = "-".join(re.findall("[a-z0-9]+", slug.lower()))[:SLUG.longest].strip("-")
        raise WrongUse(f"the name of a pattern has {SLUG.words}; found {quoted(slug)}", f"take {like}" if like else "")
    if f"{slug}.yaml" in OTHER_FILES:
        raise WrongUse(f"{FOLDER}/{slug}.yaml is no pattern, but a file of the book", "take another name")


def _check_place(folder: Path, path: Path) -> None:
    if not folder.is_dir():
        raise UnreadableInput(f"there is no folder {folder}")
    if not inside(path.parent, folder):
        raise WrongUse(f"{FOLDER}/ leads outside the folder", "put the folder itself here, not a link to it")


def write_new(path: Path, text: str) -> None:
    """Write a file that is not there yet. Raises WrongUse if it is, UnwritableOutput if it cannot be written."""
    name = f"{path.parent.name}/{path.name}"
    try:
        path.parent.mkdir(exist_ok=True)
        with path.open("x", encoding="utf-8", newline="\n") as file:
            file.write(text)
    except FileExistsError:
        if not path.parent.is_dir():
            raise UnwritableOutput(f"{path.parent.name} is a file, where a folder is expected") from None
        raise WrongUse(f"{name} is there already, and is left as it is", "take another name, or move that file away") from None
    except OSError as error:
        raise UnwritableOutput(f"{name} cannot be written: {(error.strerror or str(error)).lower()}") from None


def _tell_of_book(book: Book, slug: str) -> None:
    """What the user has to do to bring the pattern into the book, if anything."""
    where = f"{FOLDER}/{BOOK_FILE}"
    if not book.file:
        tell(f"to bind a book, make {where} with a title: and an order:, and put the line  - {slug}  under order:")
    elif ("order",) not in book.marks and not book.broken:
        tell(f"{where} has no order:, so {slug} comes into the book in the order of the names")
    elif slug not in book.order:
        tell(f"{slug} is not in the book yet", f"to bind it there, add the line  - {slug}  under order: in {where}")
