"""From SVG text to PNG."""

from __future__ import annotations

from pathlib import Path

MM_PER_INCH = 25.4


def png_bytes(svg: str, *, dpi: float = 300, background: str | None = "#ffffff") -> bytes:
    """PNG of a picture of ours at `dpi` dots an inch of its printed size; no background leaves it clear."""
    import resvg_py

    return bytes(resvg_py.svg_to_bytes(svg_string=svg, dpi=dpi, background=background, skip_system_fonts=True))


def write_png(svg: str, path: Path, *, dpi: float = 300, background: str | None = "#ffffff") -> None:
    """Write a picture as a PNG file."""
    path.write_bytes(png_bytes(svg, dpi=dpi, background=background))
