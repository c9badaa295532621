"""The finished PDF made ready for a printer: crop marks, and what a standard asks to be said."""

from __future__ import annotations

from collections.abc import Iterator

from .edition import Edition
from .press.inks import POINT
from .press.scratch import Scratch
from .standards import UA, X4, declare

MARK, AWAY = 5.0, 3.0    # mm: length of a crop mark, and its least distance from the trimmed page
LINE = 0.25              # points


def finished(made: Scratch, on: Edition, profile: bytes = b"", year: int | None = None) -> Scratch:
    """The PDF of an edition as it leaves us: `made` itself, or another one in its place."""
    if on.output == UA and not on.marks:
        return made   # which says all that there is to say
    import pikepdf

    with pikepdf.open(made.file) as pdf:
        for page in pdf.pages if on.marks else ():
            page.contents_coalesce()   # page numbers are laid over as streams of their own
            page.Contents = pikepdf.Stream(pdf, b"q\n" + page.Contents.read_bytes() + b"\nQ\n" + _marks(page, on))
        if on.output != UA:
            declare(pdf, on, profile, year)
        return saved(pdf, "1.6" if on.output == X4 else "")


def saved(pdf, version: str = "") -> Scratch:
    """The PDF; the same bytes for the same content."""
    import pikepdf

    made = Scratch()
    pdf.save(made.file, deterministic_id=True, object_stream_mode=pikepdf.ObjectStreamMode.generate, force_version=version, fix_metadata_version=False)
    return made


def _marks(page, on: Edition) -> bytes:
    """Crop marks at the four corners, outside the bleed, and white where a picture ran over it."""
    media, bleed, trim = ([float(value) for value in box] for box in (page.MediaBox, page.BleedBox, page.TrimBox))
    lines = "\n".join(f"{x1:.3f} {y1:.3f} m {x2:.3f} {y2:.3f} l S" for x1, y1, x2, y2 in _crosses(trim, max(on.bleed, AWAY) * POINT))
    frame = " ".join(f"{value:.3f}" for value in (media[0], media[1], media[2] - media[0], media[3] - media[1]))
    hole = " ".join(f"{value:.3f}" for value in (bleed[0], bleed[1], bleed[2] - bleed[0], bleed[3] - bleed[1]))
    return f"/Artifact BMC\nq\n1 g {frame} re {hole} re f*\n0 G {LINE} w\n{lines}\nQ\nEMC".encode()


def _crosses(trim: list[float], away: float) -> Iterator[tuple[float, float, float, float]]:
    left, bottom, right, top = trim
    long = MARK * POINT
    for x, side in ((left, -1), (right, 1)):
        for y, up in ((bottom, -1), (top, 1)):
            yield x + side * away, y, x + side * (away + long), y
            yield x, y + up * away, x, y + up * (away + long)
